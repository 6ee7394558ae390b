package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The 1× line of one run and the weights that were on. Runs with the same weights on are repeats of each other.
 *
 * @param amplitude in any one unit, the same for all runs; 0 or more
 * @param phaseDeg phase, turning the same way as the angles of weights; empty without a mark on the shaft
 * @param standardError of the line in this run, as its own scatter inside the run shows it; 0 or more
 * @param weights all weights that were on
 */
public record WeightedReading(double amplitude, OptionalDouble phaseDeg, double standardError, List<Weight> weights) {
    public WeightedReading {
        weights = List.copyOf(weights);
        if (!(amplitude >= 0 && standardError >= 0)) {
            throw new IllegalArgumentException("an amplitude of " + amplitude + " ± " + standardError);
        }
    }

    public static WeightedReading withPhase(
            double amplitude, double phaseDeg, double standardError, Weight... weights) {
        return new WeightedReading(amplitude, OptionalDouble.of(phaseDeg), standardError, List.of(weights));
    }

    public static WeightedReading withoutPhase(double amplitude, double standardError, Weight... weights) {
        return new WeightedReading(amplitude, OptionalDouble.empty(), standardError, List.of(weights));
    }

    /** Amplitude at its phase; at 0° where there is none. */
    public Phasor vector() {
        return Phasor.ofDegrees(amplitude, phaseDeg.orElse(0));
    }

    /** Sum of its weights in g·mm. */
    public Phasor weightGmm() {
        return weights.stream().map(Weight::vectorGmm).reduce(Phasor.ZERO, Phasor::plus);
    }

    /** Whether nothing was on. */
    public boolean bare() {
        return weights.isEmpty();
    }
}
