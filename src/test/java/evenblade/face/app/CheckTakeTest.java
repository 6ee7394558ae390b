package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.problem.BadInput;
import evenblade.keep.practice.MarkPulses;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each fault put into the sound of an invented run from idle to fast, written as a file, and looked for. */
class CheckTakeTest {
    private static final Installation INSTALLATION =
            InstallationFile.read(Path.of("samples/geared-three-blade/installation.json"));
    private static final int RATE_HZ = 4000;
    private static final SpeedProfile SPEED =
            SpeedProfile.startingAt(20).thenDwell(6).thenRampTo(34, 4).thenDwell(6);

    @TempDir
    Path folder;

    /** Lines and the noise between them rise with the cube of speed, as a propeller's sound does. */
    private static double[] engine(long seed) {
        SyntheticRun run = SyntheticRun.at(SPEED)
                .withLine(1, 0.05, 20)
                .withLine(3, 0.25, 100)
                .withLine(6, 0.1, 40)
                .withLine(2 * 51 / 21.0, 0.12, 200)
                .withNoise(new Noise(0.03, 0))
                .withSeed(seed);
        double[] sound = run.samples(run.evenClock(RATE_HZ));
        for (int i = 0; i < sound.length; i++) {
            sound[i] *= Math.pow(SPEED.propellerHzAt((double) i / RATE_HZ) / 34, 3);
        }
        return sound;
    }

    private static double[] noise(double rms, double seconds, long seed) {
        Random random = new Random(seed);
        return random.doubles((long) (seconds * RATE_HZ), -1, 1)
                .map(x -> x * rms * Math.sqrt(3))
                .toArray();
    }

    private Path written(String name, double[]... channels) throws IOException {
        Path file = folder.resolve(name);
        new WavFile(RATE_HZ, 16, 1, "invented").write(file, List.of(channels));
        return file;
    }

    private List<String> codes(Path take, Optional<Path> quiet, Optional<String> mark) {
        return CheckTake.check(
                        CheckTake.reduced(take),
                        quiet.map(CheckTake::reduced),
                        Optional.of(INSTALLATION),
                        mark,
                        BadInput.in(take))
                .stream()
                .map(warning -> warning.code().word())
                .toList();
    }

    private List<String> codes(double[]... channels) throws IOException {
        return codes(written("take.wav", channels), Optional.empty(), Optional.empty());
    }

    private static double[] changed(double[] sound, UnaryOperator<Double> each) {
        double[] changed = sound.clone();
        for (int i = 0; i < changed.length; i++) {
            changed[i] = each.apply(changed[i]);
        }
        return changed;
    }

    @Test
    void aCleanTakeRaisesNothing() throws IOException {
        assertThat(codes(engine(1), engine(2))).isEmpty();
    }

    @Test
    void aGainThatHoldsTheLevelIsSuspected() throws IOException {
        double[] sound = engine(1);
        double power = 0;
        for (int i = 0; i < sound.length; i++) {
            power += (sound[i] * sound[i] - power) / (0.3 * RATE_HZ);
            sound[i] *= 0.15 / Math.sqrt(power + 1e-4);
        }

        assertThat(codes(sound)).contains("automatic-gain-suspected");
    }

    /** First-order high-pass at 90 Hz by the bilinear transform, its corner pre-warped. */
    private static double[] withoutLowEnd(double[] sound) {
        double[] cut = new double[sound.length];
        double k = Math.tan(Math.PI * 90 / RATE_HZ);
        for (int i = 1; i < cut.length; i++) {
            cut[i] = (sound[i] - sound[i - 1] + (1 - k) * cut[i - 1]) / (1 + k);
        }
        return cut;
    }

    @Test
    void aMicrophoneThatLosesTheLowEndIsFoundByItsQuietTake() throws IOException {
        Path take = written("take.wav", withoutLowEnd(engine(1)));
        Path quiet = written("quiet.wav", withoutLowEnd(noise(0.005, 5, 7)));

        assertThat(codes(take, Optional.of(quiet), Optional.empty())).containsExactly("low-cut");
    }

    @Test
    void clippingIsFound() throws IOException {
        assertThat(codes(changed(engine(1), x -> Math.max(-1, Math.min(1, 4 * x)))))
                .contains("level-too-high");
    }

    @Test
    void aTakeThatIsFarTooQuietIsFound() throws IOException {
        assertThat(codes(changed(engine(1), x -> x / 100))).contains("level-low");
    }

    @Test
    void aDeadChannelIsFound() throws IOException {
        assertThat(codes(engine(1), new double[engine(1).length])).contains("channel-dead");
    }

    @Test
    void oneSensorOnBothChannelsIsFound() throws IOException {
        assertThat(codes(engine(1), changed(engine(1), x -> 0.8 * x))).containsExactly("channels-alike");
    }

    @Test
    void aMarkIsFineOnItsChannelSwappedOnAnotherAndMissedWhereThereIsNone() throws IOException {
        double[] mark = MarkPulses.clean().samples(SPEED, SyntheticRun.at(SPEED).evenClock(RATE_HZ));
        Path right = written("right.wav", engine(1), changed(mark, x -> 0.8 * x));
        Path none = written("none.wav", engine(1), noise(0.01, SPEED.durationS(), 5));

        assertThat(codes(right, Optional.empty(), Optional.of("right")))
                .doesNotContain("channels-swapped", "mark-without-pulses");
        assertThat(codes(right, Optional.empty(), Optional.of("left"))).contains("channels-swapped");
        assertThat(codes(none, Optional.empty(), Optional.of("right"))).contains("mark-without-pulses");
    }

    @Test
    void humOfAQuietTakeIsToldAndSoIsAQuietTakeOfOtherChannels() throws IOException {
        double[] still = noise(0.001, 5, 6);
        Path quiet = written("quiet.wav", still);
        double[] humming = still.clone();
        for (int i = 0; i < humming.length; i++) {
            humming[i] += 0.01 * Math.sin(2 * Math.PI * 50 * i / RATE_HZ);
        }
        Path hum = written("hum.wav", humming);
        Path take = written("take.wav", engine(1));
        Path two = written("two.wav", engine(1), engine(2));

        assertThat(codes(take, Optional.of(quiet), Optional.empty())).isEmpty();
        assertThat(codes(take, Optional.of(hum), Optional.empty())).containsExactly("mains-hum");
        assertThat(codes(two, Optional.of(quiet), Optional.empty())).contains("quiet-take-unlike");
    }
}
