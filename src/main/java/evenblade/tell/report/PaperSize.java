package evenblade.tell.report;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The sheet that a report is laid out for. */
public enum PaperSize {
    A4("A4", "210mm 297mm"),
    LETTER("Letter", "8.5in 11in");

    private final String word;
    private final String pageSize;

    PaperSize(String word, String pageSize) {
        this.word = word;
        this.pageSize = pageSize;
    }

    /** As entered. */
    public String word() {
        return word;
    }

    /** Width and height as a style sheet takes them. */
    String pageSize() {
        return pageSize;
    }

    /** The words of all sizes. */
    public static List<String> words() {
        return Arrays.stream(values()).map(PaperSize::word).toList();
    }

    /** The size of a word, capitals or not; empty for any other word. */
    public static Optional<PaperSize> named(String word) {
        return Arrays.stream(values())
                .filter(size -> size.word.equalsIgnoreCase(word))
                .findFirst();
    }
}
