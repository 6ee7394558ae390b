package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.RecordingTarget.TakeFact;
import evenblade.input.capture.CaptureFact;
import evenblade.input.capture.Ending;
import evenblade.input.capture.LineRecorder;
import evenblade.input.recording.ChannelChoice;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StampQuality;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.machine.installation.Installation;
import evenblade.measure.live.LiveAnalysis;
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
import java.util.function.Function;

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
            Optional<RecordRun.Steps> steps) {
        private Request with(NewRun other) {
            return new Request(target, input, device, seconds, other, installation, quiet, steps);
        }
    }

    private static final long HOP_NANOS = Math.round(1e9 * LiveAnalysis.NOW_HOP_S); // as often as with sound

    private final Request request;
    private final NewRun said;
    private final Optional<RunBefore> before;
    private final RecordingTarget place;
    private final LineRecorder recorder;
    private final Optional<Installation> installation;
    private final Optional<Recording> quiet;
    private final Optional<LineWindow> window;
    private final RunSoFar soFar;
    private final CountDownLatch ended = new CountDownLatch(1);

    private RecordLines(Request said, Optional<RunBefore> before, TakeSetting setting, LineRecorder recorder) {
        this.said = said.run();
        this.before = before;
        this.request = before.map(each -> said.with(each.into(said.run()))).orElse(said);
        this.place = setting.place();
        this.recorder = recorder;
        this.installation = setting.installation();
        this.quiet = setting.quiet();
        this.soFar = setting.soFar();
        this.window =
                installation.map(runs -> new LineWindow(runs, request.run().settings(), soFar));
    }

    /**
     * Looks whether all that is asked can be had and makes the file; nothing is recorded yet.
     *
     * @throws BadInput where target, length, quiet take or steps can't be used; no file is made then, and the input
     *     closed
     */
    public static RecordLines prepare(Request request) {
        return prepare(request, job -> Optional.empty());
    }

    /**
     * Prepares a run that takes over from the run before what isn't said of it, where the same input made that. What has
     * other columns in the end takes over nothing, with a warning.
     */
    public static RecordLines prepareLikeBefore(Request request) {
        return prepare(request, job -> RunBefore.recordedBy(job, request.device(), request.run()));
    }

    private static RecordLines prepare(Request request, Function<JobFolder, Optional<RunBefore>> takingOver) {
        try {
            return prepared(request, takingOver);
        } catch (BadInput e) {
            try {
                request.input().close();
            } catch (IOException closing) {
                e.addSuppressed(closing);
            }
            throw e;
        }
    }

    private static RecordLines prepared(Request request, Function<JobFolder, Optional<RunBefore>> takingOver) {
        TakeSetting setting = TakeSetting.of(
                request.target(), ".csv", request.seconds(), request.installation(), request.quiet(), request.steps());
        try {
            Optional<RunBefore> before = setting.place().job().flatMap(takingOver);
            setting.place().make();
            setting.place().note(before.map(each -> each.into(request.run())).orElse(request.run()));
            LineRecorder recorder = LineRecorder.prepare(
                    request.input(),
                    setting.place().file(),
                    JobTakes.arrivals(setting.place().file()),
                    setting.place().room(),
                    request.seconds().orElse(Double.POSITIVE_INFINITY));
            return new RecordLines(request, before, setting, recorder);
        } catch (BadInput e) {
            setting.soFar().close();
            setting.place().forget();
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
    public Optional<RunBefore> before() {
        return before;
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
    public void skipStep() {
        soFar.skipStep();
    }

    @Override
    public void repeatStep() {
        soFar.repeatStep();
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
        List<Warning> warnings = new ArrayList<>(ended(ending));
        if (place.job().isEmpty()) {
            return recorded(ending, Optional.empty(), place.file(), said.settings(), warnings);
        }
        NewRun run = withKnownMark(takenOver(warnings), warnings);
        Event event = place.take(run, request.device(), warnings);
        return recorded(ending, Optional.of(event), place.inJob(event), run.settings(), warnings);
    }

    private List<Warning> ended(Ending ending) {
        List<Warning> warnings = new ArrayList<>();
        if (ending.unwanted()) {
            warnings.add(Warning.of(
                    WarningCode.RECORDING_CUT_SHORT,
                    Subject.Whole.RECORDING,
                    Fact.of(ending),
                    Measure.TIME.of(recorder.elapsedS()),
                    Fact.of(CaptureFact.NO_DETAIL)));
        }
        if (recorder.cut() > 0) {
            warnings.add(Warning.of(WarningCode.LINE_WITHOUT_END, Subject.Whole.INPUT, new Count(recorder.cut())));
        }
        return warnings;
    }

    /** Looks into what is safe already. */
    private Recorded recorded(
            Ending ending, Optional<Event> event, Path file, RunSettings settings, List<Warning> warnings) {
        List<Warning> checked = new ArrayList<>();
        Optional<Recording> whole = whole(file, settings, checked);
        try {
            Optional<String> mark = whole.flatMap(recording -> mark(recording, settings, new ArrayList<>()));
            whole.ifPresent(recording ->
                    checked.addAll(CheckTake.check(recording, quiet, installation, mark, BadInput.in(file))));
        } catch (RuntimeException e) {
            checked.add(notChecked(String.valueOf(e.getMessage())));
        }
        double lostS = whole.flatMap(Recording::stamps).map(StampQuality::lostS).orElse(0.0);
        warnings.addAll(checked);
        if (event.isPresent()) {
            warnings.addAll(place.looked(event.get(), checked));
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
            Files.deleteIfExists(JobTakes.arrivals(place.file()));
            place.forget();
        } catch (IOException e) {
            throw BadInput.in(place.file()).found("empty, and it can't be deleted", "a folder that can be written");
        }
        throw BadInput.in(request.device())
                .found("not one line came", "lines of a time stamp and values; nothing is kept");
    }

    /** What was recorded, as any other file is read. */
    private static Optional<Recording> whole(Path file, RunSettings settings, List<Warning> warnings) {
        try {
            return Optional.of(CheckTake.reduced(file, settings.table()));
        } catch (RuntimeException e) {
            warnings.add(notChecked(String.valueOf(e.getMessage())));
            return Optional.empty();
        }
    }

    private static Warning notChecked(String why) {
        return Warning.of(
                WarningCode.TAKE_NOT_CHECKED,
                Subject.Whole.RECORDING,
                Fact.of(TakeFact.THE_RECORDING),
                new Quoted(why));
    }

    /** The channels of a sensor are known once it has sent: a mark that isn't among them must not cost the run. */
    private static Optional<String> mark(Recording recording, RunSettings settings, List<Warning> warnings) {
        List<String> names = recording.source().channels();
        try {
            return settings.markChannel()
                    .map(word -> names.get(ChannelChoice.indexOf(names, word, BadInput.in("mark channel"))));
        } catch (BadInput e) {
            warnings.add(
                    Warning.of(WarningCode.MARK_CHANNEL_UNKNOWN, Subject.Whole.RECORDING, new Quoted(e.getMessage())));
            return Optional.empty();
        }
    }

    /** The run as asked for, without a mark channel that the sensor doesn't have. */
    private NewRun withKnownMark(NewRun run, List<Warning> warnings) {
        if (run.settings().markChannel().isEmpty()) {
            return run;
        }
        Optional<Recording> whole = whole(place.file(), run.settings(), new ArrayList<>());
        return whole.isEmpty() || mark(whole.get(), run.settings(), warnings).isPresent()
                ? run
                : new NewRun(run.at(), run.label(), run.text(), run.settings().withoutMarkChannel(), run.conditions());
    }

    /** The run with what it takes over; as it was said, where the lines turned out to be others than before. */
    private NewRun takenOver(List<Warning> warnings) {
        if (before.isEmpty() || before.get().fits(place.file())) {
            return request.run();
        }
        warnings.add(Warning.of(
                WarningCode.LINES_UNLIKE_BEFORE,
                Subject.Whole.RECORDING,
                new Quoted(before.get().name())));
        return said;
    }

    private static void finish(Thread watcher) {
        try {
            watcher.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Looks at the last second at every hop, at a window where one is due, and at the end. */
    private void watch() {
        boolean last = window.isEmpty();
        long next = System.nanoTime();
        try {
            while (!last) {
                next = Math.max(next + HOP_NANOS, System.nanoTime());
                last = ended.await(next - System.nanoTime(), TimeUnit.NANOSECONDS);
                window.get().now();
                if (last) {
                    window.get().lastWindow();
                } else {
                    window.get().window();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException | Error e) {
            // The take goes on; that nothing is seen of it any more is told.
            soFar.stopped();
        }
    }
}
