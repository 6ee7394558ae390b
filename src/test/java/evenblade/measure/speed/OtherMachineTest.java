package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** A series of multiples in noise is another machine, scattered tones aren't; the chance is seeded. */
class OtherMachineTest {
    private static Optional<Boolean> judged(DoubleUnaryOperator tones) {
        Random dice = new Random(9);
        int size = 6400;
        double[] x = new double[size];
        for (int i = 0; i < size; i++) {
            x[i] = tones.applyAsDouble(i / 800.0) + 0.3 * dice.nextGaussian();
        }
        Channel channel = new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, Series.of(x));
        Recording recording = new Recording(
                new Source(Path.of("x.wav"), FileHash.of("0"), "wav", false, 800, 8, List.of("x")),
                new TimeBase.Even(0, 800, size),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, 8)));
        WhitenedSpectrogram frames = WhitenedSpectrogram.of(recording, recording.channels(), 350);
        assertThat(frames.lengthS()).isCloseTo(1.5, within(1e-9));
        double[] still = new double[frames.frames()];
        java.util.Arrays.fill(still, 30);
        return OtherMachine.in(WhitenedLines.along(frames, 0, still));
    }

    private static double waves(double t, double... hz) {
        double sum = 0;
        for (double f : hz) {
            sum += 0.5 * Math.cos(2 * Math.PI * f * t + f);
        }
        return sum;
    }

    @Test
    void eightMultiplesOfOneToneAreAMachine() {
        assertThat(judged(t -> waves(t, 37.3, 74.6, 111.9, 149.2, 186.5, 223.8, 261.1, 298.4)))
                .contains(true);
    }

    @Test
    void noiseAndATwoToneSoundAreNone() {
        assertThat(judged(t -> 0)).contains(false);
        assertThat(judged(t -> waves(t, 41, 143.7))).contains(false);
    }
}
