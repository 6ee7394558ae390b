package evenblade.tell.export;

import de.siegmar.fastcsv.writer.CsvWriter;
import evenblade.base.units.SignalUnit;
import evenblade.measure.signal.Spectrum;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** The spectra of one run as CSV: a row for each frequency, a column for each channel. */
public final class SpectrumTable {
    private SpectrumTable() {}

    /**
     * One channel's column.
     *
     * @param channel its name
     * @param unit of the amplitudes
     * @param spectrum amplitude spectrum; all columns of a table have the same frequencies
     */
    public record Column(String channel, SignalUnit unit, Spectrum spectrum) {}

    /** The table as text, lines ended by CR LF. */
    public static String csv(List<Column> columns) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            List<String> header = new ArrayList<>(List.of("frequency (Hz)"));
            columns.forEach(column -> header.add(Cell.of(column.channel()) + ", peak amplitude ("
                    + column.unit().symbol() + ")"));
            csv.writeRecord(header);
            int rows = columns.stream()
                    .mapToInt(column -> column.spectrum().values().size())
                    .min()
                    .orElse(0);
            for (int i = 0; i < rows; i++) {
                List<String> cells = new ArrayList<>();
                cells.add(Cell.of(columns.get(0).spectrum().frequenciesHz().at(i)));
                for (Column column : columns) {
                    cells.add(Cell.of(column.spectrum().values().at(i)));
                }
                csv.writeRecord(cells);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
