package evenblade.tell.document;

import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import java.util.List;
import java.util.stream.Collectors;

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
     * All lines of a dwell; those that lie on each other are listed once, with all their names.
     *
     * @param confirmed whether the speed is: without it nothing is called detected or not
     */
    public static List<LineCells> of(DwellOrders dwell, boolean confirmed) {
        return places(dwell).stream().map(place -> of(place, confirmed)).toList();
    }

    /** The lines of a dwell by place, as {@link #of(DwellOrders, boolean)} lists them. */
    static List<OnePlace<OrderReading>> places(DwellOrders dwell) {
        return OnePlace.of(dwell.readings(), OrderReading::line);
    }

    /** One of them. */
    static LineCells of(OnePlace<OrderReading> place, boolean confirmed) {
        OrderReading reading = place.first();
        String name = place.name();
        String hz = FigureFormat.fixed(reading.frequencyHz(), 2);
        if (reading.level() instanceof Level.BeyondRange beyond) {
            String remark = beyond.foldsToHz().isPresent()
                    ? "beyond range, would appear at "
                            + FigureFormat.fixed(beyond.foldsToHz().getAsDouble(), 1) + " Hz"
                    : "above the usable band";
            return new LineCells(name, hz, "", "", remark, false, false);
        }
        Level.Measured level = (Level.Measured) reading.level();
        String others = others(place);
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

    private static String others(OnePlace<OrderReading> place) {
        List<OrderLine> own = place.all().stream().map(OrderReading::line).toList();
        String near = place.first().inseparableFrom().stream()
                .filter(line -> !own.contains(line))
                .map(OrderLine::name)
                .collect(Collectors.joining(", "));
        return near.isEmpty() ? "" : "can't be separated from " + near;
    }
}
