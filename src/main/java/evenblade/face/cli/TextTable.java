package evenblade.face.cli;

import java.util.ArrayList;
import java.util.List;

/** Lines up columns of text; the letters of the form say how each is set: l left, r right. */
final class TextTable {
    private static final String GAP = "  ";

    private final String form;
    private final List<List<String>> rows = new ArrayList<>();

    TextTable(String form) {
        this.form = form;
    }

    /** Adds a row with one text per column. */
    TextTable row(String... cells) {
        if (cells.length != form.length()) {
            throw new IllegalArgumentException(cells.length + " cells for " + form.length() + " columns");
        }
        rows.add(List.of(cells));
        return this;
    }

    /** The rows, each without blanks at its end. */
    List<String> lines() {
        int[] widths = new int[form.length()];
        for (List<String> row : rows) {
            for (int i = 0; i < widths.length; i++) {
                widths[i] = Math.max(widths[i], width(row.get(i)));
            }
        }
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String blanks = " ".repeat(widths[i] - width(row.get(i)));
                boolean right = form.charAt(i) == 'r';
                line.append(i == 0 ? "" : GAP)
                        .append(right ? blanks : "")
                        .append(row.get(i))
                        .append(right ? "" : blanks);
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    private static int width(String text) {
        return text.codePointCount(0, text.length());
    }
}
