package evenblade.tell.export;

import de.siegmar.fastcsv.writer.CsvWriter;
import evenblade.base.units.SignalUnit;
import evenblade.measure.lines.SteadyLine;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/** The steady lines of one recording as CSV: a row for each, strongest first. */
public final class LinesTable {
    private LinesTable() {}

    /**
     * A row.
     *
     * @param line the line
     * @param orders names of the orders that lie there; may be empty
     */
    public record Row(SteadyLine line, List<String> orders) {
        public Row {
            orders = List.copyOf(orders);
        }
    }

    /** The table as text, lines ended by CR LF. */
    public static String csv(SignalUnit unit, List<Row> rows) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(
                    "frequency (Hz)",
                    "peak amplitude (" + unit.symbol() + ")",
                    "standard error (" + unit.symbol() + ")",
                    "steady",
                    "orders");
            for (Row row : rows) {
                csv.writeRecord(
                        Cell.of(row.line().frequencyHz()),
                        Cell.of(row.line().amplitude()),
                        Cell.of(row.line().standardError()),
                        row.line().steady() ? "yes" : "no",
                        String.join(" = ", row.orders()));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
