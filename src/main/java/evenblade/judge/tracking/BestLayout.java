package evenblade.judge.tracking;

import java.util.Comparator;
import java.util.List;

/**
 * The layout to keep: the one with the least predicted spread. Of several alike, the one that moves the fewest blades.
 *
 * <p>The interval is analytic: Student's t on the difference between the tips that are predicted highest and lowest,
 * cut off at zero. It holds the truth in about 95 of 100 cases where the spread is larger than the reading error, and
 * more often where it is smaller.
 *
 * @param layout the layout
 * @param predictedSpread largest less smallest tip, predicted
 * @param spreadNow the same for the layout as it stands
 * @param blades number of blades that move
 * @param allTried whether all permutations were tried; above six blades a bounded search is made instead
 */
public record BestLayout(Layout layout, Estimate predictedSpread, Estimate spreadNow, int blades, boolean allTried) {
    /** Spreads in mm closer than this are the same. */
    private static final double SAME_MM = 1e-6;

    /** The best of the layouts whose track the sessions can predict; with one layout tried, that is this one. */
    public static BestLayout of(SwapFit fit) {
        Layout now = fit.latest().layout();
        Permutations.Judged<Double> best = Permutations.least(
                now,
                layout -> fit.predictedMarksMm(layout)
                        .map(marks -> Math.rint(MarkStatistics.spread(marks) / SAME_MM) * SAME_MM)
                        .orElse(Double.POSITIVE_INFINITY),
                Comparator.<Double>naturalOrder());
        return new BestLayout(
                best.layout(),
                spread(fit, best.layout()),
                spread(fit, now),
                best.layout().movedFrom(now),
                Permutations.allTried(now));
    }

    private static Estimate spread(SwapFit fit, Layout layout) {
        List<Double> marks = fit.predictedMarksMm(layout).orElseThrow();
        int highest = 0;
        int lowest = 0;
        for (int p = 1; p < marks.size(); p++) {
            highest = marks.get(p) > marks.get(highest) ? p : highest;
            lowest = marks.get(p) < marks.get(lowest) ? p : lowest;
        }
        Estimate difference = fit.trackDifference(layout, highest, lowest);
        return new Estimate(
                difference.valueMm(),
                difference.standardErrorMm(),
                Math.max(0, difference.lowMm()),
                difference.highMm());
    }
}
