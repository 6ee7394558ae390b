package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterfallTest {
    @ParameterizedTest
    @CsvSource({
        "2, 2400, 1000",
        "7, 416, 1000",
        "7200, 2400, 1000",
        "24000, 2400, 300",
        "500000, 2400, 1080",
        "8640000, 2400, 1000"
    })
    void neverHasMoreSlicesOrBinsThanAskedFor(int size, double rateHz, double upToHz) {
        Waterfall waterfall = Waterfall.of(Series.ofFloats(new float[size], size), rateHz, upToHz, 400, 600);

        assertThat(waterfall.slices()).isBetween(1, 400);
        assertThat(waterfall.bins()).isBetween(1, 600);
        assertThat(waterfall.frequencyHz(waterfall.bins() - 1))
                .isLessThanOrEqualTo(Math.min(upToHz, rateHz / 2) * (1 + 1e-9));
        assertThat(waterfall.timeS(waterfall.slices() - 1)).isLessThan(size / rateHz);
    }

    @Test
    void aRisingToneStandsInEachSliceAtItsFrequencyThere() {
        double rate = 2000;
        int size = 120_000;
        double[] x = new double[size];
        for (int i = 0; i < size; i++) {
            double t = i / rate;
            x[i] = 3 * Math.cos(2 * Math.PI * (100 * t + 2 * t * t)); // 100 Hz + 4 Hz/s
        }
        Waterfall waterfall = Waterfall.of(Series.of(x), rate, 500, 400, 600);

        for (int s = 0; s < waterfall.slices(); s++) {
            int best = 0;
            for (int k = 0; k < waterfall.bins(); k++) {
                best = waterfall.amplitude(s, k) > waterfall.amplitude(s, best) ? k : best;
            }
            assertThat(waterfall.frequencyHz(best)).isCloseTo(100 + 4 * waterfall.timeS(s), within(2.5));
        }
        assertThat(waterfall.slices()).isGreaterThan(100);
    }

    @Test
    void aSteadyToneHasItsAmplitudeInEverySliceAndOneShortBurstIsNotLostBetweenSlices() {
        double rate = 2400;
        int size = 2_400_000;
        float[] x = new float[size];
        for (int i = 0; i < size; i++) {
            x[i] = (float) Math.cos(2 * Math.PI * 200 * i / rate);
        }
        for (int i = 1_000_700; i < 1_002_700; i++) {
            x[i] += (float) (5 * Math.cos(2 * Math.PI * 500 * i / rate));
        }
        Waterfall waterfall = Waterfall.of(Series.ofFloats(x, size), rate, 1000, 400, 600);

        int steady = (int) Math.round(200 / waterfall.frequencyHz(1));
        int burst = (int) Math.round(500 / waterfall.frequencyHz(1));
        double loudest = 0;
        double at = 0;
        for (int s = 0; s < waterfall.slices(); s++) {
            assertThat(waterfall.amplitude(s, steady)).isCloseTo(1, within(0.16)); // Hann's largest error: -1.42 dB
            if (waterfall.amplitude(s, burst) > loudest) {
                loudest = waterfall.amplitude(s, burst);
                at = waterfall.timeS(s);
            }
        }
        assertThat(loudest).isGreaterThan(0.5);
        assertThat(at).isCloseTo(1_001_700 / rate, within(2.6));
    }

    @Test
    void refusesNothing() {
        assertThatIllegalArgumentException().isThrownBy(() -> Waterfall.of(Series.of(1), 100, 50, 400, 600));
    }
}
