package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import org.junit.jupiter.api.Test;

/** Pulses drawn by hand at 100 samples a second, 40 samples apart. */
class MarkPulseTimesTest {
    private static final double RATE_HZ = 100;
    private static final int APART = 40;
    private static final int PULSES = 12;
    private static final double[] PULSE = {0.1, 0.3, 0.9, 1.0, 0.3};

    private static double[] drawn(double height) {
        double[] x = new double[APART * (PULSES + 1)];
        for (int p = 0; p < PULSES; p++) {
            for (int i = 0; i < PULSE.length; i++) {
                x[APART * p + 20 + i] = height * PULSE[i];
            }
        }
        return x;
    }

    private static MarkPulseTimes read(double[] x) {
        return MarkPulseTimes.of(new TimeBase.Even(5, RATE_HZ, x.length), Series.of(x));
    }

    /** Half the height lies a third of the way from the sample at 0.3 to that at 0.9, whichever way the pulses stand. */
    @Test
    void aPulseIsTimedOnTheStraightLineBetweenTwoSamples() {
        for (double height : new double[] {1, 250, -3}) {
            MarkPulseTimes pulses = read(drawn(height));
            assertThat(pulses.timeS()).hasSize(PULSES);
            for (int p = 0; p < PULSES; p++) {
                double at = 5 + (APART * p + 20 + 1 + 1 / 3.0) / RATE_HZ;
                assertThat(pulses.timeS().get(p)).isCloseTo(at, within(1e-9));
                assertThat(pulses.revolutions().get(p)).isEqualTo(p);
            }
            assertThat(pulses.missing()).isZero();
            assertThat(pulses.doubled()).isZero();
        }
    }

    @Test
    void turnsGoOnOverMissingPulsesAndDoublesAreLeftOut() {
        double[] x = drawn(1);
        for (int i = 0; i < APART; i++) {
            x[APART * 4 + i] = 0;
            x[APART * 5 + i] = 0;
        }
        x[APART * 8 + 20 + 15] = 1;
        MarkPulseTimes pulses = read(x);
        assertThat(pulses.revolutions()).containsExactly(0, 1, 2, 3, 6, 7, 8, 9, 10, 11);
        assertThat(pulses.missing()).isEqualTo(2);
        assertThat(pulses.doubled()).isEqualTo(1);
    }
}
