package evenblade.face.app;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.RecordingTarget.TakeFact;
import evenblade.input.capture.FormatWish;
import evenblade.input.capture.InputFormat;
import evenblade.input.capture.LevelMeter;
import evenblade.input.capture.LiveSource;
import evenblade.input.capture.Recorder;
import evenblade.input.capture.SoundDevices;
import evenblade.input.capture.Take;
import evenblade.input.recording.Recording;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewRun;
import evenblade.machine.installation.Installation;
import evenblade.measure.live.LiveChain;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** Records a ground run from a microphone or line input, into a job or into a file of its own. */
public final class RecordRun implements LiveRecording {
    /**
     * What to record.
     *
     * @param target a job folder, or a WAV file that isn't there yet
     * @param device name of the input; the machine's own choice where empty
     * @param wish rate, channels and size of a sample, as far as they matter
     * @param seconds how long; until stopped, where empty
     * @param run how a job is to keep it
     * @param installation file of what runs, so that speed and orders are shown while it records; a job's own, where
     *     empty
     * @param quiet a recording by the same input with the engine standing, to compare with
     * @param steps dwells to be led through
     */
    public record Request(
            Path target,
            Optional<String> device,
            FormatWish wish,
            OptionalDouble seconds,
            NewRun run,
            Optional<Path> installation,
            Optional<Path> quiet,
            Optional<Steps> steps) {
        private Request with(NewRun other) {
            return new Request(target, device, wish, seconds, other, installation, quiet, steps);
        }
    }

    /**
     * A stepped run.
     *
     * @param engineRpms speeds to hold, in order; none for the usual ones between idle and the highest speed
     * @param wantedPercent largest half interval wanted of propeller once-per-revolution and blade pass
     * @param beep whether the machine's loudspeaker tells that a step is done
     */
    public record Steps(List<Double> engineRpms, double wantedPercent, boolean beep) {
        public Steps {
            engineRpms = List.copyOf(engineRpms);
        }

        /** Without a beep. */
        public Steps(List<Double> engineRpms, double wantedPercent) {
            this(engineRpms, wantedPercent, false);
        }
    }

    private static final double ZERO_S = 1; // no microphone is without any noise for so long

    private final Request request;
    private final Optional<RunBefore> before;
    private final RecordingTarget place;
    private final Recorder recorder;
    private final LevelMeter meter;
    private final Optional<Installation> installation;
    private final Optional<Recording> quiet;
    private final RunSoFar soFar;

    private RecordRun(Request request, Optional<RunBefore> before, TakeSetting setting, Recorder recorder) {
        this.request = request;
        this.before = before;
        this.place = setting.place();
        this.recorder = recorder;
        this.installation = setting.installation();
        this.quiet = setting.quiet();
        this.soFar = setting.soFar();
        InputFormat format = recorder.format();
        this.meter = new LevelMeter(format.rateHz(), format.channelNames(), markOf(format));
    }

    /**
     * Looks whether all that is asked can be had, opens the input and makes the file, in this order; nothing is
     * recorded yet.
     *
     * @throws BadInput where target, device, format, length, quiet take or steps can't be used; no file is made then
     */
    public static RecordRun prepare(Request request) {
        return prepare(request, (job, device) -> Optional.empty());
    }

    /** Prepares a run that takes over from the run before what isn't said of it, where the same input made that. */
    public static RecordRun prepareLikeBefore(Request request) {
        return prepare(request, (job, device) -> RunBefore.recordedBy(job, device, request.run()));
    }

    private static RecordRun prepare(Request request, BiFunction<JobFolder, String, Optional<RunBefore>> takingOver) {
        TakeSetting setting = TakeSetting.of(
                request.target(), ".wav", request.seconds(), request.installation(), request.quiet(), request.steps());
        try {
            LiveSource input = SoundDevices.open(request.device(), request.wish());
            Optional<RunBefore> before =
                    setting.place().job().flatMap(job -> takingOver.apply(job, named(input.name(), input.format())));
            Request whole =
                    before.map(each -> request.with(each.into(request.run()))).orElse(request);
            return new RecordRun(whole, before, setting, recorder(whole, input, setting.place()));
        } catch (BadInput e) {
            setting.soFar().close();
            throw e;
        }
    }

