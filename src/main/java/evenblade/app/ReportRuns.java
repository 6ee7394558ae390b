package evenblade.app;

import evenblade.comparison.Stage;
import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.job.JobRecord;
import evenblade.job.Kind;
import evenblade.job.ResultCache;
import evenblade.problem.BadInput;
import evenblade.problem.Warning;
import evenblade.report.ReportedRun;
import evenblade.report.RunParts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** All standing runs of a job, analysed and drawn, as many at a time as there are cores, two at least. */
final class ReportRuns {
    private final JobRuns runs;
    private final ResultCache cache;
    private final JobRecord record;
    private final List<Warning> fileWarnings;
    private final Map<String, ReportRun> answered = new LinkedHashMap<>();
    private final List<ReportedRun> reported = new ArrayList<>();

    private ReportRuns(JobFolder folder, List<Warning> fileWarnings) {
        this.runs = new JobRuns(folder);
        this.cache = folder.cache();
        this.record = runs.record();
        this.fileWarnings = fileWarnings;
    }

    /** Either an answer or why there is none. */
    private record Outcome(Optional<ReportRun> run, String trouble) {}

    static ReportRuns of(JobFolder folder, List<Warning> fileWarnings, Progress progress) {
        ReportRuns all = new ReportRuns(folder, fileWarnings);
        all.analyse(progress);
        return all;
    }

    /** In order of time. */
    List<ReportedRun> reported() {
        return reported;
    }

    /** The analysed run of an entry; empty where it has no answer. */
    Optional<ReportRun> answer(Event run) {
        return Optional.ofNullable(answered.get(run.id()));
    }

    /** The runs with an answer, in order of time. */
    List<Event> answeredRuns() {
        return record.standing(Kind.RUN).stream()
                .filter(run -> answered.containsKey(run.id()))
                .toList();
    }

    private void analyse(Progress progress) {
        List<Event> standing = record.standing(Kind.RUN);
        ExecutorService workers =
                Executors.newFixedThreadPool(Math.max(2, Runtime.getRuntime().availableProcessors()));
        try {
            List<Future<Outcome>> pending = new ArrayList<>();
            for (int i = 0; i < standing.size(); i++) {
                Event run = standing.get(i);
                boolean newest = i == standing.size() - 1;
                boolean first = i == 0;
                pending.add(workers.submit(() -> outcome(run, newest, first)));
            }
            for (int i = 0; i < standing.size(); i++) {
                take(standing.get(i), pending.get(i).get());
                progress.at((i + 1.0) / standing.size(), "analysing the runs");
            }
        } catch (ExecutionException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the report was broken off", e);
        } finally {
            workers.shutdownNow();
        }
    }

    private void take(Event run, Outcome outcome) {
        outcome.run().ifPresent(answer -> answered.put(run.id(), answer));
        reported.add(new ReportedRun(
                run,
                nameOf(run),
                outcome.run().map(ReportRun::measured),
                outcome.run()
                        .map(ReportRun::part)
                        .orElseGet(() -> RunParts.without(run, nameOf(run), outcome.trouble()))));
    }

    private Outcome outcome(Event run, boolean newest, boolean first) {
        Detail.Run detail = (Detail.Run) run.detail();
        Optional<Warning> file = fileWarnings.stream()
                .filter(w -> w.message().contains("'" + detail.file().path() + "'"))
                .findFirst();
        if (file.isPresent() && file.get().code().endsWith("missing")) {
            return new Outcome(Optional.empty(), "The recording is MISSING from the record: no results.");
        }
        try {
            return new Outcome(Optional.of(answer(run, detail, file.isPresent(), newest, first)), "");
        } catch (BadInput e) {
            return new Outcome(Optional.empty(), "No results: " + e.getMessage() + ".");
        }
    }

    /** From the cache where the same run was reported before and its recording is as it was. */
    private ReportRun answer(Event run, Detail.Run detail, boolean changed, boolean newest, boolean first) {
        String key = runs.dependsOn(
                "reported run, newest: " + newest + ", first: " + first + ", " + nameOf(run) + ", " + run,
                KeptReportRun.FORMAT,
                detail);
        Optional<ReportRun> kept = changed
                ? Optional.empty()
                : cache.get(key).flatMap(bytes -> KeptReportRun.read(bytes, nameOf(run), JobRuns.conditions(detail)));
        if (kept.isPresent()) {
            return kept.get();
        }
        AnalysedRecording analysed = AnalyseRecording.answer(runs.request(detail));
        String trouble = changed
                ? "The recording was CHANGED since it was added: these figures are of the changed file and prove nothing."
                : "";
        ReportRun fresh =
                ReportRun.of(run, nameOf(run), JobRuns.conditions(detail), analysed, trouble, newest, newest || first);
        EvidenceOfJob.keep(cache, runs, detail, analysed.orders());
        if (!changed) {
            cache.put(key, KeptReportRun.written(fresh));
        }
        return fresh;
    }

    String nameOf(Event run) {
        return runs.nameOf(run);
    }

    /** Stretches of the job in which nothing was changed, with the runs that have an answer. */
    List<Stage> stages() {
        List<Stage> stages = new ArrayList<>();
        for (JobRuns.Repeats repeats : runs.repeats()) {
            List<String> changes = repeats.changes().stream().map(Event::text).toList();
            stages.add(new Stage(
                    changes,
                    repeats.runs().stream()
                            .flatMap(run -> answer(run).stream())
                            .map(ReportRun::measured)
                            .toList()));
        }
        return stages;
    }

    /** What was changed between two runs, in order of time. */
    List<String> changesBetween(Event earlier, Event later) {
        List<Event> standing = record.standing();
        return standing.subList(standing.indexOf(earlier), standing.indexOf(later)).stream()
                .filter(ReportRuns::change)
                .map(Event::text)
                .toList();
    }

    private static boolean change(Event event) {
        return event.kind() == Kind.CORRECTION || event.kind() == Kind.BALANCE;
    }
}
