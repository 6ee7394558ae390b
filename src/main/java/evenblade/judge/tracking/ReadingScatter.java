package evenblade.judge.tracking;

import evenblade.base.numeric.Distributions;

/**
 * How much one reading scatters, from what was stated and what the readings themselves show.
 *
 * <p>The stated reading error is weighed like {@value #STATED_WORTH} readings of its own and pooled with the scatter of
 * the repeats and of the misfit, so that a few readings that scatter more, or less, are soon believed.
 *
 * @param factor standard deviation in use, as a multiple of the stated one (with the rounding that the readings show)
 * @param degreesOfFreedom what the Student t intervals use
 * @param fromReadings degrees of freedom that the readings themselves give
 * @param chance with which readings as good as stated would scatter so much or more
 */
public record ReadingScatter(double factor, double degreesOfFreedom, int fromReadings, double chance) {
    /** So many readings the stated error counts for: a guess that may well be half or double of what is true. */
    public static final double STATED_WORTH = 5;

    /**
     * What the width of the intervals takes the stated error for. Where it is right, intervals then hold in 95 to 97 of
     * 100 cases; with {@link #STATED_WORTH} here too they would hold in up to 99. Ours, from the simulations in
     * docs/figures.md.
     */
    private static final double WORTH_FOR_INTERVALS = 20;

    /** Chance below which the stated error is no longer believed. */
    private static final double DISBELIEF = 0.005;

    /**
     * Weighs stated and seen scatter.
     *
     * @param sumOfSquares squared residuals in units of the stated variance
     * @param degreesOfFreedom of that sum
     */
    static ReadingScatter of(double sumOfSquares, int degreesOfFreedom) {
        double chance = degreesOfFreedom > 0 ? 1 - Distributions.chiSquareBelow(sumOfSquares, degreesOfFreedom) : 1;
        return new ReadingScatter(
                Math.sqrt((STATED_WORTH + sumOfSquares) / (STATED_WORTH + degreesOfFreedom)),
                WORTH_FOR_INTERVALS + degreesOfFreedom,
                degreesOfFreedom,
                chance);
    }

    /** Whether the readings scatter so much that the stated error can't be right. */
    public boolean statedIsTooSmall() {
        return chance < DISBELIEF;
    }

    double variance() {
        return factor * factor;
    }
}
