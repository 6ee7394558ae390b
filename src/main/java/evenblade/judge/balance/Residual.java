package evenblade.judge.balance;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.PlanarSpread;
import java.util.List;

/**
 * What the 1× line will be in a run with certain weights on.
 *
 * @param amplitude as likely to be undercut as exceeded
 * @param low undercut in 2.5 of 100 cases
 * @param high exceeded in 2.5 of 100 cases
 * @param line the line as a vector, with its normal errors
 * @param freedom degrees of freedom behind those errors
 */
public record Residual(double amplitude, double low, double high, PlanarSpread line, double freedom) {
    /** Below this chance a check run doesn't fit. */
    private static final double FITS_FROM = 0.05;

    /** Predicts a run with these weights on and no others. */
    public static Residual of(Influence influence, List<Weight> weights) {
        PlanarSpread line = influence.predicted(weights);
        PlanarSpread wide = line.widened(influence.widening());
        return new Residual(
                wide.lengthQuantile(0.5), // the middle, and where 95 of 100 lie between
                wide.lengthQuantile(0.025), // 2.5 of 100 below
                wide.lengthQuantile(0.975), // 2.5 of 100 above
                line,
                influence.freedom());
    }

    /**
     * Holds a check run against it: its vector where both have a phase (F-test with 2 degrees of freedom), else its
     * amplitude.
     *
     * @param run the check run, with the weights on that were predicted for
     * @param phases whether the prediction's angles are those of a mark
     */
    public Check check(WeightedReading run, boolean phases) {
        double variance = run.standardError() * run.standardError();
        PlanarSpread seen = line.plusVariance(variance);
        double chance;
        if (phases && run.phaseDeg().isPresent()) {
            Phasor measured = run.vector();
            chance = Distributions.fTail(seen.distanceSquared(measured) / 2, 2, freedom);
        } else {
            double widening = Distributions.reach95(freedom) / Distributions.reach95();
            double below = seen.widened(widening).lengthBelow(run.amplitude());
            chance = 2 * Math.min(below, 1 - below);
        }
        return new Check(chance >= FITS_FROM, chance);
    }

    /**
     * A check run against its prediction.
     *
     * @param fits whether it is within what was to be expected in 95 of 100 cases
     * @param chance how often a run is as far off or farther by chance
     */
    public record Check(boolean fits, double chance) {}
}
