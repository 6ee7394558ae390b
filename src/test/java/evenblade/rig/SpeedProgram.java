package evenblade.rig;

import java.util.ArrayList;
import java.util.List;

/**
 * What the hand on the throttle does, and how unevenly the engine follows. All shares are of 1 (0.01 is one per cent).
 *
 * @param steps holds and ramps, one after the other
 * @param wander standard deviation of a slow swing of speed (memory {@code wanderMemoryS})
 * @param gusts standard deviation of quick load changes (memory 0.6 s)
 * @param unevenIdle standard deviation of very quick changes (memory 0.15 s), full at idle, none above 1.6 × idle
 */
public record SpeedProgram(List<Step> steps, double wander, double wanderMemoryS, double gusts, double unevenIdle) {

    /** A hold ({@code hold} true: drifts from rpm by {@code drift} over its length) or a ramp to rpm. */
    public record Step(boolean hold, double engineRpm, double seconds, double drift) {}

    public static SpeedProgram still() {
        return new SpeedProgram(List.of(), 0, 4, 0, 0);
    }

    /** A steady lever. The first hold begins the run; between two holds put a ramp, else the speed jumps within 0.2 s. */
    public SpeedProgram hold(double engineRpm, double seconds) {
        return drifting(engineRpm, seconds, 0);
    }

    /** A steady lever while the engine warms up: the speed moves by {@code drift} (share) in the hold. */
    public SpeedProgram drifting(double engineRpm, double seconds, double drift) {
        return with(new Step(true, engineRpm, seconds, drift));
    }

    public SpeedProgram rampTo(double engineRpm, double seconds) {
        return with(new Step(false, engineRpm, seconds, 0));
    }

    public SpeedProgram wandering(double deviation, double memoryS) {
        return new SpeedProgram(steps, deviation, memoryS, gusts, unevenIdle);
    }

    public SpeedProgram gusty(double deviation) {
        return new SpeedProgram(steps, wander, wanderMemoryS, deviation, unevenIdle);
    }

    public SpeedProgram unevenIdle(double deviation) {
        return new SpeedProgram(steps, wander, wanderMemoryS, gusts, deviation);
    }

    /** Every speed of the program times a factor: the same hand on another day. */
    public SpeedProgram scaled(double factor) {
        List<Step> all = steps.stream()
                .map(s -> new Step(s.hold, s.engineRpm * factor, s.seconds, s.drift))
                .toList();
        return new SpeedProgram(all, wander, wanderMemoryS, gusts, unevenIdle);
    }

    public double seconds() {
        return steps.stream().mapToDouble(Step::seconds).sum();
    }

    private SpeedProgram with(Step step) {
        List<Step> longer = new ArrayList<>(steps);
        longer.add(step);
        return new SpeedProgram(List.copyOf(longer), wander, wanderMemoryS, gusts, unevenIdle);
    }

    /** One to four holds of 10–30 s between idle and maximum, ramps of 0.2–5 s, some wander, sometimes the rest. */
    public static SpeedProgram random(Machine machine, long seed) {
        Dice dice = new Dice(seed).fork(21);
        SpeedProgram program = still();
        int holds = dice.between(1, 4);
        double rpm = 0;
        for (int i = 0; i < holds; i++) {
            double next = dice.uniform(machine.idleRpm(), machine.maxRpm() * 0.98);
            if (i > 0 && dice.chance(0.4)) {
                next = rpm * (1 + (dice.chance(0.5) ? 1 : -1) * dice.uniform(0.03, 0.2)); // a step of the throttle
            }
            next = Math.max(machine.idleRpm(), Math.min(machine.maxRpm(), next));
            if (i > 0) {
                program = program.rampTo(next, dice.logUniform(0.2, 5));
            }
            double drift = dice.chance(0.25) ? (dice.chance(0.7) ? 1 : -1) * dice.uniform(0.02, 0.05) : 0;
            program = program.drifting(next, dice.uniform(10, 30), drift);
            rpm = next * (1 + drift);
        }
        return program.wandering(dice.uniform(0, 0.01), dice.uniform(2, 6))
                .gusty(dice.chance(0.3) ? dice.uniform(0.001, 0.004) : 0)
                .unevenIdle(dice.chance(0.5) ? dice.uniform(0.001, 0.005) : 0);
    }
}
