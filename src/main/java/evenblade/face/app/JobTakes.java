package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.RecordingTarget.TakeFact;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.StreamHeader;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.TakeNote;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Takes that lie beside a job's record and aren't in it: recordings that something broke off. */
public final class JobTakes {
    /** A file that grew so lately may be another session's; one from the future is of a clock that was set. */
    private static final Duration STILL_GROWING = Duration.ofSeconds(5);

    private JobTakes() {}

    /**
     * A take that isn't in the job.
     *
     * @param file where it lies
     * @param written when its last byte was written
     * @param bytes its size
     * @param seconds that can be read of it; empty where nothing can
     */
    public record Found(Path file, Instant written, long bytes, Optional<Double> seconds) {}

    /**
     * All that aren't growing any more, by name.
     *
     * @throws BadInput where the folder can't be read
     */
    public static List<Found> of(Path job) {
        Path folder = job.resolve(JobFolder.TAKES);
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        List<Found> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.sorted().filter(JobTakes::take).toList()) {
                ended(file).ifPresent(found::add);
            }
        } catch (IOException e) {
            throw BadInput.in(folder)
                    .found("it can't be read (" + e.getMessage() + ")", "a folder that this user may read");
        }
        return found;
    }

    /** A take that doesn't grow any more; empty too where it went into the job while it was looked at. */
    private static Optional<Found> ended(Path file) throws IOException {
        try {
            Instant written = Files.getLastModifiedTime(file).toInstant();
            boolean growing = Duration.between(written, Instant.now()).abs().compareTo(STILL_GROWING) <= 0;
            return growing
                    ? Optional.empty()
                    : Optional.of(new Found(file, written, Files.size(file), savedSeconds(file)));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    private static boolean take(Path file) {
        String name = file.getFileName().toString();
        return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && !name.endsWith(TakeNote.ENDING)
                && !name.endsWith(IntakeOptions.ARRIVALS_ENDING);
    }

    /** The file of arrivals that belongs to a take. */
    static Path arrivals(Path take) {
        return take.resolveSibling(take.getFileName() + IntakeOptions.ARRIVALS_ENDING);
    }

    /** Tells of each. */
    static List<Warning> warnings(List<Found> takes) {
        return takes.stream()
                .map(take -> Warning.of(
                        WarningCode.TAKE_LEFT_OVER,
                        new Subject.OtherFile(take.file().toString()),
                        new Quoted(take.file().toString()),
                        take.seconds()
                                .map(seconds -> Fact.of(TakeFact.SAVED, Measure.TIME.of(seconds)))
                                .orElseGet(() -> Fact.of(TakeFact.NOTHING_SAVED))))
                .toList();
    }

    /** How much of a recording that was broken off can be read, in seconds; empty where nothing can. */
    private static Optional<Double> savedSeconds(Path file) {
        try {
            Intake intake = RecordingReader.open(file, IntakeOptions.NONE);
            if (intake instanceof Intake.Streamed streamed) {
                StreamHeader header = streamed.sound().header();
                return header.frames().isPresent()
                        ? Optional.of(header.frames().getAsLong() / header.sampleRateHz())
                        : Optional.empty();
            }
            return Optional.of(((Intake.Whole) intake).recording().time().durationS());
        } catch (BadInput e) {
            return Optional.empty();
        }
    }

    /**
     * What was rescued.
     *
     * @param events the new entries, in order of the takes
     * @param empty takes without a byte, which stay where they are
     * @param warnings what analysing them showed
     */
    public record Rescued(List<Event> events, List<Path> empty, List<Warning> warnings) {
        public Rescued {
            events = List.copyOf(events);
            empty = List.copyOf(empty);
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Brings all of them into the job in one step, each dated by its last byte and with what was said when its recording began.
     *
     * @throws BadInput where the job can't be used, or one of them can't be taken in: all others are in it then
     */
    public static Rescued rescue(Path job) {
        JobFolder folder = JobFolder.open(job);
        List<Event> events = new ArrayList<>();
        List<Path> empty = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        Optional<BadInput> refusal = Optional.empty();
        for (Found take : of(job)) {
            if (take.bytes() == 0) {
                empty.add(take.file());
                continue;
            }
            try {
                Event event = TakeIntoJob.add(folder, take.file(), run(take), Optional.empty(), List.of());
                events.add(event);
                warnings.addAll(TakeIntoJob.analyse(folder, event));
            } catch (BadInput e) {
                refusal = refusal.or(() -> Optional.of(e));
            }
        }
        if (refusal.isPresent()) {
            throw refusal.get();
        }
        return new Rescued(events, empty, warnings);
    }

    private static NewRun run(Found take) {
        TakeNote note = TakeNote.read(take.file());
        return new NewRun(
                Optional.of(take.written().atZone(ZoneId.systemDefault()).toOffsetDateTime()),
                note.label(),
                note.text(),
                note.settings(),
                note.conditions());
    }
}
