package evenblade.face.desktop;

import evenblade.input.capture.SoundBench;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** An invented engine that is played to where the default input hears it: sound left, once-per-revolution mark right. */
final class InventedSound {
    private static final int RATE_HZ = 48_000;
    private static final double PROPELLER_PER_ENGINE = 21.0 / 51;

    private final Process player;

    private InventedSound(Process player) {
        this.player = player;
    }

    /** The speed of the propeller at an engine speed, revolutions per second. */
    static double hz(double engineRpm) {
        return engineRpm / 60 * PROPELLER_PER_ENGINE;
    }

    /**
     * Plays a run with that speed.
     *
     * @param gain 1 for a peak of about half of full scale, 0 for the engine standing
     */
    static InventedSound play(Path folder, SpeedProfile speed, double once, double gain) throws IOException {
        SyntheticRun run = SyntheticRun.at(speed.wandering(0.003, 3))
                .withLine(1, once * gain, 20)
                .withLine(3, 0.2 * gain, 100)
                .withLine(6, 0.06 * gain, 40)
                .withLine(2 / PROPELLER_PER_ENGINE, 0.1 * gain, 200)
                .withNoise(new Noise(0.004, 0))
                .withSeed(4);
        double[] left = run.samples(run.evenClock(RATE_HZ));
        double[] right = new double[left.length];
        for (int i = 0; i < right.length; i++) {
            double turn = run.speed().revolutionsAt(i / (double) RATE_HZ);
            right[i] = gain == 0 ? left[i] / 2 : turn - Math.floor(turn) < 0.03 ? 0.6 : -0.02;
            left[i] = Math.max(-1, Math.min(1, left[i]));
        }
        Path file = folder.resolve("engine-" + System.nanoTime() + ".wav");
        new WavFile(RATE_HZ, 16, 1, "invented").write(file, List.of(left, right));
        return new InventedSound(SoundBench.play(file));
    }

    void stop() {
        player.destroy();
    }
}