    /** What records and how, as a job notes it. */
    private static String named(String device, InputFormat format) {
        return device + ", " + format.text();
    }

    private static Recorder recorder(Request request, LiveSource input, RecordingTarget place) {
        try {
            request.run().settings().markChannel().ifPresent(mark -> LiveSetup.channel(input.format(), mark));
            place.make();
            place.note(request.run());
        } catch (BadInput e) {
            input.close();
            throw e;
        }
        try {
            return Recorder.prepare(input, place.file(), place.room(), request.seconds(), place.copies());
        } catch (BadInput e) {
            place.forget();
            throw e;
        }
    }

    @Override
    public String device() {
        return named(recorder.device(), recorder.format());
    }

    @Override
    public Optional<RunBefore> before() {
        return before;
    }

    @Override
    public Path file() {
        return recorder.path();
    }

    @Override
    public List<Warning> leftovers() {
        return place.leftovers();
    }

    @Override
    public View view() {
        return soFar.view(recorder.recordedS(), meter.levels());
    }

    @Override
    public List<Warning> urgent() {
        return allZero(meter);
    }

    /** No real input gives exact zeros for a second. */
    static List<Warning> allZero(LevelMeter meter) {
        return meter.zeroS() >= ZERO_S
                ? List.of(Warning.of(WarningCode.INPUT_ALL_ZERO, Subject.Whole.INPUT))
                : List.of();
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
        Take take;
        try (soFar) {
            take = take();
        }
        List<Warning> warnings = new ArrayList<>(take.warnings());
        if (place.job().isEmpty()) {
            warnings.addAll(checked(take.file()));
            return recorded(take, Optional.empty(), warnings);
        }
        Event event = place.take(request.run(), named(take.device(), take.format()), take.warnings());
        List<Warning> checked = checked(place.inJob(event));
        warnings.addAll(checked);
        warnings.addAll(place.looked(event, checked));
        return recorded(take, Optional.of(event), warnings);
    }

    private Take take() {
        if (installation.isEmpty()) {
            return recorder.record(meter);
        }
        try (LiveChain chain = follow(installation.get())) {
            return recorder.record((block, frames) -> {
                meter.accept(block, frames);
                chain.accept(block, frames);
            });
        }
    }

    /** What is heard in it; it is safe already, so nothing that goes wrong here matters much. */
    private List<Warning> checked(Path take) {
        if (meter.silent()) {
            return List.of(silent());
        }
        try {
            return CheckTake.check(
                    CheckTake.reduced(take),
                    quiet,
                    installation,
                    request.run().settings().markChannel(),
                    BadInput.in(take));
        } catch (BadInput e) {
            return List.of(Warning.of(
                    WarningCode.TAKE_NOT_CHECKED,
                    Subject.Whole.RECORDING,
                    Fact.of(TakeFact.THE_SOUND),
                    new Quoted(e.getMessage())));
        }
    }

    static Warning silent() {
        return Warning.of(WarningCode.TAKE_SILENT, Subject.Whole.INPUT);
    }

    private LiveChain follow(Installation runs) {
        InputFormat format = recorder.format();
        return LiveSetup.chain(format, runs, markOf(format), soFar);
    }

    private Optional<String> markOf(InputFormat format) {
        return request.run().settings().markChannel().map(word -> LiveSetup.channel(format, word));
    }

    private static Recorded recorded(Take take, Optional<Event> event, List<Warning> warnings) {
        return new Recorded(take.file(), take.ending(), take.durationS(), take.lostS(), event, warnings);
    }
}
