package evenblade.measure.speed;

import evenblade.input.recording.Recording;
import evenblade.keep.practice.Line;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.Random;

/** One invented run of a machine with everything that is true of it, and the speed found in it. */
record Trial(Machine machine, SyntheticRun run, Recording recording, SpeedResult found) {
    static final double RATE_HZ = 2400;

    /**
     * @param aboveNoiseDb strongest line over the noise, A²/2σ² over the whole band
     * @param wander share by which the speed wanders
     * @param seconds length
     * @param seed of everything random: speed within the engine's range, amplitudes, entered speed up to
     *     4 % wrong, noise
     */
    static Trial of(Machine machine, double aboveNoiseDb, double wander, double seconds, long seed) {
        Random random = new Random(7919 * seed + machine.blades());
        random.nextDouble();
        double rpm = machine.idleRpm() + (0.2 + 0.75 * random.nextDouble()) * (machine.maxRpm() - machine.idleRpm());
        double hz = rpm / 60 / machine.ratio();
        SpeedProfile profile = SpeedProfile.steady(hz, seconds);
        if (wander > 0) {
            profile = profile.wandering(wander, seed);
        }
        SyntheticRun run = SyntheticRun.at(profile)
                .withLines(machine.lines(random))
                .withStrongestLineAbove(aboveNoiseDb)
                .withSeed(seed);
        double entered = hz * (1 + 0.08 * (random.nextDouble() - 0.5));
        Recording recording = run.recording(RATE_HZ);
        SpeedResult found =
                SpeedFinder.find(recording, recording.channels(), machine.table(), SpeedPrior.around(entered, 0.05));
        return new Trial(machine, run, recording, found);
    }

    Dwell dwell() {
        return found.main().orElseThrow();
    }

    double trueHz() {
        return run.speed().meanHz(dwell().fromS(), dwell().toS());
    }

    /** Share by which the mean speed of the main dwell is wrong. */
    double error() {
        return dwell().propellerHz() / trueHz() - 1;
    }

    /**
     * Cramér–Rao bound of the mean speed, hertz, at constant speed: var ω₀ ≥ 24σ² / [N(N² − 1) Σ l²A_l²]
     * (Christensen &amp; Jakobsson 2009; Nielsen et al. 2017; from memory, confirmed against the exact
     * Fisher matrix).
     */
    double boundHz() {
        double n = RATE_HZ * dwell().durationS();
        double sum = 0;
        for (Line line : run.lines()) {
            double amplitude = line.law().at(trueHz()).magnitude();
            if (line.propellerOrder() * trueHz() < 0.45 * RATE_HZ) {
                sum += Math.pow(line.propellerOrder() * amplitude, 2);
            }
        }
        double variance = Math.pow(run.noise().whiteRms(), 2);
        return Math.sqrt(24 * variance / (n * (n * n - 1) * sum)) * RATE_HZ / (2 * Math.PI);
    }
}
