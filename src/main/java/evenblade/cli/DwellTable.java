package evenblade.cli;

import evenblade.installation.OrderTable;
import evenblade.orders.DwellOrders;
import evenblade.orders.Level;
import evenblade.orders.OrderReading;
import evenblade.units.SignalUnit;
import java.util.ArrayList;
import java.util.List;

/** The lines of one dwell of one channel as a table of at most 80 columns. */
final class DwellTable {
    private static final int MOST_DECIMALS_ALIGNED = 7;

    /** What is written in one row. */
    private record Row(String name, String hz, String amplitude, String range, String remark) {}

    private final DwellOrders dwell;
    private final boolean confirmed;
    private final int places;

    private DwellTable(DwellOrders dwell, boolean confirmed) {
        this.dwell = dwell;
        this.confirmed = confirmed;
        this.places = dwell.readings().stream()
                .filter(reading -> reading.level() instanceof Level.Measured)
                .mapToInt(reading -> decimals((Level.Measured) reading.level()))
                .filter(decimals -> decimals <= MOST_DECIMALS_ALIGNED)
                .max()
                .orElse(0);
    }

    /**
     * @param confirmed whether the speed is: without it nothing is called detected or not
     */
    static List<String> lines(DwellOrders dwell, SignalUnit unit, boolean confirmed) {
        return new DwellTable(dwell, confirmed).lines(unit);
    }

    private List<String> lines(SignalUnit unit) {
        List<Row> rows = new ArrayList<>();
        rows.add(new Row("order", "Hz", unit.display() + " peak", "± 95 %", ""));
        for (OrderReading reading : dwell.readings()) {
            rows.add(row(reading));
        }
        TextTable table = new TextTable("lrrr");
        rows.forEach(row -> table.row(row.name(), row.hz(), row.amplitude(), row.range()));
        List<String> cells = table.lines();
        int width = cells.stream().mapToInt(DwellTable::columns).max().orElse(0);
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            String remark = rows.get(i).remark();
            String start = cells.get(i);
            if (remark.isEmpty()) {
                lines.add(start);
                continue;
            }
            // Where there is no amplitude the remark takes its place.
            int column = rows.get(i).amplitude().isEmpty() ? columns(start) : width;
            String first = start + " ".repeat(column - columns(start) + 2);
            lines.addAll(Paragraph.lines(first, " ".repeat(column + 2), remark));
        }
        return lines;
    }

    private Row row(OrderReading reading) {
        String name = reading.line().name();
        String hz = AmplitudeText.fixed(reading.frequencyHz(), 2);
        if (reading.level() instanceof Level.BeyondRange beyond) {
            String remark = "beyond range, would appear at " + AmplitudeText.fixed(beyond.foldsToHz(), 1) + " Hz";
            return new Row(name, hz, "", "", remark);
        }
        Level.Measured measured = (Level.Measured) reading.level();
        String others = others(reading);
        if (!measured.detected() && confirmed) {
            return new Row(name, hz, "below " + figure(limit(measured), measured), "", others);
        }
        double half = (measured.ciHigh() - measured.ciLow()) / 2;
        return new Row(
                name,
                hz,
                figure(measured.amplitude(), measured),
                Double.isFinite(half) ? figure(half, measured) : "not known",
                joined(confirmed ? "" : "not confirmed", others));
    }

    /** Two figures of the error, or of the level that an undetected line lies below. */
    private static int decimals(Level.Measured measured) {
        double half = (measured.ciHigh() - measured.ciLow()) / 2;
        return AmplitudeText.decimals(measured.detected() ? half : limit(measured));
    }

    /** What an undetected line lies below; a lucky quiet spell doesn't make the fit better than its error. */
    private static double limit(Level.Measured measured) {
        return Math.max(measured.ciHigh(), 2 * measured.standardError());
    }

    private static int columns(String line) {
        return line.codePointCount(0, line.length());
    }

    private String figure(double value, Level.Measured measured) {
        return AmplitudeText.aligned(AmplitudeText.fixed(value, decimals(measured)), places);
    }

    private static String joined(String first, String second) {
        return first + (first.isEmpty() || second.isEmpty() ? "" : "; ") + second;
    }

    private String others(OrderReading reading) {
        List<String> same = new ArrayList<>();
        List<String> near = new ArrayList<>();
        for (String name : reading.inseparableFrom()) {
            boolean coincide = dwell.readings().stream()
                    .anyMatch(other ->
                            other.line().name().equals(name) && OrderTable.coincide(other.line(), reading.line()));
            (coincide ? same : near).add(name);
        }
        String one = same.isEmpty() ? "" : "one line with " + String.join(", ", same);
        String close = near.isEmpty() ? "" : "cannot be told apart from " + String.join(", ", near);
        return joined(one, close);
    }
}
