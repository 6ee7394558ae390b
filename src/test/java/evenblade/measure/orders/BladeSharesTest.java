package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Pulses of known strength and angle, with even noise. */
class BladeSharesTest {
    private static final double RATE = 4000;
    private static final double HZ = 30;
    private static final double SECONDS = 12;

    private static final SpeedTrack STEADY = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return SECONDS;
        }

        @Override
        public double revolutionsAt(double t) {
            return HZ * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return HZ;
        }
    };

    /** One Gaussian slope of 1/50 turn for each blade, peak 1, with noise. */
    private static Optional<BladeShares> of(double[] strength, double[] lateDeg, double noise, double onceATurn) {
        int blades = strength.length;
        Random dice = new Random(7);
        double[] x = new double[(int) (RATE * SECONDS)];
        for (int i = 0; i < x.length; i++) {
            double turn = i / RATE * HZ;
            for (int b = 0; b < blades; b++) {
                double u = turn - (double) b / blades - lateDeg[b] / 360;
                u = (u - Math.rint(u)) / 0.02;
                x[i] += strength[b] * u * Math.exp(0.5 - u * u / 2);
            }
            x[i] += onceATurn * Math.cos(2 * Math.PI * turn) + noise * dice.nextGaussian();
        }
        return BladeShares.of(
                new TimeBase.Even(0, RATE, x.length),
                Series.of(x),
                STEADY,
                new Dwell(0, SECONDS, HZ, 0.001, HZ, HZ),
                blades);
    }

    @Test
    @DisplayName("The blade that pushes 6 % more is named, with its strength; a once-a-turn shake moves nothing")
    void theStrongBladeIsNamed() {
        for (double once : new double[] {0, 2}) {
            BladeShares found =
                    of(new double[] {1, 1.06, 1}, new double[3], 0.05, once).orElseThrow();
            assertThat(found.standsOut(true)).contains(1);
            // From the mean of all: +6 % less a third of it.
            BladeShares.Deviation strength = found.shares().get(1).strength();
            assertThat(strength.value())
                    .isBetween(0.04 - 4 * strength.standardError(), 0.04 + 4 * strength.standardError());
            assertThat(strength.standardError()).isLessThan(0.01);
            assertThat(found.shares().get(1).atTurns()).isBetween(0.30, 0.36);
        }
    }

    @Test
    @DisplayName("A blade that comes 1° late is named by its angle")
    void theLateBladeIsNamed() {
        BladeShares found = of(new double[] {1, 1, 1, 1}, new double[] {0, 0, 0, 1}, 0.05, 0)
                .orElseThrow();
        assertThat(found.standsOut(false)).contains(3);
        // From the mean of all: three quarters of a degree; T is smeared by the late blade, hence a tenth of room.
        assertThat(found.shares().get(3).late().value()).isBetween(0.65, 0.85);
    }

    @Test
    @DisplayName("Blades alike: none is named")
    void blandBladesHaveNoName() {
        BladeShares found = of(new double[] {1, 1, 1}, new double[3], 0.05, 1).orElseThrow();
        assertThat(found.standsOut(true)).isEmpty();
        assertThat(found.standsOut(false)).isEmpty();
    }

    @Test
    @DisplayName("Noise alone has no blades")
    void noiseHasNoBlades() {
        assertThat(of(new double[3], new double[3], 0.05, 1)).isEmpty();
    }
}
