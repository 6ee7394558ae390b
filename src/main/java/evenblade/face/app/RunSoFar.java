package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.capture.ChannelLevel;
import evenblade.machine.installation.Installation;
import evenblade.machine.plan.Planner;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.measure.live.SteppedRun;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a run while it is recorded: the latest reading, and how far the steps have come with it.
 * One thread takes readings, any may ask.
 */
final class RunSoFar implements AutoCloseable {
    private final Optional<SteppedRun> stepped;
    private final Optional<StepBeep> beep;
    private volatile Optional<LiveReading> reading = Optional.empty();
    private volatile Optional<StepProgress> step = Optional.empty();
    private volatile List<StepProgress> finished = List.of();

    private RunSoFar(Optional<SteppedRun> stepped, Optional<StepBeep> beep) {
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
            return new RunSoFar(Optional.empty(), Optional.empty());
        }
        Installation runs = installation.orElseThrow(() ->
                BadInput.in("steps").found("it isn't known what runs", "a job, or an installation file beside it"));
        List<Double> speeds = steps.get().engineRpms();
        SteppedRun stepped = new SteppedRun(
                Planner.plan(runs, speeds, OptionalDouble.empty()).dwells(),
                steps.get().wantedPercent());
        return new RunSoFar(Optional.of(stepped), steps.get().beep() ? Optional.of(StepBeep.open()) : Optional.empty());
    }

    void take(LiveReading now) {
        reading = Optional.of(now);
        stepped.ifPresent(run -> {
            int before = run.finished().size();
            step = run.take(now);
            finished = run.finished();
            if (finished.size() > before) {
                beep.ifPresent(sound -> sound.stepDone(run.finished().size() == run.count()));
            }
        });
    }

    LiveRecording.View view(double seconds, List<ChannelLevel> levels) {
        return new LiveRecording.View(seconds, levels, reading, step, finished);
    }

    @Override
    public void close() {
        beep.ifPresent(StepBeep::close);
    }
}
