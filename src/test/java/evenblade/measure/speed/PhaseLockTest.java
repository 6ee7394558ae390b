package evenblade.measure.speed;

import static evenblade.measure.speed.Drawn.line;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Tone;
import evenblade.measure.speed.DwellFinder.Stretch;
import evenblade.measure.speed.PhaseLock.Locked;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Angles read from lines that are drawn without noise: what comes out is what was put in. Stretches of 3 s are read in
 * blocks of a sixth, 0.5 s, a quarter of a second apart.
 */
class PhaseLockTest {
    private static final double RATE_HZ = 512; // 16 samples to a slice of 1/32 s
    /** Turns: the image of a 20 Hz line at −20 Hz gets through a Hann window of 0.5 s by some 1e-5 of its amplitude. */
    private static final double TURNS = 1e-4;

    private static final double BLOCK_S = 0.5;
    private static final Stretch WITHIN = new Stretch(1, 4);

    private static Tone propeller(double order, double density) {
        return new Tone(0, order, Shaft.PROPELLER, density, true);
    }

    private static Locked lock(Recording run, SpeedTrack start, Stretch stretch, boolean exactRatio, Tone... tones) {
        return PhaseLock.lock(
                DemodulatedOrders.of(run, run.channels(), List.of(tones), start, stretch),
                start,
                stretch,
                hz -> hz,
                exactRatio);
    }

    private static Recording fiveSeconds(DoubleUnaryOperator value) {
        return Drawn.recording(RATE_HZ, 5, value);
    }

    private static SpeedTrack steady(double hz) {
        return KnotTrack.constant(hz, 0, 5);
    }

    /** Mean of an angle over a block under the square of a sine, as it is defined. */
    private static double blockMean(DoubleUnaryOperator turns, double middleS, double widthS) {
        double sum = 0;
        double weights = 0;
        int n = 200;
        for (int i = 0; i < n; i++) {
            double share = (i + 0.5) / n;
            double weight = Math.pow(Math.sin(Math.PI * share), 2);
            sum += weight * turns.applyAsDouble(middleS + (share - 0.5) * widthS);
            weights += weight;
        }
        return sum / weights;
    }

    /** Each line's information is (2π·order)²·(A² − 2v)/v with v = 1.5·S/w; half-overlapped blocks are 3/4 as good. */
    private static double information(double order, double amplitude, double density, double blockS) {
        double v = 1.5 * density / blockS;
        double power = amplitude * amplitude;
        return Math.pow(2 * Math.PI * order, 2) * Math.max(power - 2 * v, 0.02 * power) / v;
    }

    /** The path said 20.1 turns a second; from where the stretch begins the lines turn 20. */
    @Test
    void aPathThatIsOffIsPutRightFromWhereTheStretchBegins() {
        Recording run = fiveSeconds(t -> line(0.7, 1, 20 * t) + line(0.5, 3, 20 * t));
        Locked locked = lock(run, steady(20.1), WITHIN, true, propeller(1, 1e-4), propeller(3, 1e-4));
        assertThat(locked.time()).hasSize(11);
        for (int b = 0; b < 11; b++) {
            double t = 1.25 + 0.25 * b;
            assertThat(locked.time()[b]).isCloseTo(t, within(1e-9));
            // The angle at the beginning is that of quarter-second blocks, in which each line sees some of the other.
            assertThat(locked.revolutions()[b]).isCloseTo(20.1 + 20 * (t - 1), within(6e-4));
            assertThat(locked.revolutions()[b] - locked.revolutions()[0]).isCloseTo(5.0 * b, within(TURNS));
            assertThat(locked.track().propellerHzAt(t)).isCloseTo(20, within(TURNS));
            assertThat(locked.track().revolutionsAt(t)).isCloseTo(locked.revolutions()[b], within(TURNS));
        }
        assertThat(locked.held()).isEqualTo(WITHIN);
        assertThat(locked.sound()).isTrue();
        assertThat(locked.drifts()).isFalse();
        assertThat(locked.ratioCorrection()).isZero();
    }

