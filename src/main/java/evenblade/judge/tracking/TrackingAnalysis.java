package evenblade.judge.tracking;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.judge.tracking.SwapFit.Deviation;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Everything that the tracking sessions of a job say together.
 *
 * @param sessions the sessions, in order of time
 * @param blades each blade against the mean of all
 * @param positions each hub position against the mean of all
 * @param trackNow the tips of the latest layout against their mean, all sessions used: blade and position together
 * @param separable whether every blade and every position can be told from the others
 * @param verdict what it points to
 * @param nextLayout what to try next
 * @param bestLayout what to keep
 * @param warnings what a reader has to know besides
 */
public record TrackingAnalysis(
        List<TrackingSession> sessions,
        List<Deviation> blades,
        List<Deviation> positions,
        List<Estimate> trackNow,
        boolean separable,
        TrackVerdict verdict,
        NextLayout nextLayout,
        BestLayout bestLayout,
        List<Warning> warnings) {
    public TrackingAnalysis {
        sessions = List.copyOf(sessions);
        blades = List.copyOf(blades);
        positions = List.copyOf(positions);
        trackNow = List.copyOf(trackNow);
        warnings = List.copyOf(warnings);
    }

    /**
     * Analyses sessions.
     *
     * @param sessions at least one, in order of time, all on the same hub
     */
    public static TrackingAnalysis of(List<TrackingSession> sessions) {
        return of(sessions, TrackLimits.USUAL);
    }

    /**
     * Analyses sessions.
     *
     * @param sessions at least one, in order of time, all on the same hub
     * @param limits what size of track error matters
     */
    public static TrackingAnalysis of(List<TrackingSession> sessions, TrackLimits limits) {
        SwapFit fit = SwapFit.of(sessions);
        NextLayout next = NextLayout.of(fit);
        return new TrackingAnalysis(
                fit.sessions(),
                fit.bladeDeviations(),
                fit.positionDeviations(),
                fit.predictedTrack(fit.latest().layout()).orElseThrow(),
                fit.separable(),
                TrackVerdict.of(fit, limits),
                next,
                BestLayout.of(fit),
                warnings(fit, next));
    }

    private static List<Warning> warnings(SwapFit fit, NextLayout next) {
        List<Warning> warnings = new ArrayList<>();
        if (fit.scatter().statedIsTooSmall()) {
            warnings.add(Warning.of(
                    WarningCode.READINGS_SCATTER_MORE,
                    Subject.Whole.TRACKING,
                    Measure.NUMBER.of(fit.scatter().factor())));
        }
        if (!next.allTried()) {
            warnings.add(
                    Warning.of(WarningCode.LAYOUTS_NOT_ALL_TRIED, Subject.Whole.TRACKING, new Count(fit.positions())));
        }
        return warnings;
    }

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
                    now,
                    layout -> rounded(known.with(layout, sigmaMm).worstVariance()),
                    Comparator.<Double>naturalOrder());
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
}
