package evenblade.face.cli;

import java.util.ArrayList;
import java.util.List;

/** Breaks sentences into lines that fit a terminal. */
final class LineWrapper {
    /** Columns of the narrowest terminal that output is made for. */
    static final int WIDTH = 80;

    private LineWrapper() {}

    /**
     * The text in lines of at most {@link #WIDTH} columns; a longer word gets a line of its own.
     *
     * @param first what the first line starts with
     * @param rest what every other line starts with
     */
    static List<String> lines(String first, String rest, String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.strip().split("\\s+")) {
            int needed =
                    line.codePointCount(0, line.length()) + (empty ? 0 : 1) + word.codePointCount(0, word.length());
            if (!empty && needed > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(rest);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }
}