    /** From strong lines to some that stand no higher than noise does in one block. */
    @Test
    void aReadingIsAsGoodAsItsLinesStandOverTheirNoise() {
        Recording run = fiveSeconds(t -> line(0.7, 1, 20 * t) + line(0.5, 3, 20 * t));
        for (double[] density : new double[][] {{1e-3, 1e-3}, {2e-2, 1e-3}, {1e-4, 6e-2}, {0.1, 0.1}}) {
            Locked locked = lock(run, steady(20.02), WITHIN, true, propeller(1, density[0]), propeller(3, density[1]));
            double all = information(1, 0.7, density[0], BLOCK_S) + information(3, 0.5, density[1], BLOCK_S);
            for (double variance : locked.variance()) {
                assertThat(variance).isCloseTo(4.0 / 3 / all, within(1e-3 * 4 / 3 / all));
            }
        }
    }

    /**
     * One line at three times an angle that gains 0.25 t² on the path: 2¼ turns, nearly seven of the line. Read with a quarter
     * second's delay it would slip.
     */
    @Test
    void aSpeedThatRisesIsFollowedOverManyTurns() {
        DoubleUnaryOperator truth = t -> 20 * t + 0.25 * Math.pow(Math.max(0, t - 1), 2);
        Recording run = fiveSeconds(t -> line(0.5, 3, truth.applyAsDouble(t)));
        Locked locked = lock(run, steady(20), WITHIN, true, propeller(3, 1e-2));
        assertThat(locked.drifts()).isTrue();
        for (int b = 0; b < locked.time().length; b++) {
            double t = locked.time()[b];
            // Twice the line's frequency nears 4 slices of 1/32 s: a hundredth of a radian of its image comes through.
            assertThat(locked.revolutions()[b] - locked.revolutions()[0])
                    .isCloseTo(truth.applyAsDouble(t) - truth.applyAsDouble(1.25), within(3e-3));
        }
    }

    /** Half of 0.2 rad of the highest line's phase is what v = 0.0046 leaves, S = 0.0015: above it blocks stay long. */
    @Test
    void strongLinesOfASpeedThatMovesAreReadInBlocksHalfAsLong() {
        DoubleUnaryOperator truth = t -> 20 * t + 0.3 * Math.sin(2 * Math.PI * t / 3);
        Recording run = fiveSeconds(t -> line(0.7, 1, truth.applyAsDouble(t)) + line(0.5, 3, truth.applyAsDouble(t)));
        for (double density : new double[] {0.0012, 0.0019}) {
            double width = density < 0.0015 ? BLOCK_S / 2 : BLOCK_S;
            Locked locked = lock(run, steady(20), WITHIN, true, propeller(1, density), propeller(3, density));
            assertThat(locked.drifts()).isTrue();
            assertThat(locked.time()).hasSize(width < BLOCK_S ? 23 : 11);
            double off = locked.revolutions()[0] - blockMean(truth, 1 + width / 2, width);
            for (int b = 0; b < locked.time().length; b++) {
                double t = 1 + width / 2 * (b + 1);
                assertThat(locked.time()[b]).isCloseTo(t, within(1e-9));
                // Lines turn by up to 0.8 rad within a block: what their bend does to the mean is of third order.
                assertThat(locked.revolutions()[b] - blockMean(truth, t, width)).isCloseTo(off, within(2e-3));
            }
        }
    }

    /** The order-5 line of the other channel runs 2 Hz away, deep in its noise. */
    @Test
    void aLineInNoiseDoesNotPullStrongOnes() {
        Recording run = Drawn.recording(RATE_HZ, 5, t -> line(0.5, 3, 20 * t), t -> line(0.5, 5, 20.4 * t));
        Locked locked =
                lock(run, steady(20.1), WITHIN, true, propeller(3, 1e-5), new Tone(1, 5, Shaft.PROPELLER, 0.15, true));
        for (int b = 0; b < 11; b++) {
            assertThat(locked.revolutions()[b]).isCloseTo(20.1 + 20 * (0.25 + 0.25 * b), within(5e-4));
        }
    }

