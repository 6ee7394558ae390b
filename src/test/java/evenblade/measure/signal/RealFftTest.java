package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RealFftTest {
    @ParameterizedTest
    @ValueSource(
            ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 15, 16, 30, 64, 97, 101, 210, 211, 343, 422, 499, 512, 1000, 1021, 1022})
    void equalsTheDefiningSumAtEveryLength(int length) {
        double[] x = new Random(length).doubles(length, -1, 1).toArray();
        double[] before = x.clone();
        RealFft fft = new RealFft(length);

        fft.transform(x);

        assertThat(x).isEqualTo(before);
        double[] power = new double[fft.bins()];
        fft.powerInto(power);
        for (int k = 0; k < fft.bins(); k++) {
            double re = 0;
            double im = 0;
            for (int n = 0; n < length; n++) {
                double angle = -2 * Math.PI * ((long) k * n % length) / length;
                re += x[n] * Math.cos(angle);
                im += x[n] * Math.sin(angle);
            }
            assertThat(fft.real(k)).isCloseTo(re, within(1e-11 * length));
            assertThat(fft.imaginary(k)).isCloseTo(im, within(1e-11 * length));
            assertThat(power[k]).isCloseTo(re * re + im * im, within(1e-10 * length));
            assertThat(fft.power(k)).isEqualTo(power[k]);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1000, 1001, 4096, 9973, 65536, 100_003, 262_144})
    void energyInTimeEqualsEnergyInFrequency(int length) {
        double[] x = new Random(length).doubles(length, -1, 1).toArray();
        RealFft fft = new RealFft(length);
        fft.transform(x);

        double inTime = 0;
        for (double v : x) {
            inTime += v * v;
        }
        double inFrequency = 0;
        for (int k = 0; k < fft.bins(); k++) {
            inFrequency += fft.power(k) * (k == 0 || 2 * k == length ? 1 : 2);
        }
        // Parseval's theorem
        assertThat(inFrequency / length).isCloseTo(inTime, within(1e-10 * inTime));
    }

    @Test
    void refusesNoLength() {
        assertThatIllegalArgumentException().isThrownBy(() -> new RealFft(0));
    }
}
