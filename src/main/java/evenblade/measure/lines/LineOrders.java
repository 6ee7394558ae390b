package evenblade.measure.lines;

import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.measure.speed.Dwell;
import java.util.List;
import java.util.OptionalDouble;

/** Says which orders of a known speed a steady line may be. */
public final class LineOrders {
    /** A folded line that moves further has sunk into the noise; it would explain any peak nearby. Our own choice. */
    private static final double WIDEST_BINS = 20;

    private LineOrders() {}

    /**
     * The orders that lie where the line stands, or else those that appear there because the sensor samples too slowly
     * for them: within a bin, or within what the speed moved them in the dwell.
     *
     * @param dwell a dwell whose speed is known
     * @param line found in a stretch that overlaps it
     * @param binHz resolution of the spectrum it was found in
     */
    public static List<OrderReading> of(DwellOrders dwell, SteadyLine line, double binHz) {
        List<OrderReading> there = near(dwell, line, binHz, false);
        return there.isEmpty() ? near(dwell, line, binHz, true) : there;
    }

    private static List<OrderReading> near(DwellOrders dwell, SteadyLine line, double binHz, boolean folded) {
        return dwell.readings().stream()
                .filter(reading -> folded(reading).isPresent() == folded)
                .filter(reading -> within(dwell.dwell(), reading, line.frequencyHz(), binHz))
                .toList();
    }

    /** Their names, with a word to those that only appear there. */
    public static List<String> names(DwellOrders dwell, SteadyLine line, double binHz) {
        return of(dwell, line, binHz).stream()
                .map(reading -> reading.line().name() + (folded(reading).isPresent() ? " (folded)" : ""))
                .toList();
    }

    private static OptionalDouble folded(OrderReading reading) {
        return reading.level() instanceof Level.BeyondRange beyond ? beyond.foldsToHz() : OptionalDouble.empty();
    }

    private static boolean within(Dwell dwell, OrderReading reading, double hz, double binHz) {
        if (reading.level() instanceof Level.BeyondRange beyond
                && beyond.foldsToHz().isEmpty()) {
            // Above what is measured, and not seen elsewhere either.
            return false;
        }
        double order = reading.line().propellerOrder();
        double slower = Math.max(0, reading.frequencyHz() - order * dwell.minHz());
        double faster = Math.max(0, order * dwell.maxHz() - reading.frequencyHz());
        OptionalDouble folded = folded(reading);
        if (folded.isPresent()) {
            // Whether a folded line moves up or down with the speed isn't asked: either way it stays this near.
            double moves = Math.max(slower, faster);
            return moves < WIDEST_BINS * binHz && Math.abs(hz - folded.getAsDouble()) < moves + binHz;
        }
        return hz > reading.frequencyHz() - slower - binHz && hz < reading.frequencyHz() + faster + binHz;
    }
}
