package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.capture.Recorder;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where a recording grows: in the file named, or, for a job, in the folder {@value #FOLDER} inside it until it
 * is complete and taken into the record.
 *
 * @param file that isn't there yet
 * @param job the job that it is for
 * @param leftovers tells of recordings that an earlier session couldn't finish
 */
record RecordingTarget(Path file, Optional<JobFolder> job, List<Warning> leftovers) {
    static final String FOLDER = "takes";
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("uuuuMMdd-HHmmss", Locale.ROOT);
    /** A file that grew so lately may be another session's. */
    private static final Duration STILL_GROWING = Duration.ofSeconds(5);

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
        Path folder = target.resolve(FOLDER);
        return new RecordingTarget(free(folder, ending), Optional.of(job), leftovers(folder));
    }

    /** Makes the folder inside the job, once everything else is in order. */
    void make() {
        if (job.isEmpty()) {
            return;
        }
        Path folder = file.getParent();
        try {
            Files.createDirectories(folder);
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

    private static List<Warning> leftovers(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        List<Warning> warnings = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.sorted().toList()) {
                Instant written = Files.getLastModifiedTime(file).toInstant();
                if (Files.isRegularFile(file)
                        && Duration.between(written, Instant.now()).compareTo(STILL_GROWING) > 0) {
                    warnings.add(leftover(file));
                }
            }
        } catch (IOException e) {
            throw BadInput.in(folder)
                    .found("it can't be read (" + e.getMessage() + ")", "a folder that this user may read");
        }
        return warnings;
    }

    private static Warning leftover(Path file) {
        return Warning.of(
                WarningCode.TAKE_LEFT_OVER,
                new Subject.OtherFile(file.toString()),
                new Quoted(file.toString()),
                SavedLength.of(file)
                        .map(seconds -> Fact.of(TakeFact.SAVED, Measure.TIME.of(seconds)))
                        .orElseGet(() -> Fact.of(TakeFact.NOTHING_SAVED)));
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

    /**
     * Takes the finished file into the job.
     *
     * @param device what recorded it and how, noted with the run
     * @param told what is to be noted with it
     * @throws BadInput where the job doesn't take it; the file stays and is named
     */
    AddRun.Added take(NewRun run, String device, List<Warning> told) {
        Conditions conditions = run.conditions();
        if (conditions.get(Condition.DEVICE).isEmpty()) {
            conditions = conditions.with(Condition.DEVICE, device);
        }
        List<String> text = new ArrayList<>();
        if (!run.text().isBlank()) {
            text.add(run.text());
        }
        text.addAll(Phrases.of(Face.PAPER).texts(told));
        NewRun noted = new NewRun(run.at(), run.label(), String.join("; ", text), run.settings(), conditions);
        try {
            AddRun.Added added = AddRun.answer(job.orElseThrow().path(), file, noted);
            Files.delete(file);
            return added;
        } catch (BadInput e) {
            throw BadInput.in(file)
                    .found(
                            "recorded, but the job doesn't take it (" + e.getMessage() + ")",
                            "a recording that can be analysed; it is kept there");
        } catch (IOException e) {
            throw BadInput.in(file)
                    .found("it is in the job, but this first copy can't be deleted", "a folder that can be written");
        }
    }
}
