package evenblade.input.intake;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import evenblade.base.fact.Count;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the rows of a table into one run of numbers per column that is wanted. */
final class TableRows {
    private static final double MOST_SKIPPED = 0.01;
    private static final int FEW = 2;

    private final Path file;
    private final TableShape shape;
    private final CellText cells;
    private final List<Integer> columns;
    private final List<GrowingNumbers> numbers = new ArrayList<>();
    private final double[] row;
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
     * @param skipped says how many rows were left out, if any
     */
    record Read(List<double[]> columns, Optional<Warning> skipped) {}

    /**
     * Reads to the end.
     *
     * @param text the file from its first character on; read to its end and left open
     * @param columns which columns are wanted, counted from 0
     * @throws BadInput where more than 1 % of the rows lack a number in a wanted column
     */
    static Read all(Path file, Reader text, TableShape shape, List<Integer> columns) throws IOException {
        TableRows rows = new TableRows(file, shape, columns);
        if (shape.separator() == TableShape.WHITESPACE) {
            rows.readSpaced(new BufferedReader(text));
        } else {
            rows.readSeparated(text);
        }
        return rows.finish();
    }

    private void readSeparated(Reader text) throws IOException {
        try {
            // Not closed here: the text belongs to the caller.
            CsvReader<CsvRecord> reader = CsvReader.builder()
                    .fieldSeparator(shape.separator())
                    .commentStrategy(CommentStrategy.NONE)
                    .allowMissingFields(true)
                    .allowExtraFields(true)
                    .trimWhitespacesAroundQuotes(true)
                    .ofCsvRecord(text);
            reader.skipLines(shape.firstRow() - 1);
            for (CsvRecord record : reader) {
                if (!TableShape.remark(record.getField(0), shape.separator())) {
                    take(record.getFields(), record.getStartingLineNumber());
                }
            }
        } catch (CsvParseException e) {
            throw BadInput.in(file)
                    .found("quotes that don't close (" + e.getMessage() + ")", "cells quoted on both sides");
        }
    }

    private void readSpaced(BufferedReader text) throws IOException {
        String line;
        for (long number = 1; (line = text.readLine()) != null; number++) {
            if (number >= shape.firstRow() && !line.isBlank() && !TableShape.remark(line, shape.separator())) {
                take(List.of(TableShape.split(line, shape.separator())), number);
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
        }
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
            String heading = column < shape.headings().size()
                    ? shape.headings().get(column).strip()
                    : "";
            String name = heading.isEmpty() ? "column " + (column + 1) : "column '" + heading + "'";
            firstSkipped = column >= found
                    ? found + " cells"
                    : (cell.isBlank() ? "an empty cell" : "\"" + cell.strip() + "\"") + " in " + name;
        }
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
        return new Read(arrays, warning);
    }
}
