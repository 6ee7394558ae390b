package evenblade.measure.orders;

import evenblade.measure.speed.Dwell;
import java.util.List;
import java.util.Optional;

/**
 * All lines of one channel in one dwell.
 *
 * @param dwell the stretch
 * @param readings one per line of the order table, in its order
 * @param unexplained other steady lines, strongest first
 * @param unevenness propeller orders that only differing blades make, over those that all blades
 *     make; empty where blade pass isn't detected
 * @param swell the one slow rate at which the whole signal swells and fades, where one stands out
 * @param blades how each blade differs; empty without a mark on the propeller
 */
public record DwellOrders(
        Dwell dwell,
        List<OrderReading> readings,
        List<UnexplainedLine> unexplained,
        Optional<Unevenness> unevenness,
        Optional<SlowSwell.Swell> swell,
        Optional<BladeShares> blades) {
    /** Lines measured without a mark. */
    public DwellOrders(
            Dwell dwell,
            List<OrderReading> readings,
            List<UnexplainedLine> unexplained,
            Optional<Unevenness> unevenness) {
        this(dwell, readings, unexplained, unevenness, Optional.empty(), Optional.empty());
    }

    public DwellOrders {
        readings = List.copyOf(readings);
        unexplained = List.copyOf(unexplained);
    }

    /**
     * √(Σ A_k², k no multiple of the blade count) / √(Σ A_k², k a multiple): no gain can change it.
     *
     * @param value the ratio
     * @param ciLow lower end of its 95 % interval
     * @param ciHigh upper end
     */
    public record Unevenness(double value, double ciLow, double ciHigh) {}
}
