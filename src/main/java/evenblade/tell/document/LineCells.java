package evenblade.tell.document;

import evenblade.machine.installation.OrderTable;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.ArrayList;
import java.util.List;

/**
 * One line of a dwell as people read it.
 *
 * @param name of the order
 * @param hz where it lies
 * @param amplitude peak value, or what it lies below; empty where nothing could be measured
 * @param range half of its 95 % interval; empty where it wasn't detected
 * @param remark what else to know; may be empty
 * @param detected whether it stands out of the noise; where no speed is confirmed nothing is said of that
 * @param hidden whether it was looked for and lies in the noise
 */
public record LineCells(
        String name, String hz, String amplitude, String range, String remark, boolean detected, boolean hidden) {
    /**
     * All lines of a dwell.
     *
     * @param confirmed whether the speed is: without it nothing is called detected or not
     */
    public static List<LineCells> of(DwellOrders dwell, boolean confirmed) {
        return dwell.readings().stream()
                .map(reading -> of(reading, dwell, confirmed))
                .toList();
    }

    private static LineCells of(OrderReading reading, DwellOrders dwell, boolean confirmed) {
        String name = reading.line().name();
        String hz = FigureFormat.fixed(reading.frequencyHz(), 2);
        if (reading.level() instanceof Level.BeyondRange beyond) {
            String remark = beyond.foldsToHz().isPresent()
                    ? "beyond range, would appear at "
                            + FigureFormat.fixed(beyond.foldsToHz().getAsDouble(), 1) + " Hz"
                    : "above the usable band";
            return new LineCells(name, hz, "", "", remark, false, false);
        }
        Level.Measured level = (Level.Measured) reading.level();
        String others = others(reading, dwell);
        if (!level.detected() && confirmed) {
            return new LineCells(name, hz, FigureFormat.below(FigureFormat.limit(level)), "", others, false, true);
        }
        double half = FigureFormat.half(level);
        return new LineCells(
                name,
                hz,
                FigureFormat.value(level.amplitude(), half),
                FigureFormat.error(level.amplitude(), half),
                joined(confirmed ? "" : "not confirmed", others),
                confirmed,
                false);
    }

    /** Amplitude and range in one: {@code 0.656 ± 0.012}, {@code below 0.0018}, or why there is none. */
    public String level() {
        return amplitude.isEmpty() ? remark : range.isEmpty() ? amplitude : amplitude + " ± " + range;
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
        String close = near.isEmpty() ? "" : "can't be separated from " + String.join(", ", near);
        return joined(one, close);
    }
}
