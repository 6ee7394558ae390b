package evenblade.face.app;

import evenblade.judge.comparison.RunComparison;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.tell.chart.Picture;
import evenblade.tell.report.ComparisonPictures;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Answers what two compared runs look like at the speed and on the channel that tell most, as in the report. */
public final class DrawCompared {
    private DrawCompared() {}

    /**
     * The pictures by name: {@code orders} before and after with intervals, {@code spectra} laid over each
     * other, {@code turn} one turn of the propeller before and after.
     * None where the runs can't be compared.
     *
     * @throws evenblade.base.problem.BadInput where a recording can't be used
     */
    public static Map<String, Picture> answer(Path job, CompareRuns.Answer compared) {
        Map<String, Picture> pictures = new LinkedHashMap<>();
        RunComparison outcome = compared.comparison();
        ComparisonPictures.bars(outcome).ifPresent(picture -> pictures.put("orders", picture));
        if (outcome.comparable()) {
            JobRuns runs = new JobRuns(JobFolder.open(job));
            DrawPair pair = new DrawPair(named(runs, compared.before()), named(runs, compared.after()));
            pair.spectra(outcome).ifPresent(picture -> pictures.put("spectra", picture));
            pair.turn(outcome).ifPresent(picture -> pictures.put("turn", picture));
        }
        return pictures;
    }

    private static DrawPair.Named named(JobRuns runs, Event run) {
        return new DrawPair.Named(runs.nameOf(run), runs.result(run, true).run());
    }
}
