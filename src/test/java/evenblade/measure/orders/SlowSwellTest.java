package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.Dwell;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("How the whole signal swells")
class SlowSwellTest {
    private static final double RATE = 1000;
    private static final double SECONDS = 15;

    private static Optional<SlowSwell.Swell> of(double first, double second, double noise) {
        Random dice = new Random(3);
        double[] x = new double[(int) (RATE * SECONDS)];
        for (int i = 0; i < x.length; i++) {
            double t = i / RATE;
            x[i] = 9.8
                    + first * Math.cos(2 * Math.PI * 30 * t)
                    + second * Math.sin(2 * Math.PI * 33.4 * t)
                    + noise * dice.nextGaussian();
        }
        return SlowSwell.of(
                        new TimeBase.Even(0, RATE, x.length), Series.of(x), new Dwell(0, SECONDS, 30, 0.001, 30, 30))
                .orElseThrow()
                .swell();
    }

    @Test
    @DisplayName("Two sines 3.4 Hz apart swell at 3.4 Hz, by 2·0.4/1.4 of their most")
    void twoSinesSwellAtTheirDifference() {
        SlowSwell.Swell swell = of(1, 0.4, 0.05).orElseThrow();
        assertThat(swell.hz()).isCloseTo(3.4, within(0.04));
        assertThat(swell.depth()).isCloseTo(2 * 0.4 / 1.4, within(0.03));
    }

    @Test
    @DisplayName("One sine and noise don't swell at any one rate")
    void aSteadySignalDoesNotSwell() {
        assertThat(of(1, 0, 0.3)).isEmpty();
        assertThat(of(0, 0, 1)).isEmpty();
    }
}
