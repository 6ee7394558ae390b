package evenblade.app;

import evenblade.capture.FormatWish;
import evenblade.capture.InputFormat;
import evenblade.capture.LevelMeter;
import evenblade.capture.LiveSource;
import evenblade.capture.Recorder;
import evenblade.capture.SoundDevices;
import evenblade.capture.Take;
import evenblade.installation.Installation;
import evenblade.installation.InstallationFile;
import evenblade.job.Event;
import evenblade.job.NewRun;
import evenblade.live.LiveChain;
import evenblade.live.LiveReading;
import evenblade.live.StepProgress;
import evenblade.live.SteppedRun;
import evenblade.plan.Planner;
import evenblade.plan.RunPlan;
import evenblade.problem.BadInput;
import evenblade.problem.Warning;
import evenblade.recording.ChannelChoice;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

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
        /** Without steps. */
        public Request(
                Path target,
                Optional<String> device,
                FormatWish wish,
                OptionalDouble seconds,
                NewRun run,
                Optional<Path> installation,
                Optional<Path> quiet) {
            this(target, device, wish, seconds, run, installation, quiet, Optional.empty());
        }
    }

    /**
     * A stepped run.
     *
     * @param engineRpms speeds to hold, in order; none for the usual ones between idle and the highest speed
     * @param wantedPercent largest half interval wanted of propeller once-per-revolution and blade pass
     */
    public record Steps(List<Double> engineRpms, double wantedPercent) {
        public Steps {
            engineRpms = List.copyOf(engineRpms);
        }
    }

    private final Request request;
    private final TakePlace place;
    private final Recorder recorder;
    private final LevelMeter meter;
    private final Optional<Installation> installation;
    private final Optional<SteppedRun> stepped;
    private volatile Optional<LiveReading> reading = Optional.empty();
    private volatile Optional<StepProgress> step = Optional.empty();
    private volatile List<StepProgress> finished = List.of();

    private RecordRun(Request request, TakePlace place, Recorder recorder, Optional<Installation> installation) {
        this.request = request;
        this.place = place;
        this.recorder = recorder;
        this.installation = installation;
        this.stepped = request.steps().map(steps -> stepped(steps, installation));
        this.meter =
                new LevelMeter(recorder.format().rateHz(), recorder.format().channels());
    }

    /**
     * Opens the input and makes the file; nothing is recorded yet.
     *
     * @throws BadInput where target, device, format or length can't be used
     */
    public static RecordRun prepare(Request request) {
        if (request.seconds().isPresent()) {
            requireLength(request.seconds().getAsDouble());
        }
        TakePlace place = TakePlace.of(request.target(), ".wav");
        Optional<Installation> installation = request.installation()
                .map(InstallationFile::read)
                .or(() -> place.job().map(job -> job.record().installation()));
        LiveSource input = SoundDevices.open(request.device(), request.wish());
        try {
            request.run().settings().markChannel().ifPresent(mark -> requireChannel(mark, input.format()));
        } catch (BadInput e) {
            input.close();
            throw e;
        }
        return new RecordRun(
                request,
                place,
                Recorder.prepare(input, place.file(), place.room(), request.seconds(), place.copies()),
                installation);
    }

    /** Refuses a length that isn't above zero. */
    static void requireLength(double seconds) {
        if (!(seconds > 0 && Double.isFinite(seconds))) {
            throw BadInput.in("--seconds").found(seconds + " s", "a length above zero");
        }
    }

    private static void requireChannel(String mark, InputFormat format) {
        ChannelChoice.indexOf(format.channelNames(), mark, BadInput.in("--mark-channel"));
    }

    @Override
    public String device() {
        return recorder.device() + ", " + recorder.format().text();
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
        return new View(recorder.recordedS(), meter.levels(), reading, step, finished);
    }

    @Override
    public void stop() {
        recorder.stop();
    }

    @Override
    public Recorded record() {
        Take take;
        if (installation.isPresent()) {
            try (LiveChain chain = follow(installation.get())) {
                take = recorder.record((block, frames) -> {
                    meter.accept(block, frames);
                    chain.accept(block, frames);
                });
            }
        } else {
            take = recorder.record(meter);
        }
        List<Warning> warnings = new ArrayList<>(take.warnings());
        warnings.addAll(checked(take));
        if (place.job().isEmpty()) {
            return recorded(take, Optional.empty(), warnings);
        }
        AddRun.Added added = add(take);
        warnings.addAll(added.warnings());
        return recorded(take, Optional.of(added.event()), warnings);
    }

    /** A take too short or too silent to be checked is told about where it is taken into the job. */
    private List<Warning> checked(Take take) {
        try {
            return CheckTake.answer(
                    take.file(),
                    request.quiet(),
                    installation,
                    request.run().settings().markChannel());
        } catch (BadInput e) {
            return List.of(new Warning("take-not-checked", "the sound could not be checked: " + e.getMessage()));
        }
    }

    private LiveChain follow(Installation runs) {
        InputFormat format = recorder.format();
        Optional<String> mark = request.run().settings().markChannel().map(word -> format.channelNames()
                .get(ChannelChoice.indexOf(format.channelNames(), word, BadInput.in("--mark-channel"))));
        return LiveView.chain(format, runs, mark, this::take);
    }

    private void take(LiveReading now) {
        reading = Optional.of(now);
        stepped.ifPresent(run -> {
            step = run.take(now);
            finished = run.finished();
        });
    }

    private static SteppedRun stepped(Steps steps, Optional<Installation> installation) {
        Installation runs = installation.orElseThrow(() ->
                BadInput.in("--steps").found("it isn't known what runs", "a job, or an installation file beside it"));
        RunPlan plan = Planner.plan(runs, steps.engineRpms(), OptionalDouble.empty());
        return new SteppedRun(plan.dwells(), steps.wantedPercent());
    }

    private static Recorded recorded(Take take, Optional<Event> event, List<Warning> warnings) {
        return new Recorded(take.file(), take.ending(), take.durationS(), take.lostS(), event, warnings);
    }

    private AddRun.Added add(Take take) {
        String device = take.device() + ", " + take.format().text();
        return place.take(request.run(), device, take.warnings());
    }
}
