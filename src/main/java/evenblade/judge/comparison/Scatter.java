package evenblade.judge.comparison;

import evenblade.base.fact.Worded;
import evenblade.base.numeric.Distributions;

/**
 * How much a figure comes and goes between runs with nothing changed.
 *
 * @param deviation standard deviation of the natural logarithm of one run's figure
 * @param degreesOfFreedom with which it is known; infinite for an assumed one
 * @param source where it comes from
 * @param reach half the width of the 95 % interval of one run's logarithm, by this scatter alone
 */
public record Scatter(double deviation, double degreesOfFreedom, Source source, double reach) {
    /** Where a scatter comes from. */
    public enum Source implements Worded {
        /** Enough repeats of this figure alone. */
        REPEATS,
        /** A few repeats, of all figures of the same nature, weighed together with the assumed scatter. */
        FEW_REPEATS,
        /** No repeat run: assumed. */
        ASSUMED
    }

    /**
     * Assumed where there is no repeat run, of each line by itself, between two runs: 3 % for turning mass, 6 % for blade
     * pass, firing and gear mesh, 6.7 % for ratios of the two. The least that ground runs of an unchanged machine usually
     * show, beside what a sensor put back does to all lines ({@link CommonPart}); common practice, no source.
     */
    static Scatter assumed(Figure.Nature nature) {
        double turning = 0.03 / Math.sqrt(2); // two runs differ by √2 of what one scatters
        double loaded = 0.06 / Math.sqrt(2); // as above
        double deviation =
                switch (nature) {
                    case TURNING -> turning;
                    case LOADED -> loaded;
                    case RATIO -> Math.hypot(turning, loaded);
                };
        return of(deviation, Double.POSITIVE_INFINITY, Source.ASSUMED);
    }

    static Scatter of(double deviation, double degreesOfFreedom, Source source) {
        double quantile =
                Double.isInfinite(degreesOfFreedom) ? Distributions.reach95() : Distributions.reach95(degreesOfFreedom);
        return new Scatter(deviation, degreesOfFreedom, source, quantile * deviation);
    }

    /**
     * The within-run error and this scatter together. Repeats of the same figure hold its within-run error
     * already, so that the larger of the two counts; otherwise they add as squares.
     *
     * @param withinReach half width of the interval from within the runs
     * @param runs 2 for a difference of two runs, 1 for one run
     */
    double with(double withinReach, int runs) {
        double between = Math.sqrt(runs) * reach;
        return source == Source.REPEATS ? Math.max(withinReach, between) : Math.hypot(withinReach, between);
    }
}
