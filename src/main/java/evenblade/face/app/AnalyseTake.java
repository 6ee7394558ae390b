package evenblade.face.app;

import evenblade.base.fact.Quoted;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import java.util.List;

/** Analyses a run that is in its job already, and keeps what was found. Whatever goes wrong, the run stays. */
final class AnalyseTake {
    private AnalyseTake() {}

    /** What to know about it. */
    static List<Warning> answer(JobFolder folder, Event run) {
        try {
            JobRuns runs = new JobRuns(folder);
            AnalysedRecording analysed = AnalyseRecording.answer(runs.request((Detail.Run) run.detail()));
            AnalysedRun kept = runs.keep(run, analysed, true).run();
            new KeptFigures(folder, runs).keep(run, false, RunFigures.spectrum(kept));
            return analysed.orders().warnings();
        } catch (BadInput e) {
            return List.of(failed(run, e.getMessage()));
        } catch (RuntimeException | OutOfMemoryError e) {
            // A fault of the program must not cost the evidence: the run is in the job, and can be analysed anew.
            return List.of(failed(run, "a fault of the program, " + e));
        }
    }

    private static Warning failed(Event run, String why) {
        return Warning.of(WarningCode.TAKE_NOT_ANALYSED, new Subject.Entry(run.id()), new Quoted(why));
    }
}
