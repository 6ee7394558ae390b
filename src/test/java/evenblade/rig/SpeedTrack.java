package evenblade.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * Speed and angle of both shafts over time, as they truly were. Between grid points (5 ms) the speed is a straight line,
 * so the angle is a parabola: turns(t) = turns_i + f_i·τ + (f_{i+1} − f_i)·τ²/(2·step), exact.
 */
public final class SpeedTrack {
    static final double STEP_S = 0.005;

    private final double[] engineHz;
    private final double[] propellerHz;
    private final double[] engineTurns;
    private final double[] propellerTurns;
    private final List<Hold> holds;

    /** One steady lever: from, to. */
    public record Hold(double fromS, double toS) {}

    private SpeedTrack(
            double[] engineHz, double[] propellerHz, double engineStart, double propellerStart, List<Hold> holds) {
        this.engineHz = engineHz;
        this.propellerHz = propellerHz;
        this.engineTurns = turns(engineHz, engineStart);
        this.propellerTurns = turns(propellerHz, propellerStart);
        this.holds = holds;
    }

    /**
     * @param ratioWander standard deviation of the drive's ratio (share; a belt creeps: 0.0025–0.005), memory 12 s
     */
    static SpeedTrack of(SpeedProgram program, Machine machine, double ratioWander, Dice dice) {
        int points = (int) Math.ceil(program.seconds() / STEP_S) + 2;
        double[] hz = new double[points];
        List<Hold> holds = new ArrayList<>();
        double time = 0;
        double rpm = program.steps().get(0).engineRpm();
        int filled = 0;
        for (SpeedProgram.Step step : program.steps()) {
            double end = time + step.seconds();
            double jumpS = step.hold() ? Math.min(0.2, step.seconds() / 10) : step.seconds();
            if (step.hold()) {
                holds.add(new Hold(time + (Math.abs(step.engineRpm() / rpm - 1) > 1e-6 ? jumpS : 0), end));
            }
            double last = step.engineRpm() * (1 + step.drift());
            for (; filled < points && filled * STEP_S <= end + 1e-9; filled++) {
                double since = filled * STEP_S - time;
                double bent =
                        since >= jumpS ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * since / jumpS); // a hand moves smoothly
                double drifted = step.engineRpm() + (last - step.engineRpm()) * since / step.seconds();
                hz[filled] = (rpm + (drifted - rpm) * bent) / 60;
            }
            rpm = last;
            time = end;
        }
        while (filled < points) {
            hz[filled++] = rpm / 60;
        }
        double[] slow = Wander.bounded(points, STEP_S, program.wanderMemoryS() / 2, program.wander(), dice.fork(1));
        double[] gust = Wander.bounded(points, STEP_S, 0.3, program.gusts(), dice.fork(2));
        double[] quick = Wander.bounded(points, STEP_S, 0.08, program.unevenIdle(), dice.fork(3));
        double[] creep = Wander.bounded(points, STEP_S, 6, ratioWander, dice.fork(4));
        double[] propeller = new double[points];
        for (int i = 0; i < points; i++) {
            double aboveIdle = (hz[i] * 60 / machine.idleRpm() - 1) / 0.6;
            double idling = Math.max(0, 1 - Math.max(0, aboveIdle));
            hz[i] *= 1 + slow[i] + gust[i] + quick[i] * idling;
            propeller[i] = hz[i] / (machine.ratio() * (1 + creep[i]));
        }
        Dice start = dice.fork(5);
        return new SpeedTrack(hz, propeller, start.uniform(0, 2), start.uniform(0, 1), List.copyOf(holds));
    }

    private static double[] turns(double[] hz, double start) {
        double[] sum = new double[hz.length];
        sum[0] = start;
        for (int i = 1; i < hz.length; i++) {
            sum[i] = sum[i - 1] + (hz[i - 1] + hz[i]) / 2 * STEP_S;
        }
        return sum;
    }

    public List<Hold> holds() {
        return holds;
    }

    int points() {
        return engineHz.length;
    }

    public double seconds() {
        return (engineHz.length - 2) * STEP_S;
    }

    Series hz(Shaft shaft) {
        return new Series(STEP_S, shaft == Shaft.PROPELLER ? propellerHz : engineHz);
    }

    public Series engineRpm() {
        return rpm(engineHz);
    }

    public Series propellerRpm() {
        return rpm(propellerHz);
    }

    private static Series rpm(double[] hz) {
        double[] rpm = new double[hz.length];
        for (int i = 0; i < rpm.length; i++) {
            rpm[i] = hz[i] * 60;
        }
        return new Series(STEP_S, rpm);
    }

    /** Turns of the shaft at a time, counted from its mark. */
    public double turns(Shaft shaft, double timeS) {
        double[] hz = shaft == Shaft.PROPELLER ? propellerHz : engineHz;
        double[] sum = shaft == Shaft.PROPELLER ? propellerTurns : engineTurns;
        int i = Math.max(0, Math.min(hz.length - 2, (int) (timeS / STEP_S)));
        double since = timeS - i * STEP_S;
        return sum[i] + hz[i] * since + (hz[i + 1] - hz[i]) * since * since / (2 * STEP_S);
    }
}
