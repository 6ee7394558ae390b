package evenblade.judge.balance;

import evenblade.base.numeric.Distributions;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Whether angles of weights and phases turn the same way, as far as the runs themselves can say it.
 *
 * <p>Runs with weights at two or more angles fit V = V₀ + α·W only if both are counted in one sense; counted in the other,
 * V = V₀ + α·W̄ would fit. Both are tried with the same errors.
 *
 * @param asEntered residuals weighted by their errors, as entered
 * @param turned the same with the phases turned the other way
 * @param spareFigures what either should come to on average
 */
public record SenseCheck(double asEntered, double turned, int spareFigures) {
    /** A fit this unlikely is called wrong, and one above {@link #WELL} is called well. */
    private static final double BADLY = 0.001;

    private static final double WELL = 0.05; // the usual 5 %

    /** Nothing where the runs have too few different weights, or no phase. */
    static Optional<SenseCheck> of(List<WeightedReading> runs) {
        if (runs.stream().anyMatch(r -> r.phaseDeg().isEmpty())) {
            return Optional.empty();
        }
        List<WeightedReading> other = runs.stream().map(SenseCheck::turnedOver).toList();
        Optional<Influence> asEntered = InfluenceFit.withPhase(runs, TrialScatter.PRIOR);
        Optional<Influence> turned = InfluenceFit.withPhase(other, TrialScatter.PRIOR);
        if (asEntered.isEmpty() || turned.isEmpty() || asEntered.get().spareFigures() == 0) {
            return Optional.empty();
        }
        return Optional.of(new SenseCheck(
                asEntered.get().sumOfSquares(),
                turned.get().sumOfSquares(),
                asEntered.get().spareFigures()));
    }

    private static WeightedReading turnedOver(WeightedReading run) {
        return new WeightedReading(
                run.amplitude(), OptionalDouble.of(-run.phaseDeg().orElseThrow()), run.standardError(), run.weights());
    }

    /** Whether the runs contradict the sense as entered and agree with the other. */
    public boolean looksOther() {
        return chance(asEntered) < BADLY && chance(turned) > WELL;
    }

    private double chance(double squares) {
        return 1 - Distributions.chiSquareBelow(squares, spareFigures);
    }
}
