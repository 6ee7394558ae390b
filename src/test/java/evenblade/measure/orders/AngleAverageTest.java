package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.SpeedTrack;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("One mean turn of the propeller")
class AngleAverageTest {
    private static final double RATE_HZ = 4000;
    private static final double HZ = 30;
    private static final double WANDER = 0.01;
    private static final double W = 2 * Math.PI / 5;
    private static final int POINTS = 90;

    /** 30 Hz with a wander of ± 1 % every five seconds; revolutions are the integral of the speed. */
    private static final SpeedTrack WANDERING = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return 20;
        }

        @Override
        public double revolutionsAt(double t) {
            return HZ * (t + WANDER * (1 - Math.cos(W * t)) / W);
        }

        @Override
        public double propellerHzAt(double t) {
            return HZ * (1 + WANDER * Math.sin(W * t));
        }
    };

    private static Optional<AngleAverage> average(double noise, double toS) {
        int size = (int) (20 * RATE_HZ);
        double[] values = new double[size];
        Random random = new Random(11);
        for (int n = 0; n < size; n++) {
            double turn = 2 * Math.PI * WANDERING.revolutionsAt(n / RATE_HZ);
            // Once and three times per turn, a crank line at 51/21 times, and an offset that has no place here.
            values[n] = 5
                    + 2 * Math.cos(turn)
                    + 0.5 * Math.sin(3 * turn)
                    + Math.cos(51 / 21.0 * turn)
                    + noise * random.nextGaussian();
        }
        return AngleAverage.of(new TimeBase.Even(0, RATE_HZ, size), Series.of(values), WANDERING, 0, toS, POINTS);
    }

    @Test
    @DisplayName("keeps what repeats every turn, though the speed wanders, and fades the crank")
    void keepsWhatRepeats() {
        AngleAverage turn = average(0, 20).orElseThrow();
        // 20 s at 30 Hz are 600 turns. The crank line keeps at most 1 / (600 · sin(π · 51/21)), 0.2 % of its size.
        assertThat(turn.turns()).isBetween(598, 600);
        for (int k = 0; k < POINTS; k++) {
            double angle = 2 * Math.PI * k / POINTS;
            assertThat(turn.mean().at(k)).isCloseTo(2 * Math.cos(angle) + 0.5 * Math.sin(3 * angle), within(0.01));
        }
    }

    @Test
    @DisplayName("has a band that follows from the scatter between turns")
    void bandFollowsTheScatter() {
        // The crank line of size 1 scatters by √½ between turns, noise by its own σ: √(½ + σ²) / √turns.
        double noise = 0.8;
        AngleAverage turn = average(noise, 20).orElseThrow();
        double expected = Math.sqrt((0.5 + noise * noise) / turn.turns());
        double mean = 0;
        for (int k = 0; k < POINTS; k++) {
            mean += turn.standardError().at(k) / POINTS;
        }
        // Reading between samples takes up to a third off the power of white noise.
        assertThat(mean).isBetween(0.8 * expected, 1.05 * expected);
    }

    @Test
    @DisplayName("needs five whole turns at least")
    void needsTurns() {
        assertThat(average(0, 4.5 / HZ)).isEmpty();
    }
}
