package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Quoted;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.capture.CaptureFact;
import evenblade.input.capture.Ending;
import evenblade.input.capture.LineRecorder;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StampQuality;
import evenblade.keep.job.Event;
import evenblade.keep.job.NewRun;
import evenblade.machine.installation.Installation;
import evenblade.measure.live.LiveChain;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** Records a ground run from an accelerometer that sends lines of numbers, into a job or a CSV file of its own. */
public final class RecordLines implements LiveRecording {
    /**
     * What to record.
     *
     * @param target a job folder, or a CSV file that isn't there yet
     * @param input the lines: a heading or none, then a time stamp and values in every line
     * @param device what sends them, for people
     * @param seconds how long; until stopped or the input ends, where empty
     * @param run how a job is to keep it
     * @param installation file of what runs; a job's own, where empty
     * @param quiet a recording by the same sensor with the engine standing, to compare with
     * @param steps dwells to be led through
     */
    public record Request(
            Path target,
            InputStream input,
            String device,
            OptionalDouble seconds,
            NewRun run,
            Optional<Path> installation,
            Optional<Path> quiet,
            Optional<RecordRun.Steps> steps) {}

    private static final long HOP_NANOS = Math.round(1e9 * LiveChain.HOP_S);

    private final Request request;
    private final RecordingTarget place;
    private final LineRecorder recorder;
    private final Optional<Installation> installation;
    private final Optional<Recording> quiet;
    private final Optional<LineWindow> window;
    private final RunSoFar soFar;
    private final CountDownLatch ended = new CountDownLatch(1);

    private RecordLines(Request request, TakeSetting setting, LineRecorder recorder) {
        this.request = request;
        this.place = setting.place();
        this.recorder = recorder;
        this.installation = setting.installation();
        this.quiet = setting.quiet();
        this.soFar = setting.soFar();
        this.window = installation.map(runs -> new LineWindow(
                LiveSetup.reader(runs, Optional.empty()),
                request.run().settings().markChannel()));
    }

    /**
     * Looks whether all that is asked can be had and makes the file; nothing is recorded yet.
     *
     * @throws BadInput where target, length, quiet take or steps can't be used; no file is made then
     */
    public static RecordLines prepare(Request request) {
        TakeSetting setting = TakeSetting.of(
                request.target(), ".csv", request.seconds(), request.installation(), request.quiet(), request.steps());
        try {
            setting.place().make();
            LineRecorder recorder = LineRecorder.prepare(
                    request.input(),
                    setting.place().file(),
                    setting.place().room(),
                    request.seconds().orElse(Double.POSITIVE_INFINITY));
            return new RecordLines(request, setting, recorder);
        } catch (BadInput e) {
            setting.soFar().close();
            throw e;
        }
    }

    @Override
    public String device() {
        return request.device();
    }

    @Override
    public Path file() {
        return place.file();
    }

    @Override
    public List<Warning> leftovers() {
        return place.leftovers();
    }

    @Override
    public View view() {
        return soFar.view(recorder.elapsedS(), List.of());
    }

    @Override
    public void stop() {
        recorder.stop();
    }

    @Override
    public Recorded record() {
        Thread watcher = new Thread(this::watch, "live analysis");
        watcher.setDaemon(true);
        watcher.setPriority(Thread.MIN_PRIORITY);
        watcher.start();
        Ending ending;
        try (soFar) {
            ending = recorder.record(line -> window.ifPresent(w -> w.add(line)));
        } finally {
            ended.countDown();
            finish(watcher);
        }
        requireLines();
        List<Warning> warnings = new ArrayList<>();
        if (ending.unwanted()) {
            warnings.add(Warning.of(
                    WarningCode.RECORDING_CUT_SHORT,
                    Subject.Whole.RECORDING,
                    Fact.of(ending),
                    Measure.TIME.of(recorder.elapsedS()),
                    Fact.of(CaptureFact.NO_DETAIL)));
        }
        Optional<Recording> whole = whole(warnings);
        Optional<String> mark = whole.flatMap(recording -> mark(recording, warnings));
        whole.ifPresent(recording ->
                warnings.addAll(CheckTake.answer(recording, quiet, installation, mark, BadInput.in(place.file()))));
        double lostS = whole.flatMap(Recording::stamps).map(StampQuality::lostS).orElse(0.0);
        Optional<Event> event = Optional.empty();
        if (place.job().isPresent()) {
            AddRun.Added added = place.take(marked(mark), request.device(), warnings);
            warnings.addAll(added.warnings());
            event = Optional.of(added.event());
        } else {
            whole.ifPresent(recording -> warnings.addAll(recording.warnings()));
        }
        return new Recorded(place.file(), ending, recorder.elapsedS(), lostS, event, warnings);
    }

    /** A file without a line is of no use to anybody. */
    private void requireLines() {
        if (recorder.lines() > 0) {
            return;
        }
        try {
            Files.delete(place.file());
        } catch (IOException e) {
            throw BadInput.in(place.file()).found("empty, and it can't be deleted", "a folder that can be written");
        }
        throw BadInput.in(request.device())
                .found("not one line came", "lines of a time stamp and values; nothing is kept");
    }

    /** What was recorded, as any other file is read. */
    private Optional<Recording> whole(List<Warning> warnings) {
        try {
            return Optional.of(CheckTake.reduced(place.file()));
        } catch (BadInput e) {
            warnings.add(Warning.of(
                    WarningCode.TAKE_NOT_CHECKED,
                    Subject.Whole.RECORDING,
                    Fact.of(TakeFact.THE_RECORDING),
                    new Quoted(e.getMessage())));
            return Optional.empty();
        }
    }

    /** The channels of a sensor are known once it has sent: a mark that isn't among them must not cost the run. */
    private Optional<String> mark(Recording recording, List<Warning> warnings) {
        List<String> names = recording.source().channels();
        try {
            return request.run()
                    .settings()
                    .markChannel()
                    .map(word -> names.get(ChannelChoice.indexOf(names, word, BadInput.in("--mark-channel"))));
        } catch (BadInput e) {
            warnings.add(
                    Warning.of(WarningCode.MARK_CHANNEL_UNKNOWN, Subject.Whole.RECORDING, new Quoted(e.getMessage())));
            return Optional.empty();
        }
    }

    private NewRun marked(Optional<String> mark) {
        NewRun run = request.run();
        if (mark.isPresent() || run.settings().markChannel().isEmpty()) {
            return run;
        }
        return new NewRun(run.at(), run.label(), run.text(), run.settings().withoutMarkChannel(), run.conditions());
    }

    private static void finish(Thread watcher) {
        try {
            watcher.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Reads the window once a hop, and once more at the end. */
    private void watch() {
        boolean last = window.isEmpty();
        long next = System.nanoTime();
        while (!last) {
            next = Math.max(next + HOP_NANOS, System.nanoTime());
            try {
                last = ended.await(next - System.nanoTime(), TimeUnit.NANOSECONDS);
            } catch (InterruptedException e) {
                return;
            }
            window.get().read().ifPresent(soFar::take);
        }
    }
}
