package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Detail.Told;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.job.TakeNote;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Brings a take into its job: as evidence first, whatever it holds; what it shows is found out afterwards and may fail
 * without harm.
 */
final class TakeIntoJob {
    private TakeIntoJob() {}

    /**
     * Writes the run and moves the take in. Nothing is read of it but its bytes.
     *
     * @param device what recorded it and how, noted with the run unless something else is
     * @param told what was told while it was recorded
     * @throws BadInput where the job can't be written; the take stays and is named
     */
    static Event add(JobFolder job, Path take, NewRun run, Optional<String> device, List<Warning> told) {
        Conditions conditions = run.conditions();
        if (device.isPresent() && conditions.get(Condition.DEVICE).isEmpty()) {
            conditions = conditions.with(Condition.DEVICE, device.get());
        }
        NewRun noted = new NewRun(run.at(), run.label(), run.text(), run.settings(), conditions);
        Optional<Path> arrivals = Optional.of(JobTakes.arrivals(take))
                .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS));
        Event event;
        try {
            event = job.addTake(take, arrivals, noted, kept(told));
        } catch (BadInput e) {
            throw BadInput.in(take)
                    .found(
                            "recorded, but it isn't in the job yet (" + e.getMessage() + ")",
                            Files.exists(take)
                                    ? "a job that can be written; the recording is kept there"
                                    : "that nobody removes it while it is recorded");
        }
        try {
            Files.deleteIfExists(take);
            if (arrivals.isPresent()) {
                Files.deleteIfExists(arrivals.get());
            }
            Files.deleteIfExists(TakeNote.of(take));
        } catch (IOException e) {
            throw BadInput.in(take)
                    .found("it is in the job, but this first copy can't be deleted", "a folder that can be written");
        }
        return event;
    }

    /** Keeps with a run what was told of it once it was in the job. */
    static void tell(JobFolder job, Event run, List<Warning> told) {
        if (!told.isEmpty()) {
            Detail.Amendment amendment = new Detail.Amendment(run.id(), RunSettings.NONE, Conditions.NONE, kept(told));
            job.append(Entry.of(amendment, ""));
        }
    }

    private static List<Told> kept(List<Warning> told) {
        Phrases phrases = Phrases.of(Face.PAPER);
        return told.stream()
                .map(each -> new Told(each.code().word(), phrases.text(each.fact())))
                .toList();
    }

    /**
     * Analyses a run that is in its job already, and keeps what was found. Whatever goes wrong, the run stays.
     *
     * @return what to know about it
     */
    static List<Warning> analyse(JobFolder folder, Event run) {
        try {
            JobRuns runs = new JobRuns(folder);
            AnalysedRecording analysed = AnalyseRecording.analyse(runs.request((Detail.Run) run.detail()));
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
