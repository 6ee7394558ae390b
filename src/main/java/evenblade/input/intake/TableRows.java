package evenblade.input.intake;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads the rows of a table into one run of numbers per column that is wanted. */
final class TableRows {
    private static final double MOST_SKIPPED = 0.01; // ours: more is no table
    private static final int FEW = 2; // a torn last line, and one more

    /** Beyond nanoseconds since 1970 (1.8e18) and every sensor, and far from where a square overflows. */
    private static final double MOST_IN_A_CELL = 1e20;

    private final Path file;
    private final TableShape shape;
    private final CellText cells;
    private final List<Integer> columns;
    private final List<GrowingNumbers> numbers = new ArrayList<>();
    private final double[] row;
    private final GrowingNumbers lines = new GrowingNumbers();
    private long firstDay;
    private long skipped;
    private long firstSkippedLine;
    private String firstSkipped = "";

    private TableRows(Path file, TableShape shape, List<Integer> columns) {
        this.file = file;
        this.shape = shape;
        this.cells = new CellText(shape.decimalComma());
        this.columns = columns;
        this.row = new double[columns.size()];
        columns.forEach(column -> numbers.add(new GrowingNumbers()));
    }

    /**
     * The numbers of the wanted columns; date and clock cells in seconds.
     *
     * @param columns one run of numbers per wanted column, all of the same length
     * @param lines the line of the file that each row stands in, counted from 1
     * @param skipped says how many rows were left out, if any
     */
    record Read(List<double[]> columns, double[] lines, Optional<Warning> skipped) {}

    /**
     * Reads to the end.
     *
     * @param text the file from its first character on; read to its end and left open
     * @param columns which columns are wanted, counted from 0
     * @throws BadInput where more than 1 % of the rows lack a number in a wanted column
     */
    static Read all(Path file, Reader text, TableShape shape, List<Integer> columns) throws IOException {
        TableRows rows = new TableRows(file, shape, columns);
        rows.read(new LineSource(text));
        return rows.finish();
    }

    private void read(LineSource text) throws IOException {
        Optional<String> next;
        while ((next = text.next()).isPresent()) {
            String line = next.get();
            if (text.number() >= shape.firstRow() && !line.isBlank() && !TableShape.remark(line, shape.separator())) {
                take(TableShape.cells(line, shape.separator()), text.number());
            }
        }
    }

    private void take(List<String> fields, long line) {
        for (int i = 0; i < row.length; i++) {
            int column = columns.get(i);
            String cell = column < fields.size() ? fields.get(column) : "";
            row[i] = value(cell, column);
            if (Double.isNaN(row[i])) {
                skip(cell, column, fields.size(), line);
                return;
            }
            if (Math.abs(row[i]) > MOST_IN_A_CELL) {
                throw BadInput.in(file)
                        .line(line)
                        .found(
                                cell.strip() + " in " + named(column),
                                "numbers that something can have measured, up to "
                                        + String.format(Locale.ROOT, "%.0e", MOST_IN_A_CELL));
            }
        }
        lines.add(line);
        for (int i = 0; i < row.length; i++) {
            numbers.get(i).add(row[i]);
        }
    }

    private double value(String cell, int column) {
        if (!shape.types().get(column).stamp()) {
            return cells.number(cell);
        }
        if (firstDay == 0) {
            firstDay = CellText.dayOf(cell);
        }
        return cells.seconds(cell, firstDay);
    }

    private void skip(String cell, int column, int found, long line) {
        skipped++;
        if (skipped == 1) {
            firstSkippedLine = line;
            String name = named(column);
            firstSkipped = column >= found
                    ? found + " cells"
                    : (cell.isBlank() ? "an empty cell" : "\"" + cell.strip() + "\"") + " in " + name;
        }
    }

    private String named(int column) {
        String heading =
                column < shape.headings().size() ? shape.headings().get(column).strip() : "";
        return heading.isEmpty() ? "column " + (column + 1) : "column '" + heading + "'";
    }

    private Read finish() {
        int kept = numbers.get(0).size();
        if (skipped > Math.max(FEW, MOST_SKIPPED * (kept + skipped))) {
            throw BadInput.in(file)
                    .line(firstSkippedLine)
                    .found(
                            firstSkipped + " (" + skipped + " of " + (kept + skipped) + " rows are like that)",
                            "a number in every cell of at least 99 % of the rows");
        }
        Optional<Warning> warning = skipped == 0
                ? Optional.empty()
                : Optional.of(Warning.of(
                        WarningCode.ROWS_SKIPPED,
                        new Subject.FileLine(firstSkippedLine),
                        new Count(skipped),
                        new Count(kept + skipped),
                        new Count(firstSkippedLine),
                        new Quoted(firstSkipped)));
        List<double[]> arrays = new ArrayList<>();
        while (!numbers.isEmpty()) {
            // Let go of one by one, so that not all of them are held twice.
            arrays.add(numbers.remove(0).toArray());
        }
        return new Read(arrays, lines.toArray(), warning);
    }
}
