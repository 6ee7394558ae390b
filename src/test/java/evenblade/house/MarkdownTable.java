package evenblade.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Reads a table of a page in this repository, so that what the page says is what the rules hold the code to. */
final class MarkdownTable {
    private MarkdownTable() {}

    /**
     * The rows of the one table whose first column has this heading; each row maps heading to text.
     *
     * @throws IllegalStateException if the page has no such table, or a row has too few or too many cells
     */
    static List<Map<String, String>> read(Path page, String firstHeading) {
        List<Map<String, String>> rows = new ArrayList<>();
        List<String> headings = null;
        for (String line : lines(page)) {
            if (!line.startsWith("|")) {
                if (headings != null) {
                    return rows;
                }
                continue;
            }
            List<String> cells = cells(line);
            if (headings == null) {
                headings = cells.get(0).equals(firstHeading) ? cells : null;
            } else if (!cells.get(0).startsWith("---")) {
                rows.add(row(page, headings, cells));
            }
        }
        if (headings == null) {
            throw new IllegalStateException(page + " has no table that starts with the column '" + firstHeading + "'");
        }
        return rows;
    }

    private static Map<String, String> row(Path page, List<String> headings, List<String> cells) {
        if (cells.size() != headings.size()) {
            throw new IllegalStateException(page + ": the row " + cells + " does not fit the columns " + headings);
        }
        Map<String, String> row = new TreeMap<>();
        for (int i = 0; i < cells.size(); i++) {
            row.put(headings.get(i), cells.get(i));
        }
        return row;
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        for (String cell : line.substring(1).split("\\|")) {
            cells.add(cell.strip());
        }
        return cells;
    }

    static List<String> lines(Path page) {
        try {
            return Files.readAllLines(page);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
