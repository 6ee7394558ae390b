package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Two shafts whose ratio swings by 0.3 % in 25 s about one that is a hundredth larger than entered. */
class BeltTrackTest {
    private static final double SECONDS = 100;
    private static final double PROPELLER_HZ = 20;
    private static final double LARGER = 0.01;
    private static final double SWING = 0.003;
    private static final double PERIOD_S = 25;

    private final SpeedTrack propeller = KnotTrack.constant(PROPELLER_HZ, 0, SECONDS);
    private final SpeedTrack crank = swinging();
    private final BeltTrack belt = BeltTrack.of(propeller, crank, LARGER);

    private static SpeedTrack swinging() {
        double[] time = IntStream.rangeClosed(0, 1000)
                .mapToDouble(i -> i * SECONDS / 1000)
                .toArray();
        double[] hz = IntStream.rangeClosed(0, 1000)
                .mapToDouble(
                        i -> PROPELLER_HZ * (1 + LARGER) * (1 + SWING * Math.sin(2 * Math.PI * time[i] / PERIOD_S)))
                .toArray();
        return KnotTrack.ofSpeeds(time, hz, 0, SECONDS);
    }

    private static Dwell dwell(double hz, double error) {
        return new Dwell(0, SECONDS, hz, error, hz, hz);
    }

    /** A sine's standard deviation is its swing over √2. */
    @Test
    void theWanderIsTheStandardDeviationOfTheRatio() {
        assertThat(belt.wander(dwell(PROPELLER_HZ, 0))).isCloseTo(SWING / Math.sqrt(2), within(2e-6));
        assertThat(BeltTrack.of(propeller, propeller, 0).wander(dwell(PROPELLER_HZ, 0)))
                .isCloseTo(0, within(1e-9));
    }

    @Test
    void theMeanRatioIsCorrectedWhereItIsCertain() {
        assertThat(BeltTrack.ratioCorrection(dwell(20, 0.01), dwell(20.2, 0.01)))
                .isCloseTo(LARGER, within(1e-12));
        // 0.2 Hz apart, four errors of √(0.04² + 0.03²) = 0.05 Hz: just not certain.
        assertThat(BeltTrack.ratioCorrection(dwell(20, 0.04), dwell(20.1999, 0.03)))
                .isZero();
        assertThat(BeltTrack.ratioCorrection(dwell(20, 0.04), dwell(20.2001, 0.03)))
                .isCloseTo(0.010005, within(1e-9));
    }

    @Test
    void thePropellersAngleIsItsOwnAndTheCranksIsOverTheMeanRatio() {
        double s = 30;
        assertThat(belt.revolutionsAt(s)).isEqualTo(propeller.revolutionsAt(s));
        assertThat(belt.propellerHzAt(s)).isEqualTo(PROPELLER_HZ);
        // ∫ 1 + 0.003·sin(2πt/25) dt from 0 to 30 s is 30 + 0.003·25/2π·(1 − cos(2π·30/25)) s.
        double swung = SWING * PERIOD_S / (2 * Math.PI) * (1 - Math.cos(2 * Math.PI * s / PERIOD_S));
        assertThat(belt.ofCrank().revolutionsAt(s)).isCloseTo(PROPELLER_HZ * (s + swung), within(1e-4));
        assertThat(propeller.ofCrank()).isSameAs(propeller);
    }

    /** Followed at a ratio 2 % larger the crank runs ahead by that much, and the variance of its angle by its square. */
    @Test
    void whereBothWereFollowedTogetherTheCrankKeepsTheRatioFoundThere() {
        PhaseLock.Locked together = new PhaseLock.Locked(
                new DwellFinder.Stretch(0, 2),
                new double[] {0, 1, 2},
                new double[] {0, 20, 40},
                new double[] {1, 4, 9},
                propeller,
                0.02,
                true,
                false,
                0.9);
        PhaseLock.Locked crank = together.ofCrank();
        assertThat(crank.revolutions()).containsExactly(new double[] {0, 20.4, 40.8}, within(1e-12));
        assertThat(crank.variance()).containsExactly(new double[] {1.0404, 4.1616, 9.3636}, within(1e-12));
        assertThat(crank.ratioCorrection()).isZero();
        assertThat(crank.followed()).isEqualTo(0.9);
        assertThat(crank.time()).isEqualTo(together.time());
    }
}
