package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.judge.comparison.Trend;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.tell.chart.Picture;
import evenblade.tell.report.TrendPictures;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Answers what the runs of a job look like one after the other. */
public final class DrawTrend {
    private DrawTrend() {}

    /** Propeller 1×, blade pass and unevenness over the runs; empty with fewer than two runs to follow. */
    public static Optional<Picture> draw(Trend trend) {
        return TrendPictures.overJob(trend, Optional.empty());
    }

    /**
     * The pictures by name: {@code runs-1}, {@code runs-2} … of each channel over the runs, {@code against-rpm} of the
     * newest run that has several dwells.
     */
    public static Map<String, Picture> all(Path job, ShowTrend.Answer shown) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        for (int i = 0; i < shown.channels().size(); i++) {
            String name = "runs-" + (i + 1);
            draw(shown.channels().get(i)).ifPresent(picture -> pictures.put(name, picture));
        }
        Optional<String> channel = shown.channels().stream().map(Trend::channel).findFirst();
        JobRuns runs = new JobRuns(JobFolder.open(job));
        List<Event> events =
                shown.runs().stream().map(ShowTrend.NamedRun::event).toList();
        for (int i = events.size() - 1; i >= 0 && !pictures.containsKey("against-rpm"); i--) {
            againstRpm(runs, events.get(i), channel).ifPresent(picture -> pictures.put("against-rpm", picture));
        }
        return pictures;
    }

    private static Optional<Picture> againstRpm(JobRuns runs, Event run, Optional<String> channel) {
        try {
            return TrendPictures.againstRpm(runs.measured(run), channel);
        } catch (BadInput e) {
            // The trend's own warnings name it.
            return Optional.empty();
        }
    }
}
