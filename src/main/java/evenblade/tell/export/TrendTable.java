package evenblade.tell.export;

import de.siegmar.fastcsv.writer.CsvWriter;
import evenblade.judge.comparison.Basis;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure.Kind;
import evenblade.judge.comparison.Trend;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/** Every figure over the runs of a job as CSV: a row for each figure of each run at each speed. */
public final class TrendTable {
    private TrendTable() {}

    /** The table as text, lines ended by CR LF. */
    public static String csv(List<Trend> channels) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(
                    "channel",
                    "unit of the value",
                    "speed of the group (engine rpm)",
                    "figure",
                    "run",
                    "speed (engine rpm)",
                    "below a limit (yes/no)",
                    "value (unit as stated)",
                    "95 % from (unit as stated)",
                    "95 % to (unit as stated)");
            for (Trend trend : channels) {
                for (Trend.SpeedGroup group : trend.speeds()) {
                    for (Trend.FigureLine line : group.lines()) {
                        for (Trend.Point point : line.points()) {
                            csv.writeRecord(List.of(
                                    Cell.of(trend.channel()),
                                    unit(trend, line),
                                    Cell.of(group.engineRpm()),
                                    line.figure().name(),
                                    Cell.of(point.run()),
                                    Cell.of(point.engineRpm()),
                                    point.value() instanceof ComparedValue.Below ? "yes" : "no",
                                    Cell.of(point.value().size()),
                                    Cell.of(point.ciLow()),
                                    Cell.of(point.ciHigh())));
                        }
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static String unit(Trend trend, Trend.FigureLine line) {
        boolean ratio = trend.basis() == Basis.GAIN_FREE || line.figure().kind() != Kind.AMPLITUDE;
        return ratio ? "ratio" : trend.unit().symbol();
    }
}
