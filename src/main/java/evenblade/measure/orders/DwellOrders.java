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

    /** What was read at propeller 1×; empty where the installation has no such line. */
    public Optional<OrderReading> propellerOnce() {
        return readings.stream().filter(each -> each.line().propellerOnce()).findFirst();
    }

    /**
     * √(Σ A_k², k no multiple of the blade count) / √(Σ A_k², k a multiple): no gain can change it.
     *
     * @param value the ratio
     * @param ciLow lower end of its 95 % interval
     * @param ciHigh upper end
     */
    public record Unevenness(double value, double ciLow, double ciHigh) {}

    /**
     * A steady line that no order of the installation explains.
     *
     * @param frequencyHz where it lies
     * @param amplitude peak value in the channel's unit
     * @param propellerOrder as a multiple of the dwell's mean propeller speed
     * @param crankOrder as a multiple of the dwell's mean crank speed
     * @param followsSpeed whether it moves with the speed rather than standing at one frequency; false
     *     where the speed was too steady to tell
     * @param hum whether it stands where the mains do, as all such lines of the dwell together show it
     */
    public record UnexplainedLine(
            double frequencyHz,
            double amplitude,
            double propellerOrder,
            double crankOrder,
            boolean followsSpeed,
            boolean hum) {
        /** Ours: a line this near a whole order of a shaft may be one of its own. */
        private static final double WHOLE = 0.002;

        /** Whether it may be a multiple of the propeller's speed, higher than those measured. */
        public boolean ofThePropeller() {
            return whole(propellerOrder);
        }

        /** Whether it may be a multiple of the crank's speed, which the installation doesn't list. */
        public boolean ofTheCrank() {
            return whole(crankOrder);
        }

        private static boolean whole(double order) {
            double whole = Math.rint(order);
            return whole >= 1 && Math.abs(order / whole - 1) < WHOLE;
        }
    }
}
