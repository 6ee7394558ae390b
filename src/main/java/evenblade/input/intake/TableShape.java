package evenblade.input.intake;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How a table is written, judged by its first lines.
 *
 * @param separator between cells; {@link #WHITESPACE} for runs of spaces or tabs
 * @param decimalComma whether numbers carry a comma in place of a point
 * @param firstRow line number, counted from 1, of the first row of numbers
 * @param headings one per column, as written; empty where the table has none
 * @param types what each column holds
 */
record TableShape(
        char separator, boolean decimalComma, int firstRow, List<String> headings, List<CellText.Type> types) {
    static final char WHITESPACE = Separator.SPACES.sign();
    /** Starts of lines that are remarks; a semicolon too, where it doesn't separate. */
    private static final List<String> REMARKS = List.of("#", "//", "%", "!");

    private static final List<Separator> SEPARATORS =
            List.of(Separator.TAB, Separator.SEMICOLON, Separator.COMMA, Separator.BAR, Separator.SPACES);

    private static final int BODY_LINES = 200; // ours: what is looked at to tell a table's columns
    private static final int HEADING_LINES_BACK = 3; // names, units, and an empty line between

    /** A line of the file with its number. */
    private record Line(int number, String text) {}

    private record Candidate(char separator, boolean decimalComma, int columns, double score) {}

    TableShape {
        headings = List.copyOf(headings);
        types = List.copyOf(types);
    }

    int columns() {
        return types.size();
    }

    static boolean remark(String line, char separator) {
        String text = line.stripLeading();
        return REMARKS.stream().anyMatch(text::startsWith) || separator != ';' && text.startsWith(";");
    }

    /**
     * Judges the start of a table.
     *
     * @param text the first lines
     * @param whole whether that is all of the file; otherwise the last line may be cut
     * @param said about separator and decimal sign; they aren't judged then
     */
    static TableShape of(Path file, String text, boolean whole, TableReading said) {
        List<Line> lines = new ArrayList<>();
        int number = 0;
        for (String line : (Iterable<String>) text.lines()::iterator) {
            lines.add(new Line(++number, line.replace("\0", "")));
        }
        if (!whole && lines.size() > 1) {
            lines.remove(lines.size() - 1);
        }
        List<Line> content = lines.stream()
                .filter(line -> !line.text().isBlank() && !remark(line.text(), ';'))
                .toList();
        if (content.isEmpty()) {
            throw BadInput.in(file).found("no number in it", "rows of a time stamp and at least one value");
        }
        List<Line> body = content.subList(Math.max(content.size() / 2, content.size() - BODY_LINES), content.size());
        Candidate best = best(body, said);
        if (best == null) {
            Line line = content.get(0);
            throw BadInput.in(file)
                    .line(line.number())
                    .found(
                            "no number in it" + as(said) + ", text that starts \"" + shortened(line.text()) + "\"",
                            "rows of a time stamp and at least one value");
        }
        CellText cells = new CellText(best.decimalComma());
        List<CellText.Type> types = types(body, best, cells);
        Line firstRow = content.stream()
                .filter(line -> isRow(split(line.text(), best.separator()), types, cells))
                .findFirst()
                .orElse(body.get(0));
        if (types.stream().filter(type -> type != CellText.Type.EMPTY).count() < 2) {
            throw BadInput.in(file)
                    .line(firstRow.number())
                    .found("one column" + as(said), "a column of time stamps and at least one column of values");
        }
        List<String> headings = headings(file, lines, firstRow, best, types.size(), cells);
        return new TableShape(best.separator(), best.decimalComma(), firstRow.number(), headings, types);
    }

    /** How it was to be read, for a complaint. */
    private static String as(TableReading said) {
        String between = said.separator()
                .map(each -> " with " + each.word() + " between cells")
                .orElse("");
        return between
                + said.decimalSign()
                        .map(each -> " with decimal " + each.word() + "s")
                        .orElse("");
    }

    private static String shortened(String text) {
        String stripped = text.strip();
        return stripped.length() > 30 ? stripped.substring(0, 30) + "…" : stripped;
    }

    private static Candidate best(List<Line> body, TableReading said) {
        Candidate best = null;
        for (Separator each : said.separator().map(List::of).orElse(SEPARATORS)) {
            char separator = each.sign();
            List<String[]> rows = split(body, separator);
            int columns = usualCount(rows);
            for (DecimalSign sign : said.decimalSign().map(List::of).orElse(List.of(DecimalSign.values()))) {
                boolean decimalComma = sign == DecimalSign.COMMA;
                CellText cells = new CellText(decimalComma);
                double score = 0;
                int numbers = 0;
                for (String[] row : rows) {
                    if (row.length != columns) {
                        score -= columns;
                        continue;
                    }
                    for (String cell : row) {
                        switch (cells.type(cell)) {
                            case NUMBER -> {
                                score++;
                                numbers++;
                            }
                            case CLOCK, DATE, DATE_TIME -> score++;
                            case WORDS -> score -= 0.5;
                            default -> {}
                        }
                    }
                }
                if (numbers > 0 && (best == null || score > best.score() + 1e-9)) {
                    best = new Candidate(separator, decimalComma, columns, score);
                }
            }
        }
        return best;
    }

    private static int usualCount(List<String[]> rows) {
        int[] counts = rows.stream().mapToInt(row -> row.length).sorted().toArray();
        int usual = 0;
        int most = 0;
        for (int from = 0; from < counts.length; ) {
            int to = from;
            while (to < counts.length && counts[to] == counts[from]) {
                to++;
            }
            if (to - from >= most) {
                most = to - from;
                usual = counts[from];
            }
            from = to;
        }
        return usual;
    }

    private static List<CellText.Type> types(List<Line> body, Candidate shape, CellText cells) {
        List<String[]> rows = split(body, shape.separator()).stream()
                .filter(row -> row.length == shape.columns())
                .toList();
        return IntStream.range(0, shape.columns())
                .mapToObj(column -> usualType(rows, column, cells))
                .toList();
    }

    private static CellText.Type usualType(List<String[]> rows, int column, CellText cells) {
        int[] counts = new int[CellText.Type.values().length];
        for (String[] row : rows) {
            counts[cells.type(row[column]).ordinal()]++;
        }
        // NaN and empty cells don't make a column of numbers one of words.
        int empty = counts[CellText.Type.EMPTY.ordinal()];
        if (2 * empty > rows.size()) {
            return CellText.Type.EMPTY;
        }
        CellText.Type usual = CellText.Type.NO_NUMBER;
        int most = 0;
        for (CellText.Type type : CellText.Type.values()) {
            boolean tells = type != CellText.Type.EMPTY && type != CellText.Type.NO_NUMBER;
            if (tells && counts[type.ordinal()] > most) {
                most = counts[type.ordinal()];
                usual = type;
            }
        }
        return usual == CellText.Type.NO_NUMBER ? CellText.Type.NUMBER : usual;
    }

    private static boolean isRow(String[] row, List<CellText.Type> types, CellText cells) {
        if (row.length != types.size()) {
            return false;
        }
        boolean number = false;
        for (int i = 0; i < row.length; i++) {
            CellText.Type type = cells.type(row[i]);
            boolean numeric =
                    types.get(i) == CellText.Type.NUMBER || types.get(i).stamp();
            if (numeric && type == CellText.Type.WORDS) {
                return false;
            }
            number |= type == CellText.Type.NUMBER;
        }
        return number;
    }

    private static List<String> headings(
            Path file, List<Line> lines, Line firstRow, Candidate shape, int columns, CellText cells) {
        List<Line> before = lines.subList(0, firstRow.number() - 1).stream()
                .filter(line -> !line.text().isBlank())
                .toList();
        for (int back = 1; back <= Math.min(HEADING_LINES_BACK, before.size()); back++) {
            Line line = before.get(before.size() - back);
            Optional<String[]> found = heading(line, shape.separator(), columns, cells);
            if (found.isEmpty()) {
                if (back == 1) {
                    refuseSplitDecimals(file, line, shape, columns);
                }
                continue;
            }
            String[] names = found.get();
            if (back < before.size() && Arrays.stream(names).allMatch(n -> n.isBlank() || ColumnHeading.unitOnly(n))) {
                Optional<String[]> above =
                        heading(before.get(before.size() - back - 1), shape.separator(), columns, cells);
                if (above.isPresent()) {
                    return withUnits(above.get(), names);
                }
            }
            return Arrays.asList(names);
        }
        return List.of();
    }

    private static List<String> withUnits(String[] names, String[] units) {
        return IntStream.range(0, names.length)
                .mapToObj(i -> units[i].isBlank()
                        ? names[i]
                        : names[i] + " (" + units[i].replaceAll("^[(\\[]|[)\\]]$", "") + ")")
                .toList();
    }

    /** The cells of a line where it can be a line of headings: words, and as many as there are columns. */
    private static Optional<String[]> heading(Line line, char separator, int columns, CellText cells) {
        String text = line.text().strip();
        if (remark(text, separator)) {
            text = text.replaceFirst("^[#/%!;]+\\s*", "");
        }
        String[] names = split(text, separator);
        if (names.length == columns + 1 && names[columns].isBlank()) {
            names = Arrays.copyOf(names, columns);
        }
        if (names.length == columns - 1) {
            names = Arrays.copyOf(names, columns);
            names[columns - 1] = "";
        }
        boolean words = Arrays.stream(names).anyMatch(name -> cells.type(name) == CellText.Type.WORDS);
        return names.length == columns && words ? Optional.of(names) : Optional.empty();
    }

    private static void refuseSplitDecimals(Path file, Line line, Candidate shape, int columns) {
        int names = split(line.text(), shape.separator()).length;
        if (shape.separator() == ',' && names > 1 && columns == 2 * names && !remark(line.text(), ',')) {
            throw BadInput.in(file)
                    .line(line.number())
                    .found(
                            names + " headings over rows of " + columns + " cells, as if commas were decimal signs too",
                            "another separator, decimal points, or quotes round the numbers");
        }
    }

    private static List<String[]> split(List<Line> lines, char separator) {
        return lines.stream()
                .map(line -> cells(line.text(), separator).toArray(String[]::new))
                .toList();
    }

    /** The cells of one line; one whose quotes don't close is one cell. */
    static List<String> cells(String line, char separator) {
        if (separator == WHITESPACE || line.indexOf('"') >= 0) {
            return List.of(split(line, separator));
        }
        List<String> cells = new ArrayList<>();
        int from = 0;
        for (int to; (to = line.indexOf(separator, from)) >= 0; from = to + 1) {
            cells.add(line.substring(from, to));
        }
        cells.add(line.substring(from));
        return cells;
    }

    /** The cells of one line. */
    static String[] split(String line, char separator) {
        if (separator == WHITESPACE) {
            String text = line.strip();
            return text.isEmpty() ? new String[0] : text.split("\\s+");
        }
        List<String[]> rows = splitText(line, separator);
        return rows.isEmpty() ? new String[0] : rows.get(0);
    }

    private static List<String[]> splitText(String text, char separator) {
        if (separator == WHITESPACE) {
            return text.lines().map(line -> split(line, separator)).toList();
        }
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .commentStrategy(CommentStrategy.NONE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .trimWhitespacesAroundQuotes(true)
                .ofCsvRecord(text)) {
            return reader.stream()
                    .map(row -> row.getFields().toArray(String[]::new))
                    .toList();
        } catch (CsvParseException e) {
            // Quotes that don't close: no rows of this separator.
            return text.lines().map(line -> new String[] {line}).toList();
        } catch (IOException e) {
            throw new IllegalStateException("reading from memory failed", e);
        }
    }
}
