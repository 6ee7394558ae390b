package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.EvenGrid.Interpolation;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class EvenGridTest {
    private static final double RATE_HZ = 416;
    private static final int SIZE = 8320;

    @ParameterizedTest
    @EnumSource
    void aStraightLineStaysOneWhateverTheJitter(Interpolation interpolation) {
        TimeBase time = jittered(0.4e-3, 3);
        EvenGrid grid = EvenGrid.of(time, sampled(time, t -> 3 - 0.7 * t), interpolation);

        assertThat(grid.startS()).isEqualTo(time.at(0));
        assertThat(grid.values().size()).isBetween(SIZE - 1, SIZE + 1);
        for (int n = 0; n < grid.values().size(); n++) {
            double t = grid.startS() + n / grid.rateHz();
            assertThat(grid.values().at(n)).isCloseTo(3 - 0.7 * t, within(1e-9));
        }
    }

    @Test
    void aSlowToneIsTrueWithinAThousandth() {
        TimeBase time = jittered(0.4e-3, 4);
        EvenGrid grid = EvenGrid.of(time, sampled(time, t -> Math.cos(2 * Math.PI * 12 * t)), Interpolation.CUBIC);

        for (int n = 2; n < grid.values().size() - 2; n++) {
            double t = grid.startS() + n / grid.rateHz();
            assertThat(grid.values().at(n)).isCloseTo(Math.cos(2 * Math.PI * 12 * t), within(1e-3));
        }
    }

    /** Why amplitudes are never measured on the grid. Stamp jitter of a phone; the line at half the highest frequency. */
    @ParameterizedTest
    @CsvSource({"LINEAR, 0.2e-3, 0.05, 0.10", "LINEAR, 0.4e-3, 0.10, 0.15", "CUBIC, 0.4e-3, 0.03, 0.08"})
    void aLineNearHalfTheHighestFrequencyLosesSeveralPercentOnTheGrid(
            Interpolation interpolation, double jitterS, double least, double most) {
        double hz = RATE_HZ / 4;
        TimeBase time = jittered(jitterS, 5);
        EvenGrid grid = EvenGrid.of(time, sampled(time, t -> Math.cos(2 * Math.PI * hz * t)), interpolation);

        double read = new AveragedSpectrum(4160, 2080, Spectrum.Scaling.AMPLITUDE)
                .of(grid.values(), grid.rateHz())
                .at(hz);

        assertThat(1 - read).isBetween(least, most);
    }

    @Test
    void aGapIsBridgedByAStraightLine() {
        TimeBase time = new TimeBase.Stamped(Series.of(0, 1, 2, 6, 7, 8), 1);
        EvenGrid grid = EvenGrid.of(time, Series.of(0, 0, 1, 3, 0, 0), Interpolation.LINEAR);

        assertThat(grid.values().toArray()).containsExactly(0, 0, 1, 1.5, 2, 2.5, 3, 0, 0);
    }

    @Test
    void refusesASingleStamp() {
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> EvenGrid.of(new TimeBase.Stamped(Series.of(1), 1), Series.of(1), Interpolation.LINEAR));
    }

    private static TimeBase jittered(double jitterS, long seed) {
        Random random = new Random(seed);
        double[] stamps = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            stamps[i] = 5 + i / RATE_HZ + Math.max(-1.1e-3, Math.min(1.1e-3, jitterS * random.nextGaussian()));
        }
        return new TimeBase.Stamped(Series.of(stamps), RATE_HZ);
    }

    private static Series sampled(TimeBase time, DoubleUnaryOperator signal) {
        double[] values = new double[time.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = signal.applyAsDouble(time.at(i));
        }
        return Series.of(values);
    }
}
