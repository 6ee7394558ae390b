package evenblade.judge.tracking;

import java.util.Comparator;

/**
 * The layout to mark next: the one that makes the least known difference between two blades or between two hub
 * positions best known. Of several that do it equally well, the one that moves the fewest blades.
 *
 * @param layout the layout
 * @param worstStandardErrorMm standard error in mm that the least known difference will have after one more mark per
 *     blade, with the reading error in use
 * @param blades number of blades that move
 * @param allTried whether all permutations were tried; above six blades a bounded search is made instead
 */
public record NextLayout(Layout layout, double worstStandardErrorMm, int blades, boolean allTried) {
    /** Variances are compared to this many binary digits, so that rounding doesn't decide between equals. */
    private static final int DIGITS = 30;

    /** Searches the layouts of the blades that sit on the hub now. */
    public static NextLayout of(SwapFit fit) {
        Layout now = fit.latest().layout();
        Information known = new Information(fit.positions(), fit.blades());
        for (int s = 0; s < fit.sessions().size(); s++) {
            known.add(fit.sessions().get(s), fit.model().errorsMm().get(s));
        }
        double sigmaMm = fit.statedErrorMm();
        Permutations.Judged<Double> best = Permutations.least(
                now, layout -> rounded(known.with(layout, sigmaMm).worstVariance()), Comparator.<Double>naturalOrder());
        return new NextLayout(
                best.layout(),
                fit.scatter().factor()
                        * Math.sqrt(known.with(best.layout(), sigmaMm).worstVariance()),
                best.layout().movedFrom(now),
                Permutations.allTried(now));
    }

    private static double rounded(double variance) {
        if (Double.isInfinite(variance)) {
            return variance;
        }
        double step = Math.scalb(1.0, Math.getExponent(variance) - DIGITS);
        return Math.rint(variance / step) * step;
    }
}
