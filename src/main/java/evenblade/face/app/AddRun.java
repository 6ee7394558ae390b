package evenblade.face.app;

import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Moment;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.BlockSink;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.ChannelLabel;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.machine.installation.Engine;
import evenblade.measure.orders.RunOrders;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes the recording of a ground run into a job. */
public final class AddRun {
    /** A file older than this was hardly recorded just now. */
    private static final Duration FRESH = Duration.ofHours(1);

    private static final double SHARE_READ = 0.8; // of the bar: reading and analysing take most of the time
    private static final String READING = "reading the recording to its end";

    private AddRun() {}

    /**
     * A run that is in the job now.
     *
     * @param event as it stands in the record
     * @param found what its recording shows; empty where it can be read but not analysed, and a warning says why
     * @param warnings what had to be assumed on reading and analysing it
     */
    public record Added(Event event, Optional<RunOrders> found, List<Warning> warnings) {
        public Added {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Reads and analyses the recording to its end, so that nothing unreadable gets in, then copies it. What was
     * found is kept, so that nothing which asks for it later has to wait.
     *
     * @throws evenblade.base.problem.BadInput where the job, the recording or an option can't be used; the job
     *     is as it was
     */
    public static Added add(Path job, Path recording, NewRun run) {
        return add(job, recording, run, Progress.SILENT);
    }

    /**
     * Adds it and tells how far it has come. What the progress throws ends the work, and the job is as it was;
     * from the copying on it is done to its end.
     */
    public static Added add(Path job, Path recording, NewRun run, Progress progress) {
        JobFolder folder = JobFolder.open(job);
        Engine engine = folder.record().installation().engine();
        run.settings().engineRpm().ifPresent(rpm -> engine.requireRunsAt(rpm, BadInput.in("engine speed")));
        run.settings()
                .propellerRpm()
                .ifPresent(rpm -> engine.requireRunsAt(
                        rpm * folder.record().installation().reduction().ratio(), BadInput.in("propeller speed")));
        JobRuns runs = new JobRuns(folder);
        Look look = look(
                recording,
                runs.request(recording, run.settings(), run.conditions(), Optional.empty()),
                run,
                (share, doing) -> progress.at(SHARE_READ * share, doing));
        progress.at(SHARE_READ, "copying the recording in");
        Event event = folder.addRecording(recording, run);
        Detail.Run added = (Detail.Run) event.detail();
        List<Warning> warnings = new ArrayList<>(look.warnings());
        if (added.file().stamp().sha256().equals(look.sha256())) {
            look.analysed().ifPresent(analysed -> {
                AnalysedRun kept = runs.keep(event, analysed, true).run();
                new KeptFigures(folder, runs).keep(event, false, RunFigures.spectrum(kept));
            });
        } else {
            warnings.add(Warning.of(
                    WarningCode.CHANGED_WHILE_ADDED,
                    new Subject.Entry(event.id()),
                    new Quoted(recording.toString()),
                    new Quoted(event.id())));
        }
        olderThanSaid(run, added).ifPresent(warnings::add);
        progress.at(1, "done");
        return new Added(event, look.analysed().map(AnalysedRecording::orders), warnings);
    }

    /** What going through a recording to its end showed. */
    private record Look(String sha256, Optional<AnalysedRecording> analysed, List<Warning> warnings) {}

    private static Look look(Path recording, AnalysisRequest request, NewRun run, Progress progress) {
        try {
            AnalysedRecording analysed = AnalyseRecording.analyse(request, progress);
            RunOrders orders = analysed.orders();
            return new Look(orders.source().sha256().hex(), Optional.of(analysed), orders.warnings());
        } catch (BadInput e) {
            // Evidence all the same, if only it can be read to its end and has the channels named.
            Readable readable = readToTheEnd(recording, request.reading(), progress);
            requireChannels(readable.channels(), run);
            List<Warning> warnings = new ArrayList<>(readable.warnings());
            warnings.add(Warning.of(WarningCode.NOT_ANALYSED, Subject.Whole.RECORDING, new Quoted(e.getMessage())));
            return new Look(readable.sha256().hex(), Optional.empty(), warnings);
        }
    }

    /** What reading a recording to its end showed. */
    private record Readable(FileHash sha256, List<ChannelLabel> channels, List<Warning> warnings) {}

    private static Readable readToTheEnd(Path recording, IntakeOptions options, Progress progress) {
        Intake intake = RecordingReader.open(recording, options);
        if (intake instanceof Intake.Streamed streamed) {
            StreamSummary summary =
                    streamed.sound().deliverTo(counted(streamed.sound().header(), progress));
            return new Readable(
                    summary.sha256(),
                    ChannelLabel.counted(streamed.sound().header().channels()),
                    summary.warnings());
        }
        Intake.Whole table = (Intake.Whole) intake;
        Recording whole = table.recording();
        return new Readable(whole.source().sha256(), table.labels(), whole.warnings());
    }

    private static BlockSink counted(StreamHeader header, Progress progress) {
        double all = Math.max(1, header.frames().orElse(Long.MAX_VALUE));
        long[] done = {0};
        return (samples, frames) -> {
            done[0] += frames;
            progress.at(Math.min(1, done[0] / all), READING);
        };
    }

    private static void requireChannels(List<ChannelLabel> labels, NewRun run) {
        run.settings().channels().forEach(wanted -> ChannelChoice.among(labels, wanted, BadInput.in("channel")));
        run.settings()
                .markChannel()
                .ifPresent(wanted -> ChannelChoice.among(labels, wanted, BadInput.in("mark channel")));
    }

    private static Optional<Warning> olderThanSaid(NewRun run, Detail.Run added) {
        Instant written = added.file().stamp().modified();
        Duration age = Duration.between(written, Instant.now());
        if (run.at().isPresent() || age.compareTo(FRESH) < 0) {
            return Optional.empty();
        }
        return Optional.of(
                Warning.of(WarningCode.RECORDING_OLDER_THAN_ENTRY, Subject.Whole.RECORDING, new Moment(written)));
    }
}
