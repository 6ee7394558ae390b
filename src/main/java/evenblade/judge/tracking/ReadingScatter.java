package evenblade.judge.tracking;

import evenblade.base.numeric.Distributions;

/**
 * How much one reading scatters, from what was stated and what the readings themselves show.
 *
 * <p>The stated reading error is weighed like {@value #STATED_WORTH} readings of its own and pooled with the scatter of
 * the repeats and of the misfit. Where the readings scatter so much more than stated that chance would do it in fewer
 * than 1 case in 200, the stated figure is dropped and the readings' own scatter is used alone.
 *
 * @param factor standard deviation in use, as a multiple of the stated one
 * @param degreesOfFreedom what the Student t intervals use
 * @param fromReadings degrees of freedom that the readings themselves give
 * @param statedIsTooSmall whether the stated reading error was dropped
 */
public record ReadingScatter(double factor, double degreesOfFreedom, int fromReadings, boolean statedIsTooSmall) {
    /** So many degrees of freedom the stated error counts for: a guess good to about 9 %. */
    public static final double STATED_WORTH = 60;

    /** Chance below which the stated error is no longer believed. */
    private static final double DISBELIEF = 0.005;

    /**
     * Weighs stated and seen scatter.
     *
     * @param sumOfSquares squared residuals in units of the stated variance
     * @param degreesOfFreedom of that sum
     */
    static ReadingScatter of(double sumOfSquares, int degreesOfFreedom) {
        if (degreesOfFreedom > 0 && 1 - Distributions.chiSquareBelow(sumOfSquares, degreesOfFreedom) < DISBELIEF) {
            return new ReadingScatter(
                    Math.sqrt(sumOfSquares / degreesOfFreedom), degreesOfFreedom, degreesOfFreedom, true);
        }
        double worth = STATED_WORTH + degreesOfFreedom;
        return new ReadingScatter(Math.sqrt((STATED_WORTH + sumOfSquares) / worth), worth, degreesOfFreedom, false);
    }

    double variance() {
        return factor * factor;
    }
}