    /** A line alone at so much of its noise over the whole of 3 s: A² against 6·S/3. */
    @Test
    void aLineThatTheWholeRunDoesNotShowIsNotHeard() {
        Recording run = fiveSeconds(t -> line(0.7, 1, 20 * t) + line(0.7, 5, 20 * t));
        double just = 0.49 / 2;
        double one = information(1, 0.7, 0.1, BLOCK_S);
        Locked shown = lock(run, steady(20), WITHIN, true, propeller(1, 0.1), propeller(5, 0.9 * just));
        double both = one + information(5, 0.7, 0.9 * just, BLOCK_S);
        assertThat(shown.variance()[5]).isCloseTo(4.0 / 3 / both, within(0.01 / both));
        Locked hidden = lock(run, steady(20), WITHIN, true, propeller(1, 0.1), propeller(5, 1.1 * just));
        assertThat(hidden.variance()[5]).isCloseTo(4.0 / 3 / one, within(0.01 / one));
    }

    /**
     * Lines 5.5 Hz apart, 2¾ of a 0.5 s block's bins: 1/(π·2.75·6.5625)² = 3.1e-4 of the stronger one's power falls on the
     * weaker, which is heard from 1/0.03 of that on, a hundredth.
     */
    @Test
    void aLineThatAStrongerOneLeaksIntoIsLeftOut() {
        double strong = information(1, 1, 1e-2, BLOCK_S);
        for (double share : new double[] {0.008, 0.0135}) {
            double amplitude = Math.sqrt(share);
            Recording run = fiveSeconds(t -> line(1, 1, 20 * t) + line(amplitude, 1.275, 20 * t));
            Locked locked = lock(
                    run,
                    steady(20),
                    WITHIN,
                    true,
                    propeller(1, 1e-2),
                    new Tone(0, 1.275, Shaft.PROPELLER, 1e-5, false));
            double weak = information(1.275, amplitude, 1e-5, BLOCK_S);
            double all = share > 0.01 ? strong + weak : strong;
            // What leaks is taken off the weaker one; a tenth of it, by amplitude, is what that leaves uncertain.
            assertThat(locked.variance()[5]).as("share %s", share).isCloseTo(4.0 / 3 / all, within(0.2 * 4 / 3 / all));
        }
    }

    private static Recording twoShafts(double propellerAmplitude, double crankAmplitude, double off) {
        return Drawn.recording(
                RATE_HZ,
                5,
                t -> line(propellerAmplitude, 2, 20 * t),
                t -> line(crankAmplitude, 2.43, 20 * (1 + off) * t),
                t -> line(crankAmplitude, 4.86, 20 * (1 + off) * t));
    }

    private static Tone[] tonesOfTwoShafts(double density) {
        return new Tone[] {
            propeller(2, density),
            new Tone(1, 2.43, Shaft.CRANK, density, true),
            new Tone(2, 4.86, Shaft.CRANK, density, true)
        };
    }

    /** Whether the propeller is heard well, or so poorly that the crank leads: the ratio is off by as much. */
    @Test
    void aWrongRatioIsPutRightWhicheverShaftIsHeardBest() {
        for (double off : new double[] {0.007, -0.006}) {
            for (double propellerAmplitude : new double[] {0.5, 0.02}) {
                Recording run = twoShafts(propellerAmplitude, 0.5, off);
                Locked locked = lock(run, steady(20.03), WITHIN, false, tonesOfTwoShafts(1e-6));
                // Two slices of 1/32 s let a line's image through by less than a hundredth: turns of some 1e-4 in 60.
                assertThat(locked.ratioCorrection()).isCloseTo(off, within(3e-6));
                double t0 = locked.time()[0];
                for (int b = 0; b < locked.time().length; b++) {
                    double t = locked.time()[b];
                    // The image of 48.3 Hz lies 0.6 Hz off three slices of 1/32 s: some 0.006 rad of it come through.
                    assertThat(locked.revolutions()[b] - locked.revolutions()[0])
                            .isCloseTo(20 * (t - t0), within(1e-3));
                }
            }
        }
    }

