package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.SpeedProfile;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Dwells in tracks of known shape. */
class DwellFinderTest {
    private static SpeedTrack track(double lengthS, DoubleUnaryOperator hertz) {
        return track(0, lengthS, hertz);
    }

    private static SpeedTrack track(double from, double to, DoubleUnaryOperator hertz) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return from;
            }

            @Override
            public double toS() {
                return to;
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

    /** A speed that runs straight between times and speeds, given in turn. */
    private static DoubleUnaryOperator straight(double... knots) {
        return t -> {
            int k = 0;
            while (k + 4 < knots.length && t > knots[k + 2]) {
                k += 2;
            }
            return knots[k + 1] + (knots[k + 3] - knots[k + 1]) * (t - knots[k]) / (knots[k + 2] - knots[k]);
        };
    }

    private static DoubleUnaryOperator step(double atS, double before, double after) {
        return t -> t < atS ? before : after;
    }

    private static DoubleUnaryOperator wandering(double share, double periodS, DoubleUnaryOperator about) {
        return t -> about.applyAsDouble(t) * (1 + share * Math.sin(2 * Math.PI * t / periodS));
    }

    /** Nothing but rounding: the places of a dwell's ends are whole steps. */
    private static void dwells(double from, double to, DoubleUnaryOperator hertz, double... ends) {
        List<DwellFinder.Stretch> found = DwellFinder.find(track(from, to, hertz));
        double[] all = found.stream()
                .flatMapToDouble(each -> DoubleStream.of(each.fromS(), each.toS()))
                .toArray();
        assertThat(all).containsExactly(ends, within(1e-8));
    }

    /** A tenth of a second's readings meant over 1.1 s: 0.5 s to either side of a step it is seen, by hand. */
    @Test
    void aStepEndsADwellHalfASecondBeforeAndBeginsOneHalfASecondAfter() {
        dwells(100, 130, step(115, 30, 33), 100, 114.5, 115.5, 130);
    }

    /** What follows is made by {@code reference/speed/dwells.py} from the rules of {@link DwellFinder}. */
    @Test
    void aDwellGoesOnIntoARampAsFarAsItsLastSecondsSpeed() {
        dwells(3, 33, straight(3, 29, 10, 29.7, 14, 30.3, 22, 33, 23.5, 33.1, 33, 33.2), 3, 14.4, 21, 33);
        dwells(3, 33, straight(3, 33.2, 12.5, 33.1, 14, 33, 22, 30.3, 26, 29.7, 33, 29), 3, 15, 21.5, 33);
    }

    @Test
    void aRecordingShorterThanADwellIsOneLessItsEnds() {
        dwells(2, 6, step(5.4, 30, 32), 2, 5);
        dwells(2, 6, step(5.7, 30, 32), 2, 5.3);
        dwells(1, 1.5, t -> 30, 1, 1.5);
    }

    @Test
    void aSlowRampIsOnlyADwellWhereItIsNarrow() {
        dwells(0, 40, straight(0, 30, 4, 30.1, 36, 36, 40, 36.1), 0, 7.2, 32.1, 40);
        dwells(0, 40, straight(0, 36.1, 4, 36, 36, 30.1, 40, 30), 0, 7.9, 32.8, 40);
        dwells(0, 60, straight(0, 30, 60, 32.6), 0, 60);
        dwells(0, 60, straight(0, 30, 60, 32.8), 0, 9.3, 9.3, 24.4, 26.7, 42.2, 44.1, 60);
    }

    @Test
    void wanderEndsNoDwellAndAMoveWithinWanderDoes() {
        dwells(0, 30, wandering(0.017, 6.5, t -> 30), 0, 30);
        dwells(0, 30, wandering(0.006, 1.9, step(14, 30, 30.9)), 0, 13.6, 14.3, 30);
        dwells(0, 30, wandering(0.02, 1.9, step(14, 30, 30.9)), 0, 12.5, 14.8, 30);
        dwells(0, 30, wandering(0.016, 5.3, step(14, 30, 31.2)), 0, 14.1, 16.1, 30);
        dwells(0, 30, wandering(0.03, 5.3, step(14, 30, 33)), 0, 12.7, 16.5, 30);
    }

    @Test
    void aHoldBetweenTwoMovesIsADwellFromFiveSecondsOn() {
        dwells(0, 30, straight(0, 30, 12, 30, 13, 32, 15.5, 32, 16.5, 34, 30, 34), 0, 12, 16.5, 30);
        dwells(0, 30, straight(0, 30, 9, 30, 10, 32, 17.5, 32, 18.5, 34, 30, 34), 0, 9, 10, 17.5, 18.5, 30);
    }

    /** Coarser steps: 2700 s in 20 000. */
    @Test
    void aLongRecordingIsReadAsFinelyAsMemoryAllows() {
        DoubleUnaryOperator hertz = t -> t >= 900 && t < 1800 ? 32 : 30;
        dwells(0, 2700, hertz, 0, 899.64, 900.45, 1799.55, 1800.36, 2700);
    }
}
