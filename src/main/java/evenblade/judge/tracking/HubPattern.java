package evenblade.judge.tracking;

import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Readings round the hub taken apart by how they repeat in a turn, in the unit of the readings.
 *
 * <p>{@code first} is T = (2/B)·Σ d e^{−jθ}: what shakes once a turn. A tilted disc gives it and nothing else; its
 * size is then half of the tilt's peak to peak, and its angle, with the sign turned, is where on the hub the tips stand
 * farthest out. With two
 * blades it is one number along the blades, the full difference of the two.
 *
 * <p>{@code pair} is the same at twice the angle: opposite blades alike, neighbours not. It shakes twice a turn and not
 * once. Only from four blades on; with exactly four it too is one number, twice the size of the alternation.
 *
 * @param first once a turn
 * @param pair twice a turn
 */
public record HubPattern(Phasor first, Optional<Phasor> pair) {
    private static final int FEWEST_FOR_PAIR = 4; // a second harmonic of three places is their first

    /**
     * Takes readings apart.
     *
     * @param byPosition one reading per hub position in order; a constant added to all changes nothing
     */
    public static HubPattern of(List<Double> byPosition) {
        return new HubPattern(
                harmonic(byPosition, 1),
                byPosition.size() >= FEWEST_FOR_PAIR ? Optional.of(harmonic(byPosition, 2)) : Optional.empty());
    }

    /** The pattern of a layout as predicted from the sessions, in mm; nothing where they can't tell. */
    public static Optional<HubPattern> predicted(SwapFit fit, Layout layout) {
        return fit.predictedMarksMm(layout).map(HubPattern::of);
    }

    /** Size of the part once a turn, in the unit of the readings. */
    public double onceATurn() {
        return first.magnitude();
    }

    /** Size of the part twice a turn, likewise; nothing below four blades. */
    public OptionalDouble twiceATurn() {
        return pair.isPresent() ? OptionalDouble.of(pair.get().magnitude()) : OptionalDouble.empty();
    }

    /** Angle of a hub position counted from 1, in degrees from position 1. */
    static double degreesAt(int position, int positions) {
        return 360.0 * (position - 1) / positions;
    }

    private static Phasor harmonic(List<Double> byPosition, int times) {
        int n = byPosition.size();
        double mean = MarkStatistics.mean(byPosition);
        Phasor sum = Phasor.ZERO;
        for (int p = 1; p <= n; p++) {
            sum = sum.plus(Phasor.ofDegrees(byPosition.get(p - 1) - mean, -times * degreesAt(p, n)));
        }
        return sum.times(2.0 / n);
    }
}
