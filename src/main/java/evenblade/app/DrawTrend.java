package evenblade.app;

import evenblade.chart.Picture;
import evenblade.comparison.Trend;
import evenblade.report.TrendPictures;
import java.util.Optional;

/** Answers what a channel's trend over the runs of a job looks like. */
public final class DrawTrend {
    private DrawTrend() {}

    /** Propeller 1×, blade pass and unevenness over the runs; empty with fewer than two runs to follow. */
    public static Optional<Picture> answer(Trend trend) {
        return TrendPictures.overJob(trend);
    }
}
