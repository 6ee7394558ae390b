package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.SpeedProfile;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Dwells in tracks of known shape. */
class DwellFinderTest {
    private static SpeedTrack track(double lengthS, DoubleUnaryOperator hertz) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return lengthS;
            }

            @Override
            public double revolutionsAt(double timeS) {
                throw new UnsupportedOperationException("dwells are found by speed");
            }

            @Override
            public double propellerHzAt(double timeS) {
                return hertz.applyAsDouble(timeS);
            }
        };
    }

    /** Dwells of 6.5 s at 27, 33 and 36 Hz with ramps of 3 s between; the middle one ends in a slow drift. */
    private static double threeDwells(double t, double drift) {
        double[] hz = {27, 33, 36};
        int dwell = (int) Math.min(2, t / 9.5);
        double into = t - 9.5 * dwell;
        double base =
                into <= 6.5 || dwell == 2 ? hz[dwell] : hz[dwell] + (hz[dwell + 1] - hz[dwell]) * (into - 6.5) / 3;
        return dwell == 1 && into > 3.5 && into <= 6.5 ? base * (1 + drift * (into - 3.5) / 3) : base;
    }

    @Test
    void aDwellThatDriftsByAThirdOfAPercentAtItsEndIsStillADwell() {
        for (double drift : new double[] {0, 0.003, -0.003, 0.006}) {
            List<DwellFinder.Stretch> found = DwellFinder.find(track(25.5, t -> threeDwells(t, drift)));
            assertThat(found).as("drift %s", drift).hasSize(3);
            assertThat(found.get(1).fromS()).isCloseTo(9.5, within(0.6));
        }
    }

    /** Wander of ± 0.3 %: every dwell of 6.5 s is one by a wide margin, however still most of it is. */
    @Test
    void noDwellOfAnInventedRunIsLostBecauseMostOfItIsSteadierThanItsEnds() {
        double ratio = PracticeInstallation.geared().reduction().ratio();
        SpeedProfile plan = SpeedProfile.startingAt(3980 / 60.0 / ratio)
                .thenDwell(6.5)
                .thenRampTo(4820 / 60.0 / ratio, 3)
                .thenDwell(6.5)
                .thenRampTo(5320 / 60.0 / ratio, 3)
                .thenDwell(6.5);
        for (long seed = 1; seed < 60; seed++) {
            SpeedProfile wandering = plan.wandering(0.003, seed);
            List<DwellFinder.Stretch> found = DwellFinder.find(track(25.5, wandering::propellerHzAt));
            assertThat(found).as("seed %d", seed).hasSize(3);
        }
    }
}
