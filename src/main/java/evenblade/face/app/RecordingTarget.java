package evenblade.face.app;

import evenblade.base.fact.Code;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.capture.FolderNames;
import evenblade.input.capture.Recorder;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.TakeNote;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where a recording grows: in the file named, or, for a job, in the folder {@value JobTakes#FOLDER} inside it until it
 * is complete and taken into the record.
 *
 * @param file that isn't there yet
 * @param job the job that it is for
 * @param leftovers tells of recordings that an earlier session couldn't finish
 */
record RecordingTarget(Path file, Optional<JobFolder> job, List<Warning> leftovers) {
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss", Locale.ROOT);

    /**
     * @param target a job folder, or a file that isn't there yet
     * @param ending of the file's name, with the dot
     * @throws BadInput where it is neither
     */
    static RecordingTarget of(Path target, String ending) {
        if (!Files.isDirectory(target)) {
            if (!target.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(ending)) {
                throw BadInput.in(target)
                        .found(
                                "no job folder, and no name that ends in " + ending,
                                "a job folder or a new " + ending + " file");
            }
            return new RecordingTarget(target, Optional.empty(), List.of());
        }
        if (!JobFolder.isJob(target)) {
            throw BadInput.in(target).found("a folder without a job", "a job folder or a new " + ending + " file");
        }
        JobFolder job = JobFolder.open(target);
        Path folder = target.resolve(JobFolder.TAKES);
        return new RecordingTarget(free(folder, ending), Optional.of(job), JobTakes.warnings(JobTakes.of(target)));
    }

    /** Makes the folder inside the job, once everything else is in order. */
    void make() {
        if (job.isEmpty()) {
            return;
        }
        Path folder = file.getParent();
        try {
            Files.createDirectories(folder);
            FolderNames.settle(folder);
        } catch (IOException e) {
            throw BadInput.in(folder).found("this user can't make that folder", "a job folder that can be written");
        }
    }

    private static Path free(Path folder, String ending) {
        String stem = "take-" + STAMP.format(LocalDateTime.now());
        Path file = folder.resolve(stem + ending);
        for (int i = 2; Files.exists(file); i++) {
            file = folder.resolve(stem + "-" + i + ending);
        }
        return file;
    }

    /** The folder to ask for room. */
    Recorder.Room room() {
        Path folder = file.toAbsolutePath().getParent();
        while (!Files.isDirectory(folder) && folder.getParent() != null) {
            folder = folder.getParent();
        }
        return Recorder.Room.of(folder);
    }

    /** How often the sound will lie on the disk in the end. */
    int copies() {
        return job.isPresent() ? 2 : 1;
    }

    /** Writes beside a take for a job what is said of it, so that a rescued one comes with it. */
    void note(NewRun run) {
        if (job.isEmpty()) {
            return;
        }
        try {
            TakeNote.of(run).write(file);
        } catch (IOException e) {
            throw BadInput.in(TakeNote.of(file))
                    .found("it can't be written (" + e.getMessage() + ")", "a job folder that can be written");
        }
    }

    /** Takes back what was made for a take that never was. */
    void forget() {
        try {
            Files.deleteIfExists(TakeNote.of(file));
        } catch (IOException e) {
            // A note without a take says nothing to anybody.
        }
    }

    /**
     * Takes the finished file into the job, as evidence, whatever it holds.
     *
     * @param device what recorded it and how, noted with the run
     * @param told what was told while it was recorded
     * @throws BadInput where the job can't be written; the file stays and is named
     */
    Event take(NewRun run, String device, List<Warning> told) {
        return TakeIntoJob.add(job.orElseThrow(), file, run, Optional.of(device), told);
    }

    /** Where a run of the job has its recording. */
    Path inJob(Event run) {
        return job.orElseThrow().locate(((Detail.Run) run.detail()).file());
    }

    /** What the take in the job shows, kept with it; whatever goes wrong here, the take is in the job. */
    List<Warning> looked(Event event, List<Warning> checked) {
        try {
            TakeIntoJob.tell(job.orElseThrow(), event, checked);
        } catch (BadInput e) {
            return List.of(Warning.of(
                    WarningCode.TAKE_NOT_CHECKED,
                    new Subject.Entry(event.id()),
                    Fact.of(TakeFact.THE_RECORDING),
                    new Quoted(e.getMessage())));
        }
        return TakeIntoJob.analyse(job.orElseThrow(), event);
    }

    /** What is said of takes, beside warnings. */
    public enum TakeFact implements Code {
        THE_SOUND,
        THE_RECORDING,
        SAVED,
        NOTHING_SAVED
    }
}
