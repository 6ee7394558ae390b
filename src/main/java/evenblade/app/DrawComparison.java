package evenblade.app;

import evenblade.chart.Picture;
import evenblade.comparison.ChannelComparison;
import evenblade.comparison.RunComparison;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.report.ComparisonPictures;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** Answers what two compared runs look like beside each other. */
public final class DrawComparison {
    private DrawComparison() {}

    /**
     * The pictures by name: {@code orders} before and after with intervals, {@code spectra} laid over each
     * other where the longest dwells are of one speed and one channel, {@code turn} one turn of the propeller
     * before and after. None where the runs can't be compared.
     *
     * @param progress what it throws ends the work
     * @throws evenblade.problem.BadInput where a recording can't be used
     */
    public static Map<String, Picture> answer(Path job, CompareRuns.Answer compared, Progress progress) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        RunComparison outcome = compared.comparison();
        ComparisonPictures.bars(outcome).ifPresent(picture -> pictures.put("orders", picture));
        if (outcome.comparable()) {
            JobRuns runs = new JobRuns(JobFolder.open(job));
            progress.at(0, "analysing the first run");
            DrawPair.Named before = named(runs, compared.before());
            progress.at(0.5, "analysing the second run");
            DrawPair pair = new DrawPair(before, named(runs, compared.after()));
            pair.spectra(outcome).ifPresent(picture -> pictures.put("spectra", picture));
            Optional<String> channel =
                    outcome.channels().stream().map(ChannelComparison::channel).findFirst();
            pair.turn(channel).ifPresent(picture -> pictures.put("turn", picture));
            progress.at(1, "done");
        }
        return pictures;
    }

    private static DrawPair.Named named(JobRuns runs, Event run) {
        return new DrawPair.Named(runs.nameOf(run), runs.result(run, true).run());
    }
}
