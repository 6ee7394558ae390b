package evenblade.app;

import evenblade.comparison.MeasuredRun;
import evenblade.comparison.Stage;
import evenblade.job.Detail;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.job.JobRecord;
import evenblade.job.Kind;
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
    private final JobFolder folder;
    private final JobRecord record;
    private final List<Warning> fileWarnings;
    private final Map<String, ReportRun> answered = new LinkedHashMap<>();
    private final List<ReportedRun> reported = new ArrayList<>();

    private ReportRuns(JobFolder folder, List<Warning> fileWarnings) {
        this.folder = folder;
        this.record = folder.record();
        this.fileWarnings = fileWarnings;
    }

    /** Either an answer or why there is none. */
    private record Outcome(Optional<ReportRun> run, String trouble) {}

    static ReportRuns of(JobFolder folder, List<Warning> fileWarnings, Progress progress) {
        ReportRuns runs = new ReportRuns(folder, fileWarnings);
        runs.analyse(progress);
        return runs;
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
        List<Event> runs = record.standing(Kind.RUN);
        ExecutorService workers =
                Executors.newFixedThreadPool(Math.max(2, Runtime.getRuntime().availableProcessors()));
        try {
            List<Future<Outcome>> pending = new ArrayList<>();
            for (int i = 0; i < runs.size(); i++) {
                Event run = runs.get(i);
                boolean newest = i == runs.size() - 1;
                pending.add(workers.submit(() -> outcome(run, newest)));
            }
            for (int i = 0; i < runs.size(); i++) {
                take(runs.get(i), pending.get(i).get());
                progress.at((i + 1.0) / runs.size(), "analysing the runs");
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

    private Outcome outcome(Event run, boolean newest) {
        Detail.Run detail = (Detail.Run) run.detail();
        Optional<Warning> file = fileWarnings.stream()
                .filter(w -> w.message().contains("'" + detail.file().path() + "'"))
                .findFirst();
        if (file.isPresent() && file.get().code().endsWith("missing")) {
            return new Outcome(Optional.empty(), "The recording is MISSING from the record: no results.");
        }
        try {
            AnalysedRecording analysed = AnalyseRecording.answer(RunRequest.of(folder, detail));
            String trouble = file.isPresent()
                    ? "The recording was CHANGED since it was added: these figures are of the changed file and prove"
                            + " nothing."
                    : "";
            return new Outcome(
                    Optional.of(
                            ReportRun.of(run, nameOf(run), RunRequest.conditions(detail), analysed, trouble, newest)),
                    "");
        } catch (BadInput e) {
            return new Outcome(Optional.empty(), "No results: " + e.getMessage() + ".");
        }
    }

    /** What a run is called: its label, where no other run has it, else with its id. */
    String nameOf(Event run) {
        long same = record.standing(Kind.RUN).stream()
                .filter(e -> e.label().equals(run.label()))
                .count();
        return run.label()
                .map(label -> same == 1 ? label : label + " (" + run.id() + ")")
                .orElse(run.id());
    }

    /** Stretches of the job in which nothing was changed, with the runs that have an answer. */
    List<Stage> stages() {
        List<Stage> stages = new ArrayList<>();
        List<String> changes = new ArrayList<>();
        List<MeasuredRun> runs = new ArrayList<>();
        for (Event event : record.standing()) {
            if (change(event)) {
                if (!runs.isEmpty()) {
                    stages.add(new Stage(changes, runs));
                    changes.clear();
                    runs.clear();
                }
                changes.add(event.text());
            } else if (event.kind() == Kind.RUN) {
                answer(event).map(ReportRun::measured).ifPresent(runs::add);
            }
        }
        if (!runs.isEmpty()) {
            stages.add(new Stage(changes, runs));
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
