package evenblade.face.app;

import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.List;

/**
 * One line of a dwell as people read it, in cells of text.
 *
 * @param name of the order
 * @param hz where it lies
 * @param amplitude peak value, or what it lies below; empty where the range of the file ends before it
 * @param range half of its 95 % interval; empty where it wasn't detected
 * @param remark what else to know; may be empty
 */
public record OrderCells(String name, String hz, String amplitude, String range, String remark) {
    /**
     * All lines of a dwell.
     *
     * @param confirmed whether the speed is: without it nothing is called detected or not
     */
    public static List<OrderCells> of(DwellOrders dwell, boolean confirmed) {
        return dwell.readings().stream()
                .map(reading -> of(reading, dwell, confirmed))
                .toList();
    }

    private static OrderCells of(OrderReading reading, DwellOrders dwell, boolean confirmed) {
        String name = reading.line().name();
        String hz = FigureText.fixed(reading.frequencyHz(), 2);
        if (reading.level() instanceof Level.BeyondRange beyond) {
            String remark = beyond.foldsToHz().isPresent()
                    ? "beyond range, would appear at "
                            + FigureText.fixed(beyond.foldsToHz().getAsDouble(), 1) + " Hz"
                    : "above the usable band";
            return new OrderCells(name, hz, "", "", remark);
        }
        Level.Measured measured = (Level.Measured) reading.level();
        int decimals = decimals(measured);
        String others = others(reading, dwell);
        if (!measured.detected() && confirmed) {
            return new OrderCells(name, hz, "below " + FigureText.fixed(limit(measured), decimals), "", others);
        }
        double half = (measured.ciHigh() - measured.ciLow()) / 2;
        return new OrderCells(
                name,
                hz,
                FigureText.fixed(measured.amplitude(), decimals),
                Double.isFinite(half) ? FigureText.fixed(half, decimals) : "not known",
                joined(confirmed ? "" : "not confirmed", others));
    }

    /** Two figures of the error, or of the level that an undetected line lies below. */
    private static int decimals(Level.Measured measured) {
        double half = (measured.ciHigh() - measured.ciLow()) / 2;
        return FigureText.decimals(measured.detected() ? half : limit(measured));
    }

    /** What an undetected line lies below; a lucky quiet spell doesn't make the fit better than its error. */
    private static double limit(Level.Measured measured) {
        return Math.max(measured.ciHigh(), 2 * measured.standardError());
    }

    private static String joined(String first, String second) {
        return first + (first.isEmpty() || second.isEmpty() ? "" : "; ") + second;
    }

    private static String others(OrderReading reading, DwellOrders dwell) {
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
