package evenblade.face.app;

import evenblade.base.fact.Warning;
import evenblade.judge.comparison.Trend;
import evenblade.judge.comparison.TrendOverJob;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Answers how every figure went over all runs of a job. */
public final class ShowTrend {
    private ShowTrend() {}

    /**
     * The trend of a job.
     *
     * @param name of the job
     * @param runs in order of time, each with the name the trend gives it
     * @param channels one trend per channel, the one to look at first comes first; empty without a run that
     *     has a dwell
     * @param warnings about the recordings
     * @param invented whether the job was made up for practice
     */
    public record Answer(
            String name, List<NamedRun> runs, List<Trend> channels, List<Warning> warnings, boolean invented) {
        public Answer {
            runs = List.copyOf(runs);
            channels = List.copyOf(channels);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * A run and what the trend calls it.
     *
     * @param name in the trend
     * @param event its entry
     */
    public record NamedRun(String name, Event event) {}

    /**
     * Follows all runs that can be measured.
     *
     * @param engineRpm only the dwells near this speed; all, where empty
     * @throws evenblade.base.problem.BadInput where the job can't be used
     */
    public static Answer follow(Path job, OptionalDouble engineRpm) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        List<TrendStage> stages = new ArrayList<>();
        List<NamedRun> named = new ArrayList<>();
        for (JobRuns.Repeats repeats : runs.repeats()) {
            stages.add(repeats.stage(run -> runs.tryMeasured(run).map(found -> CompareRuns.near(found, engineRpm))));
            repeats.runs().forEach(run -> named.add(new NamedRun(runs.nameOf(run), run)));
        }
        return new Answer(
                runs.record().name(),
                named,
                TrendOverJob.of(stages),
                runs.warnings(),
                runs.record().invented());
    }
}
