package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.capture.ChannelLevel;
import evenblade.machine.installation.Installation;
import evenblade.machine.plan.Planner;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveListener;
import evenblade.measure.live.LiveListener.LiveNow;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.measure.live.SteppedRun;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a run while it is recorded: the latest figures and window, and how far the steps have come with
 * them. Any thread may ask.
 */
final class RunSoFar implements LiveListener, AutoCloseable {
    private final Optional<SteppedRun> stepped;
    private final Optional<StepBeep> beep;
    private final double ratio;
    private volatile Optional<LiveNow> now = Optional.empty();
    private volatile Optional<LiveReading> reading = Optional.empty();
    private volatile boolean stopped;

    private RunSoFar(double ratio, Optional<SteppedRun> stepped, Optional<StepBeep> beep) {
        this.ratio = ratio;
        this.stepped = stepped;
        this.beep = beep;
    }

    /**
     * Begins.
     *
     * @param steps dwells to be led through
     * @param installation what runs
     * @throws BadInput where steps are wanted and it isn't known what runs, or it doesn't run at one of them
     */
    static RunSoFar begin(Optional<RecordRun.Steps> steps, Optional<Installation> installation) {
        if (steps.isEmpty()) {
            double ratio = installation.map(runs -> runs.reduction().ratio()).orElse(1.0);
            return new RunSoFar(ratio, Optional.empty(), Optional.empty());
        }
        Installation runs = installation.orElseThrow(() ->
                BadInput.in("steps").found("it isn't known what runs", "a job, or an installation file beside it"));
        List<Double> speeds = steps.get().engineRpms();
        SteppedRun stepped = new SteppedRun(
                Planner.plan(runs, speeds, OptionalDouble.empty()).dwells(),
                steps.get().wantedPercent());
        return new RunSoFar(
                runs.reduction().ratio(),
                Optional.of(stepped),
                steps.get().beep() ? Optional.of(StepBeep.open()) : Optional.empty());
    }

    @Override
    public void now(LiveNow latest) {
        now = Optional.of(latest);
    }

    @Override
    public void window(LiveReading latest) {
        reading = Optional.of(latest);
        stepped.ifPresent(run -> {
            int before = run.finished().size();
            run.take(latest);
            if (run.finished().size() > before) {
                beep.ifPresent(sound -> sound.stepDone(run.now().isEmpty()));
            }
        });
    }

    /** What was seen last would stand there for good and mislead. */
    @Override
    public void stopped() {
        stopped = true;
    }

    void skipStep() {
        stepped.ifPresent(SteppedRun::skip);
    }

    void repeatStep() {
        stepped.ifPresent(SteppedRun::repeat);
    }

    LiveRecording.View view(double seconds, List<ChannelLevel> levels) {
        List<StepProgress> finished = stepped.map(SteppedRun::finished).orElse(List.of());
        if (stopped) {
            return new LiveRecording.View(
                    seconds, levels, LiveFigures.NONE, Optional.empty(), Optional.empty(), finished, true);
        }
        return new LiveRecording.View(
                seconds,
                levels,
                now.map(latest -> LiveFigures.of(ratio, latest, reading)).orElse(LiveFigures.NONE),
                reading,
                stepped.flatMap(SteppedRun::now),
                finished,
                false);
    }

    @Override
    public void close() {
        beep.ifPresent(StepBeep::close);
    }
}
