package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.at;
import static evenblade.measure.speed.HandMadeLines.together;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.machine.installation.OrderTable;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Entered are three blades and 2.43 to one; the lines are another machine's, or this one's. */
class EntryRivalsTest {
    private static final OrderTable GEARED = Machine.ALL.get(0).table();
    private static final SpeedPrior ANY = SpeedPrior.between(15, 30);
    private static final double[] CRANK = at(48.6, 0.5, 3, 1, 4.2, 2, 4.2, 4, 4.2);

    private static Optional<BetterEntry> better(double... lines) {
        return Confirmation.of(HandMadeLines.of(20, lines), false, GEARED, Comb.of(GEARED), ANY)
                .better();
    }

    @Test
    void whatWasEnteredHasNoRivalWhereItsOwnLinesStand() {
        assertThat(better(together(CRANK, at(20, 1, 4.2, 2, 3, 3, 4.2, 6, 4.2, 9, 4.2))))
                .isEmpty();
    }

    @Test
    void anotherBladeCountIsTold() {
        for (int blades : new int[] {2, 4, 5}) {
            double[] propeller = at(20, 1, 4.2, 2, 3, blades, 4.2, 2 * blades, 4.2, 3 * blades, 4.2);
            BetterEntry told = better(together(CRANK, propeller)).orElseThrow();
            assertThat(told.blades()).hasValue(blades);
            assertThat(told.ratio()).isEmpty();
            assertThat(told.sameSpeed()).isTrue();
        }
    }

    /** Ratios are tried in steps of 0.3 %. */
    @Test
    void anotherRatioIsToldWithinHalfAStep() {
        for (double ratio : new double[] {1.86, 2.2, 2.9}) {
            double[] crank = at(20 * ratio, 0.5, 3, 1, 4.2, 1.5, 3, 2, 4.2, 4, 4.2);
            double[] propeller = at(20, 1, 4.2, 2, 3, 3, 4.2, 6, 4.2, 9, 4.2);
            BetterEntry told = better(together(crank, propeller)).orElseThrow();
            assertThat(told.blades()).isEmpty();
            assertThat(told.ratio().orElseThrow()).isCloseTo(ratio, within(0.002 * ratio));
        }
    }

    /** A propeller 2.43 times as fast as the crank, entered the other way round. */
    @Test
    void aRatioUpsideDownIsTold() {
        BetterEntry told =
                better(together(CRANK, at(48.6 * 2.43, 1, 4.2, 2, 4.2, 3, 4.2))).orElseThrow();
        assertThat(told.ratio().orElseThrow()).isCloseTo(1 / 2.43, within(1e-9));
    }

    /** Once and three times a turn at six spacings, 4 % apart, and none at 20 Hz: none of them is the propeller's. */
    @Test
    void noRatioIsToldWhereManyDoAsWell() {
        double[] one = together(CRANK, at(20 * Math.exp(0.08), 1, 8, 3, 8));
        assertThat(better(one).orElseThrow().ratio().orElseThrow()).isCloseTo(2.43 * Math.exp(-0.08), within(0.02));
        double[] many = CRANK;
        for (int k : new int[] {-3, -2, -1, 1, 2, 3}) {
            many = together(many, at(20 * Math.exp(0.04 * k), 1, 8, 3, 8));
        }
        assertThat(better(many).filter(entry -> entry.ratio().isPresent())).isEmpty();
    }

    /** Six blades at 20 Hz are three at 40, with half the ratio; the count is told, of which there are few. */
    @Test
    void aBladeCountGoesBeforeARatioThatDoesAsWell() {
        BetterEntry told = better(together(CRANK, at(20, 6, 4.2, 12, 4.2, 18, 4.2, 24, 4.2)))
                .orElseThrow();
        assertThat(told.blades()).hasValue(6);
    }

    /** At 22 Hz stand two weak lines more than at 20, half a line each. */
    @Test
    void aRatioThatExplainsALittleMoreIsNotTold() {
        double[] own = at(20, 1, 4.2, 3, 4.2, 6, 4.2, 9, 4.2);
        double[] other = at(22, 1, 4.2, 2, 4.2, 3, 4.2, 4, 4.2, 6, 4.2, 9, 4.2);
        assertThat(better(together(CRANK, own, other))).isEmpty();
    }

    /** Two series of three lines at 22 and 27 Hz, and none at 20. */
    @Test
    void ofTwoRatiosThatDoAsWellOneIsTold() {
        double[] two = together(at(22, 1, 6, 3, 6, 9, 6), at(27, 1, 6, 3, 6, 9, 6));
        double ratio = better(together(CRANK, two)).orElseThrow().ratio().orElseThrow();
        assertThat(Math.min(Math.abs(ratio - 48.6 / 22), Math.abs(ratio - 1.8))).isLessThan(0.01);
    }

    /** Blade pass of four is a little higher than crank and propeller 1× say, as short spectra read it: still one speed. */
    @Test
    void aSpeedThatDiffersByAGridsPlaceIsTheSame() {
        double[] propeller = together(at(20, 1, 4.2, 2, 3), at(20.03, 4, 4.2, 8, 4.2, 12, 4.2));
        BetterEntry told =
                better(together(at(48.6, 1, 3.5, 2, 3.5, 4, 3.5), propeller)).orElseThrow();
        assertThat(told.blades()).hasValue(4);
        assertThat(told.sameSpeed()).isTrue();
    }

    /** Three blades fit best at 26.67 Hz with crank lines from elsewhere, four at 20. */
    @Test
    void aBladeCountThatFitsAtAnotherSpeedSaysSo() {
        double[] crank = together(at(48.6, 1, 4.2, 2, 4.2), at(64.8, 1, 4.2, 2, 4.2));
        BetterEntry told = better(together(crank, at(20, 1, 4.2, 2, 4.2, 4, 4.2, 8, 4.2, 12, 4.2)))
                .orElseThrow();
        assertThat(told.blades()).hasValue(4);
        assertThat(told.sameSpeed()).isFalse();
    }
}
