package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.comparison.TrendStage;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.tell.export.OrdersTable;
import evenblade.tell.export.SpectrumTable;
import evenblade.tell.report.ReportFigure;
import evenblade.tell.report.ReportedRun;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Future;

/** All standing runs of a job, analysed and drawn. */
final class ReportRuns {
    private final JobRuns runs;
    private final KeptFigures keptFigures;
    private final JobRecord record;
    private final List<Warning> fileWarnings;
    private final Map<String, ReportRun> answered = new LinkedHashMap<>();
    private final List<ReportedRun> reported = new ArrayList<>();

    private ReportRuns(JobFolder folder, JobRuns runs, List<Warning> fileWarnings) {
        this.runs = runs;
        this.keptFigures = new KeptFigures(folder, runs);
        this.record = runs.record();
        this.fileWarnings = fileWarnings;
    }

    /** Either an answer or why there is none. */
    private record Outcome(Optional<ReportRun> run, String trouble) {}

    static ReportRuns of(
            JobFolder folder, JobRuns runs, List<Warning> fileWarnings, Workers workers, Progress progress) {
        ReportRuns all = new ReportRuns(folder, runs, fileWarnings);
        all.analyse(workers, progress);
        return all;
    }

    /** In order of time. */
    List<ReportedRun> reported() {
        return reported;
    }

    /** The analysed run of an entry; empty where it has no answer. */
    Optional<ReportRun> reported(Event run) {
        return Optional.ofNullable(answered.get(run.id()));
    }

    /** The runs with an answer, in order of time. */
    List<Event> answeredRuns() {
        return record.standing(Kind.RUN).stream()
                .filter(run -> answered.containsKey(run.id()))
                .toList();
    }

    private void analyse(Workers workers, Progress progress) {
        List<Event> standing = record.standing(Kind.RUN);
        List<Future<Outcome>> pending = workers.beginAll(
                standing, run -> outcome(run, run == standing.get(standing.size() - 1), run == standing.get(0)));
        for (int i = 0; i < standing.size(); i++) {
            take(standing.get(i), Workers.take(pending.get(i)));
            progress.at((i + 1.0) / standing.size(), "analysing the runs");
        }
    }

    private void take(Event run, Outcome outcome) {
        outcome.run().ifPresent(answer -> answered.put(run.id(), answer));
        reported.add(new ReportedRun(
                run,
                nameOf(run),
                outcome.run().map(ReportRun::measured),
                outcome.run().map(answer -> answer.answer().orders()),
                outcome.run().map(ReportRun::trouble).orElse(outcome.trouble()),
                outcome.run().map(ReportRun::figures).orElse(List.of())));
    }

    private Outcome outcome(Event run, boolean newest, boolean first) {
        Detail.Run detail = (Detail.Run) run.detail();
        Optional<Warning> file = fileWarnings.stream()
                .filter(w ->
                        w.subject().equals(new Subject.StoredFile(detail.file().path())))
                .findFirst();
        if (file.isPresent() && file.get().code() == WarningCode.RECORDING_MISSING) {
            return new Outcome(Optional.empty(), "The recording is MISSING from the record: no results.");
        }
        try {
            return new Outcome(Optional.of(file.isPresent() ? changed(run, newest) : asAdded(run, newest, first)), "");
        } catch (BadInput e) {
            return new Outcome(Optional.empty(), "No results: " + e.getMessage() + ".");
        }
    }

    /** From the cache where its recording is as it was. */
    private ReportRun asAdded(Event run, boolean newest, boolean first) {
        Optional<List<ReportFigure>> drawn = keptFigures.get(run, newest);
        if (newest && drawn.isEmpty()) {
            // The waterfall is drawn from the recording itself.
            AnalysedRecording analysed = AnalyseRecording.analyse(runs.request((Detail.Run) run.detail()));
            List<ReportFigure> figures = keptFigures.keep(run, true, RunFigures.all(analysed));
            return run(run, runs.keep(run, analysed, true).run(), figures, "");
        }
        AnalysedRun known = runs.result(run, newest || first).run();
        List<ReportFigure> figures = drawn.orElseGet(() -> keptFigures.keep(run, false, RunFigures.spectrum(known)));
        return run(run, known, figures, "");
    }

    private ReportRun changed(Event run, boolean newest) {
        AnalysedRecording analysed = AnalyseRecording.analyse(runs.request((Detail.Run) run.detail()));
        AnalysedRun found = AnalysedRun.of(analysed, true);
        return run(
                run,
                found,
                newest ? RunFigures.all(analysed) : RunFigures.spectrum(found),
                "The recording was CHANGED since it was added: these figures are of the changed file and prove"
                        + " nothing.");
    }

    private ReportRun run(Event run, AnalysedRun found, List<ReportFigure> figures, String trouble) {
        return new ReportRun(runs.measured(run, found), figures, trouble, found);
    }

    String nameOf(Event run) {
        return runs.nameOf(run);
    }

    /** Stretches of the job in which nothing was changed, with the runs that have an answer. */
    List<TrendStage> stages() {
        return runs.repeats().stream()
                .map(repeats -> repeats.stage(run -> reported(run).map(ReportRun::measured)))
                .toList();
    }

    /** What was changed between two runs, in order of time. */
    List<String> changesBetween(Event earlier, Event later) {
        List<Event> standing = record.standing();
        return standing.subList(standing.indexOf(earlier), standing.indexOf(later)).stream()
                .filter(Event::changesMachine)
                .map(Event::text)
                .toList();
    }

    /**
     * A run as a report needs it.
     *
     * @param measured its amplitudes
     * @param figures pictures of it
     * @param trouble why it isn't to be trusted; empty where all is well
     * @param answer what was analysed
     */
    record ReportRun(MeasuredRun measured, List<ReportFigure> figures, String trouble, AnalysedRun answer) {
        ReportRun {
            figures = List.copyOf(figures);
        }

        /** The run as it is drawn against another. */
        DrawPair.Named named() {
            return new DrawPair.Named(measured.name(), answer);
        }

        /** Its orders as a table for other programs. */
        String ordersCsv() {
            return OrdersTable.csv(answer.orders().channels(), answer.orders().ratio());
        }

        /** Its spectra likewise. */
        String spectrumCsv() {
            return SpectrumTable.csv(answer.main().stream()
                    .map(view -> new SpectrumTable.Column(view.channel(), view.unit(), view.spectrum()))
                    .toList());
        }
    }
}
