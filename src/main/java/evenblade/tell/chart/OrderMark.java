package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A line to mark in a spectrum or waterfall.
 *
 * @param name as labelled; lines that lie on each other are named together
 * @param kind whose line it is
 * @param propellerOrder as a multiple of propeller speed; 0 where no order was looked for
 * @param frequencyHz where it lies
 * @param amplitude measured peak value in the channel's unit; empty where nothing was measured
 * @param half half the 95 % interval of that amplitude; 0 where it isn't known
 * @param detected whether it stands out of the noise
 */
public record OrderMark(
        String name,
        MarkKind kind,
        double propellerOrder,
        double frequencyHz,
        OptionalDouble amplitude,
        double half,
        boolean detected) {
    public OrderMark(
            String name,
            MarkKind kind,
            double propellerOrder,
            double frequencyHz,
            OptionalDouble amplitude,
            boolean detected) {
        this(name, kind, propellerOrder, frequencyHz, amplitude, 0, detected);
    }

    /** Its amplitude in another unit. */
    OrderMark in(ShownUnit unit, SignalUnit from) {
        double factor = unit.factor(from, frequencyHz);
        OptionalDouble shown =
                amplitude.isPresent() ? OptionalDouble.of(factor * amplitude.getAsDouble()) : OptionalDouble.empty();
        return new OrderMark(name, kind, propellerOrder, frequencyHz, shown, factor * half, detected);
    }

    /** Where the line lies at another speed of the propeller; empty where it follows no shaft. */
    public Optional<OrderMark> at(double propellerHz) {
        return kind.order()
                ? Optional.of(new OrderMark(
                        name, kind, propellerOrder, propellerOrder * propellerHz, amplitude, half, detected))
                : Optional.empty();
    }

    /** The line alone, for pictures of several runs in which its amplitude differs. */
    OrderMark withoutAmplitude() {
        return new OrderMark(name, kind, propellerOrder, frequencyHz, OptionalDouble.empty(), detected);
    }
}
