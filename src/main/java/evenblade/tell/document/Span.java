package evenblade.tell.document;

/** A part of a sentence. */
public sealed interface Span {
    /** As shown. */
    String text();

    /** The program's own words. */
    record Words(String text) implements Span {}

    /** A figure with its unit, already in the reader's units; must not be broken over two lines. */
    record Figure(String text) implements Span {}

    /** What a user or a file gave, with its quotation marks. */
    record UserText(String text) implements Span {}
}
