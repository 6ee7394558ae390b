package evenblade.measure.lines;

import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import java.util.List;

/** Says which orders of a known speed a steady line may be. */
public final class LineOrders {
    private LineOrders() {}

    /**
     * The orders that lie where the line stands: within a bin, or within what the speed moved them in the dwell.
     *
     * @param dwell a dwell whose speed is known
     * @param line found in a stretch that overlaps it
     * @param binHz resolution of the spectrum it was found in
     */
    public static List<OrderReading> of(DwellOrders dwell, SteadyLine line, double binHz) {
        return dwell.readings().stream()
                .filter(reading -> within(dwell.dwell(), reading, line.frequencyHz(), binHz))
                .toList();
    }

    private static boolean within(Dwell dwell, OrderReading reading, double hz, double binHz) {
        double order = reading.line().propellerOrder();
        return hz > Math.min(order * dwell.minHz(), reading.frequencyHz()) - binHz
                && hz < Math.max(order * dwell.maxHz(), reading.frequencyHz()) + binHz;
    }
}