    @Test
    void aRatioThatIsKnownIsNotPutRight() {
        Locked locked = lock(twoShafts(0.5, 0.5, 0.007), steady(20), WITHIN, true, tonesOfTwoShafts(1e-6));
        assertThat(locked.ratioCorrection()).isZero();
        Locked right = lock(twoShafts(0.5, 0.5, 0), steady(20), WITHIN, false, tonesOfTwoShafts(1e-6));
        assertThat(right.ratioCorrection()).isZero();
    }

    private static Recording swinging(double propellerAmplitude, double crankAmplitude) {
        return Drawn.recording(
                RATE_HZ,
                5,
                t -> line(propellerAmplitude, 2, 20 * t),
                t -> line(crankAmplitude, 3, 20 * t + Math.sin(2 * Math.PI * t / 2.2) / 3));
    }

    /**
     * The crank's angle swings by a third of a turn beside the propeller's, which leads from a hundredth of the information
     * on. In blocks of a quarter second it stands A²/v − 2 = 7 over noise at order 2, the crank 350 or 540 at order 3, of which
     * the swing takes a quarter: 28 in 2270 or in 3500.
     */
    @Test
    void thePropellerLeadsFromAHundredthOfTheCranksInformationOn() {
        double v = 1.5 * 1e-3 / 0.25;
        for (double crank : new double[] {350, 540}) {
            Recording run = swinging(Math.sqrt(9 * v), Math.sqrt((crank + 2) * v));
            Locked locked =
                    lock(run, steady(20), WITHIN, false, propeller(2, 1e-3), new Tone(1, 3, Shaft.CRANK, 1e-3, true));
            double furthest = 0;
            for (int b = 0; b < locked.time().length; b++) {
                furthest = Math.max(furthest, Math.abs(locked.revolutions()[b] - 20 * locked.time()[b]));
            }
            if (crank < 400) {
                assertThat(furthest).isLessThan(1e-3);
                assertThat(locked.variance()[5])
                        .isCloseTo(4.0 / 3 / information(2, Math.sqrt(9 * v), 1e-3, BLOCK_S), within(1e-3));
            } else {
                assertThat(furthest).isGreaterThan(0.2);
            }
        }
    }

    /** A line of 20 Hz that is there in part of the time only. */
    private static Locked heardBetween(double seconds, double onS, double offS, double else_, Stretch stretch) {
        Recording run = Drawn.recording(
                RATE_HZ, seconds, t -> (t >= onS && t < offS ? 0.7 : else_) * Math.cos(40 * Math.PI * t));
        return lock(run, KnotTrack.constant(20, 0, seconds), stretch, true, propeller(1, 1e-5));
    }

    /**
     * From 1.6 s on: the block from 1.25 to 1.75 s holds 0.15 of it under its window, that from 1.5 s 0.95. Until 3.37 s:
     * the block from 3.25 s holds 0.15 of it, that from 3 s 0.88.
     */
    @Test
    void endsInWhichTheLinesHaveGoneAreNoHold() {
        Locked locked = heardBetween(5, 1.6, 3.4, 0, WITHIN);
        assertThat(locked.held().fromS()).isCloseTo(1.5, within(1e-9));
        assertThat(locked.held().toS()).isCloseTo(3.5, within(1e-9));
        assertThat(locked.time()).hasSize(7);
        assertThat(locked.time()[0]).isCloseTo(1.75, within(1e-9));
        assertThat(locked.revolutions()).hasSize(7);
        assertThat(locked.variance()).hasSize(7);
    }

