package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.Level;
import java.util.List;

/**
 * One row of an order picture: a line, or several that lie on each other.
 *
 * @param name lines that lie on each other are named together
 * @param kind whose line it is
 * @param propellerOrder as a multiple of propeller speed
 * @param frequencyHz where it lies
 * @param level what was measured there, or why nothing could be
 * @param notToldApartFrom other rows whose lines are too near for the length of the run
 */
public record OrderBar(
        String name,
        MarkKind kind,
        double propellerOrder,
        double frequencyHz,
        Level level,
        List<String> notToldApartFrom) {
    public OrderBar {
        notToldApartFrom = List.copyOf(notToldApartFrom);
    }

    /** Its level in another unit. */
    OrderBar in(ShownUnit unit, SignalUnit from) {
        return level instanceof Level.Measured measured
                ? new OrderBar(
                        name,
                        kind,
                        propellerOrder,
                        frequencyHz,
                        measured.times(unit.factor(from, frequencyHz)),
                        notToldApartFrom)
                : this;
    }
}
