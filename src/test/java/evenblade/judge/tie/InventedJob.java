package evenblade.judge.tie;

import evenblade.base.numeric.Phasor;
import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.SplittableRandom;

/** Runs made from a known tie, for tests: V = c + k·T + q·P and noise of the same size in both parts. */
final class InventedJob {
    private final Phasor c;
    private final Phasor k;
    private final double noise;
    private final Random random;
    private List<String> seating = List.of("A", "B", "C");
    private final List<TieRun> runs = new ArrayList<>();

    InventedJob(Phasor c, Phasor k, double noise, long seed) {
        this.c = c;
        this.k = k;
        this.noise = noise;
        // Neighbouring seeds of Random begin alike; mixed, they don't.
        this.random = new Random(new SplittableRandom(seed).nextLong());
    }

    /** Blades by hub position in the runs that follow; where nothing is said, they stay. */
    InventedJob seated(String... blades) {
        seating = List.of(blades);
        return this;
    }

    InventedJob run(Phasor track) {
        return run(track, Phasor.ZERO, Optional.empty(), true);
    }

    InventedJob silentRun(Phasor track) {
        return run(track, Phasor.ZERO, Optional.empty(), false);
    }

    InventedJob run(Phasor track, Phasor q, Optional<Phasor> pitch, boolean phase) {
        Phasor v = c.plus(k.times(track))
                .plus(q.times(pitch.orElse(Phasor.ZERO)))
                .plus(new Phasor(random.nextGaussian(), random.nextGaussian()).times(noise));
        runs.add(new TieRun(
                "run " + (runs.size() + 1),
                v.magnitude(),
                Math.max(noise, 1e-6),
                phase ? OptionalDouble.of(v.degrees()) : OptionalDouble.empty(),
                track,
                0,
                pitch,
                "marking " + (runs.size() + 1),
                seating));
        return this;
    }

    TieAnswer answer() {
        return VibrationAndTrack.of(runs, HubCounting.AGAINST_ROTATION);
    }

    TrackTie tie() {
        return ((TieAnswer.Tied) answer()).tie();
    }

    List<TieRun> runs() {
        return List.copyOf(runs);
    }
}
