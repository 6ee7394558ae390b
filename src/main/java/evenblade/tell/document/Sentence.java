package evenblade.tell.document;

import java.util.ArrayList;
import java.util.List;

/**
 * One sentence, or a few, with what stands in it kept apart: own words, figures, text of a user.
 *
 * @param spans in reading order
 */
public record Sentence(List<Span> spans) {
    public Sentence {
        spans = List.copyOf(spans);
    }

    /** Own words alone. */
    public static Sentence of(String words) {
        return new Sentence(List.of(new Span.Words(words)));
    }

    /** All of it in a row, as a terminal shows it. */
    public String text() {
        StringBuilder text = new StringBuilder();
        spans.forEach(span -> text.append(span.text()));
        return text.toString();
    }

    /** This and another behind it. */
    public Sentence then(Sentence other) {
        List<Span> all = new ArrayList<>(spans);
        all.addAll(other.spans());
        return new Sentence(all);
    }

    /** Makes its first letter large; what a user wrote stays as it is. */
    public Sentence capital() {
        if (spans.isEmpty() || !(spans.get(0) instanceof Span.Words first)) {
            return this;
        }
        List<Span> changed = new ArrayList<>(spans);
        changed.set(0, new Span.Words(FigureFormat.capital(first.text())));
        return new Sentence(changed);
    }

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
}
