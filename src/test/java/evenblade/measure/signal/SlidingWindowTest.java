package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlidingWindowTest {
    private static double tone(double hz, double t) {
        return 0.5 * Math.cos(2 * Math.PI * hz * t + 0.7);
    }

    @ParameterizedTest
    @CsvSource({"48000, 1000", "44100, 1000", "8000, 1000", "416, 187", "96000, 450"})
    void holdsTheLatestSoundAtItsTrueTimesWhateverTheBlocks(double fromHz, double keepHz) {
        Random random = new Random(3);
        double hz = 0.4 * keepHz;
        SlidingWindow window = SlidingWindow.plan(fromHz, keepHz, 2, 2);
        long sent = 0;
        for (int block = 0; block < 150; block++) {
            int frames = 1 + random.nextInt((int) (fromHz / 20));
            float[] sound = new float[2 * frames];
            for (int i = 0; i < frames; i++) {
                sound[2 * i] = (float) tone(hz, (sent + i) / fromHz);
                sound[2 * i + 1] = -sound[2 * i];
            }
            window.accept(sound, frames);
            sent += frames;
        }

        double endS = window.fromS() + window.size() / window.rateHz();
        assertThat(window.size() / window.rateHz()).isCloseTo(2, within(0.01));
        assertThat(sent / fromHz - endS).as("age of the newest sample").isBetween(-0.003, 0.06);
        for (int n = 0; n < window.size(); n++) {
            double t = window.fromS() + n / window.rateHz();
            assertThat(window.latest(0, window.size()).at(n)).isCloseTo(tone(hz, t), within(5e-4));
            assertThat(window.latest(1, window.size()).at(n))
                    .isEqualTo(-window.latest(0, window.size()).at(n));
        }
    }

    @Test
    void beforeItIsFullItHoldsAllThereIs() {
        SlidingWindow window = SlidingWindow.plan(8000, 1000, 1, 4);

        window.accept(new float[4000], 4000);

        assertThat(window.fromS()).isZero();
        assertThat(window.size() / window.rateHz()).isBetween(0.45, 0.51);
    }
}