    /**
     * Order 1 goes for the first 0.35 s, order 3 stays. A line counts by order² over its density: order 1 for a quarter of both at
     * 3 times order 3's precision, a tenth at the same. Hardly anything is left of it in the first block, which goes below 0.85.
     */
    @Test
    void howMuchOfTheLinesHasGoneIsCountedByTheirWeight() {
        for (double denser : new double[] {3, 1}) {
            Recording run = Drawn.recording(
                    RATE_HZ, 5, t -> t < 1.35 ? 0 : line(0.5, 1, 20 * t), t -> 0.5 * Math.sin(120 * Math.PI * t));
            Locked locked = lock(
                    run,
                    steady(20),
                    WITHIN,
                    true,
                    propeller(1, 1e-5),
                    new Tone(1, 3, Shaft.PROPELLER, denser * 1e-5, true));
            assertThat(locked.held().fromS()).isCloseTo(denser > 2 ? 1.25 : 1, within(1e-9));
        }
    }

    /** Nobody moves a throttle before the recording begins or after its end. */
    @Test
    void whereTheRecordingItselfBeginsOrEndsAHoldGoesOn() {
        Locked locked = heardBetween(3, 0.6, 2.4, 0, new Stretch(0, 3));
        assertThat(locked.held()).isEqualTo(new Stretch(0, 3));
        assertThat(locked.time()).hasSize(11);
    }

    /** Two of eleven blocks are the fifth that may go; of 16 s in blocks of one, five, 2½ s. */
    @Test
    void noMoreThanAFifthOrTwoAndAHalfSecondsOfAnEndGo() {
        Locked few = heardBetween(5, 2.1, 5, 0, WITHIN);
        assertThat(few.held().fromS()).isCloseTo(1.5, within(1e-9));
        assertThat(few.held().toS()).isEqualTo(4);
        Locked late = heardBetween(5, 0, 2.9, 0, WITHIN);
        assertThat(late.held().fromS()).isEqualTo(1);
        assertThat(late.held().toS()).isCloseTo(3.5, within(1e-9));
        Locked many = heardBetween(18, 5.3, 18, 0, new Stretch(1, 17));
        assertThat(many.held().fromS()).isCloseTo(3.5, within(1e-9));
        assertThat(many.held().toS()).isEqualTo(17);
        Locked before = heardBetween(18, 0, 12.7, 0, new Stretch(1, 17));
        assertThat(before.held().fromS()).isEqualTo(1);
        assertThat(before.held().toS()).isCloseTo(14.5, within(1e-9));
    }

    /** A line that swings to nothing and back within the hold: by chance it does so at an end as well. */
    @Test
    void linesThatSwingAnywayMayBeWeakAtAnEnd() {
        double[] depth = {0.1, 0.8};
        for (double each : depth) {
            Recording run = Drawn.recording(
                    RATE_HZ,
                    5,
                    t -> (t < 1.55 ? 0.1 : 1 + each * Math.cos(2 * Math.PI * 0.8 * t)) * Math.cos(40 * Math.PI * t));
            Locked locked = lock(run, steady(20), WITHIN, true, propeller(1, 1e-5));
            assertThat(locked.held().fromS()).as("depth %s", each).isCloseTo(each < 0.5 ? 1.25 : 1, within(1e-9));
        }
    }

    @Test
    void whereNoLineIsClearOrTheStretchIsTooShortThePathStays() {
        Recording run = fiveSeconds(t -> line(0.7, 1, 20 * t));
        SpeedTrack start = steady(20.1);
        Locked unclear = lock(run, start, WITHIN, true, new Tone(0, 1, Shaft.PROPELLER, 1e-4, false));
        assertThat(unclear.sound()).isFalse();
        assertThat(unclear.track()).isSameAs(start);
        assertThat(unclear.held()).isEqualTo(WITHIN);
        // Blocks are at least 0.4 s long; two are needed.
        assertThat(lock(run, start, new Stretch(1, 1.79), true, propeller(1, 1e-4))
                        .sound())
                .isFalse();
        assertThat(lock(run, start, new Stretch(1, 1.81), true, propeller(1, 1e-4))
                        .sound())
                .isTrue();
        assertThat(Arrays.stream(unclear.time())).isEmpty();
    }
}
