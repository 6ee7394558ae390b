package evenblade.judge.tie;

import evenblade.base.numeric.Phasor;
import evenblade.judge.tracking.Estimate;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.Permutations;
import evenblade.judge.tracking.SwapFit;
import java.util.Comparator;
import java.util.List;

/**
 * The layout predicted to shake least at propeller 1×, which need not be the one with the least track spread: a track
 * error may work against what mass or engine leave.
 *
 * @param layout the layout
 * @param predicted 1× predicted for it
 * @param now 1× predicted for the layout as it stands
 * @param allTried whether all permutations were tried; above six blades a bounded search is made instead
 */
public record SmoothestLayout(Layout layout, Size predicted, Size now, boolean allTried) {
    /** Searches the layouts whose track the tracking sessions can predict. */
    public static SmoothestLayout of(TrackTie tie, SwapFit fit) {
        Layout start = fit.latest().layout();
        Permutations.Judged<Double> best = Permutations.least(
                start,
                layout -> HubPattern.predicted(fit, layout)
                        .map(pattern -> tie.expected(pattern.first()))
                        .orElse(Double.POSITIVE_INFINITY),
                Comparator.<Double>naturalOrder());
        return new SmoothestLayout(
                best.layout(),
                predict(tie, fit, best.layout()),
                predict(tie, fit, start),
                Permutations.allTried(start));
    }

    private static Size predict(TrackTie tie, SwapFit fit, Layout layout) {
        List<Estimate> track = fit.predictedTrack(layout).orElseThrow();
        Phasor pattern =
                HubPattern.of(track.stream().map(Estimate::valueMm).toList()).first();
        double variance = track.stream()
                .mapToDouble(e -> e.standardErrorMm() * e.standardErrorMm())
                .average()
                .orElseThrow();
        // Each part of (2/B)·Σ d·e^{−jθ} has the variance (4/B²)·(B/2)·var(d).
        return tie.predicted(pattern, Math.sqrt(2 * variance / track.size()));
    }
}
