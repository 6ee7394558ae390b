package evenblade.face.app;

import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.judge.comparison.BeforeAndAfter;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.RunComparison;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.document.FigureFormat;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Answers whether two runs of a job differ, or why they can't be compared. */
public final class CompareRuns {
    private CompareRuns() {}

    /**
     * Two runs, compared.
     *
     * @param before entry of the first
     * @param after entry of the second
     * @param changes what was changed between them, in order of time
     * @param comparison the answer
     * @param unanswered runs that differ too much from the one before them, though no change was entered
     * @param warnings about the recordings
     * @param invented whether the job was made up for practice
     */
    public record Answer(
            Event before,
            Event after,
            List<String> changes,
            RunComparison comparison,
            List<Event> unanswered,
            List<Warning> warnings,
            boolean invented) {
        public Answer {
            changes = List.copyOf(changes);
            unanswered = List.copyOf(unanswered);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Compares two runs. Of the other runs of the job only those are looked at that repeat one with nothing
     * changed.
     *
     * @param before id or label of the first
     * @param after id or label of the second
     * @param engineRpm only the dwells near this speed; all, where empty
     * @throws evenblade.base.problem.BadInput where the job, a run or its recording can't be used
     */
    public static Answer compare(Path job, String before, String after, OptionalDouble engineRpm) {
        JobRuns runs = new JobRuns(JobFolder.open(job));
        Event one = runs.record().run(before);
        Event other = runs.record().run(after);
        MeasuredRun first = requireNear(runs.measured(one), engineRpm);
        MeasuredRun second = requireNear(runs.measured(other), engineRpm);
        List<TrendStage> stages = new ArrayList<>();
        List<String> changes = new ArrayList<>();
        for (JobRuns.Repeats repeats : runs.repeats()) {
            repeats.changes().stream()
                    .filter(e -> liesBetween(runs.record(), e, one, other))
                    .map(Event::text)
                    .forEach(changes::add);
            if (repeats.runs().size() > 1) {
                stages.add(repeats.stage(run -> runs.tryMeasured(run).map(found -> near(found, engineRpm))));
            }
        }
        RunComparison comparison = BeforeAndAfter.compare(first, second, stages);
        return new Answer(
                one,
                other,
                changes,
                comparison,
                unanswered(runs, comparison),
                runs.warnings(),
                runs.record().invented());
    }

    private static List<Event> unanswered(JobRuns runs, RunComparison comparison) {
        Set<String> asked = comparison.warnings().stream()
                .filter(warning -> warning.code() == WarningCode.REPEATS_DIFFER)
                .map(warning -> ((Quoted) warning.values().get(1)).text())
                .collect(Collectors.toSet());
        return runs.record().standing(Kind.RUN).stream()
                .filter(run -> asked.contains(runs.nameOf(run)))
                .toList();
    }

    private static boolean liesBetween(JobRecord record, Event event, Event one, Event other) {
        return record.before(one, event) != record.before(other, event);
    }

    private static MeasuredRun requireNear(MeasuredRun run, OptionalDouble engineRpm) {
        MeasuredRun narrowed = near(run, engineRpm);
        if (engineRpm.isPresent() && narrowed.dwells().isEmpty()) {
            String speeds = run.dwells().stream()
                    .map(dwell -> FigureFormat.rpm(run.engineRpm(dwell)))
                    .collect(Collectors.joining(", "));
            throw BadInput.in("run '" + run.name() + "'")
                    .found(
                            "no dwell at " + FigureFormat.rpm(engineRpm.getAsDouble()) + " engine rpm",
                            speeds.isEmpty()
                                    ? "a run that holds its speed somewhere; this one doesn't"
                                    : "a speed within 2 % of one that it holds: " + speeds);
        }
        return narrowed;
    }

    static MeasuredRun near(MeasuredRun run, OptionalDouble engineRpm) {
        return engineRpm.isPresent() ? run.near(engineRpm.getAsDouble()) : run;
    }
}
