package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.at;
import static evenblade.measure.speed.HandMadeLines.together;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.machine.installation.Engine;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import org.junit.jupiter.api.Test;

/**
 * What lines of known height confirm. A line of evidence 4.2 counts in full, below that in proportion, below 0.7 not at all;
 * weights are those of the comb (blade pass and firing 1.5, their doubles 1.1, 1× of a shaft 0.9, ...). Shares of wrong tables
 * are from {@code reference/speed/confirmation.py}.
 */
class ConfirmationTest {
    private static final OrderTable GEARED = Machine.ALL.get(0).table();
    private static final OrderTable DIRECT = Machine.ALL.get(1).table();
    private static final OrderTable FAN = Machine.ALL.get(5).table();
    private static final SpeedPrior ANY = SpeedPrior.between(15, 30);
    /** A grid's step of 4e-4 of 20 Hz, to either side. */
    private static final double PLACE_HZ = 0.008;
    /** Half a grid's step beside the top of a line at 200 Hz costs 0.4 % of it, and credits come to 5 and less. */
    private static final double CREDIT = 0.015;

    /** As many blade passes, firings and 1× as it takes: credit 5.2119. */
    private static final double[] SIX = at(20, 1, 2.1, 3, 6, 6, 3, 2.43, 1.5, 4.86, 5, 9.72, 2.5);

    private static Confirmation.Judgement judged(OrderTable table, SpeedPrior prior, double meanHz, double... lines) {
        return Confirmation.of(HandMadeLines.of(meanHz, lines), false, table, Comb.of(table), prior);
    }

    private static Confirmation.Judgement geared(double... lines) {
        return judged(GEARED, ANY, 20, lines);
    }

    private static Confirmation.Judgement fan(double... lines) {
        return judged(FAN, SpeedPrior.between(19, 21), 20, lines);
    }

    @Test
    void linesOfBothShaftsConfirmASpeedAndCountByTheirWeights() {
        double credit = 0.9 * 2.1 / 4.2 + 1.5 + 1.1 * 3 / 4.2 + 0.9 * 1.5 / 4.2 + 1.5 + 1.1 * 2.5 / 4.2;
        double[] strays = {33, 3, 71.3, 5, 151, 4};
        for (SpeedPrior prior : new SpeedPrior[] {ANY, SpeedPrior.near(21, 15, 30)}) {
            Confirmation.Judgement judgement = judged(GEARED, prior, 20, together(SIX, strays));
            assertThat(judgement.confirmed()).isTrue();
            assertThat(judgement.propellerHz()).isCloseTo(20, within(PLACE_HZ));
            assertThat(judgement.credit()).isCloseTo(credit, within(CREDIT));
            assertThat(judgement.by())
                    .extracting(OrderLine::name)
                    .containsExactly("blade pass", "firing", "2× blade pass", "2× firing", "propeller 1×", "crank 1×");
            assertThat(judgement.better()).isEmpty();
        }
    }

    /** A twelfth of 300 would be too much; one more or less is the grid's. */
    @Test
    void inARoomWithManyLinesSomeWrongRatiosDoAsWell() {
        Confirmation.Judgement judgement = geared(together(at(20, 1, 2.5, 3, 3.4, 2.43, 1.5, 4.86, 3.1), new double[] {
            120.4, 3.6, 198.9, 1.7, 40.8, 3.5, 15.3, 3.4, 213.6, 2.4, 41.2, 1.8, 35.1, 2.3, 80.6, 2.6, 413.7, 3.3,
            119.3, 3.9, 30.7, 1.5, 115.5, 1.1, 16.9, 2.5, 70.9, 3.7
        }));
        assertThat(judgement.propellerHz()).isCloseTo(20.0384, within(PLACE_HZ));
        assertThat(judgement.credit()).isCloseTo(4.1001, within(CREDIT));
        assertThat(judgement.chance()).isCloseTo(12 / 292.0, within(1.1 / 292));
    }

    /** Propellers e^0.4983 times as fast and as slow as the right one: at the ends of the wrong ratios that are tried. */
    @Test
    void wrongRatiosAreTriedUpToTwoThirdsOff() {
        Confirmation.Judgement judgement = judged(
                GEARED,
                SpeedPrior.between(19.9, 20.1),
                20,
                together(
                        at(20, 1, 3, 3, 3, 6, 3, 2.43, 3.5, 4.86, 3.5, 9.72, 3.5),
                        new double[] {32.92, 4, 98.76, 4, 197.51, 4, 12.15, 4, 36.45, 4, 72.91, 4}));
        assertThat(judgement.credit()).isCloseTo(5.7975, within(CREDIT));
        assertThat(judgement.chance()).isCloseTo(8 / 292.0, within(1.1 / 292));
    }

    /** Four of 200 scrambled tables, which is more than one in a hundred. */
    @Test
    void ofOneShaftScrambledOrdersMayHardlyDoAsWell() {
        double[] own = at(20, 1, 2.6, 5, 3.2, 4, 3);
        double[][] rooms = {
            {193.7, 3.3, 71.2, 1.8, 14.5, 2.1, 49.2, 1.1, 14.2, 3.9, 114.3, 1.7, 53.9, 3.8, 266.8, 3.4},
            {77.0, 2.0, 43.0, 2.1, 363.9, 2.8, 123.3, 2.0, 125.7, 1.4, 14.3, 3.5, 12.4, 3.8, 209.0, 3.3},
            {
                132.0, 2.9, 18.7, 1.3, 114.7, 3.5, 24.1, 1.6, 142.7, 2.4, 50.4, 2.0, 15.0, 2.3, 34.0, 2.1, 77.6, 3.0,
                103.9, 3.2
            }
        };
        for (double[] room : rooms) {
            Confirmation.Judgement judgement = judged(FAN, SpeedPrior.near(21, 12, 40), 20, together(own, room));
            assertThat(judgement.propellerHz()).isCloseTo(20, within(PLACE_HZ));
            assertThat(judgement.credit()).isCloseTo((0.9 * 2.6 + 1.5 * 3.2 + 0.5 * 3) / 4.2, within(CREDIT));
            assertThat(judgement.chance()).isCloseTo(4 / 200.0, within(1.1 / 200));
            assertThat(judgement.doubts()).containsExactly(SpeedDoubt.CHANCE);
        }
    }

    /** 0.9 × 1.2 / 4.2 is 0.26, 0.9 × 1.5 / 4.2 is 0.32, and 0.3 is asked of each shaft. */
    @Test
    void bothShaftsMustBeHeard() {
        double[] propeller = at(20, 1, 3, 3, 4, 6, 4);
        assertThat(geared(together(propeller, at(48.6, 1, 1.2))).doubts()).contains(SpeedDoubt.ONE_SHAFT);
        assertThat(geared(together(propeller, at(48.6, 1, 1.5))).doubts()).doesNotContain(SpeedDoubt.ONE_SHAFT);
    }

    /** At 2.5 to one, firing of four cylinders lies on propeller 5×: it may be either's. */
    @Test
    void aCrankLineOnAWholePropellerOrderIsNoProofOfTheCrank() {
        Machine machine = new Machine("", Engine.Cycle.FOUR_STROKE, 4, 2.5, 3, 1600, 5800);
        double[] lines = at(20, 1, 3, 3, 4, 5, 4, 6, 4);
        assertThat(judged(machine.table(), ANY, 20, lines).doubts()).contains(SpeedDoubt.ONE_SHAFT);
        assertThat(judged(machine.table(), ANY, 20, together(lines, at(20, 2.5, 3)))
                        .doubts())
                .doesNotContain(SpeedDoubt.ONE_SHAFT);
    }

    /** One percent counts as the same. */
    @Test
    void aSpeedThatIsNotThePathsIsDoubted() {
        assertThat(judged(GEARED, ANY, 20.3, SIX).doubts()).containsExactly(SpeedDoubt.OTHER_SPEED);
        assertThat(judged(GEARED, ANY, 19.7, SIX).doubts()).containsExactly(SpeedDoubt.OTHER_SPEED);
        assertThat(judged(GEARED, ANY, 20.1, SIX).confirmed()).isTrue();
    }

    /** Blade pass and firing, entered 1 % and 5 % off. */
    @Test
    void twoLinesAreTooFewUnlessASpeedWasReadOffThere() {
        double[] two = at(20, 3, 4, 4.86, 4);
        assertThat(judged(GEARED, SpeedPrior.near(20.2, 15, 30), 20, two).confirmed())
                .isTrue();
        assertThat(judged(GEARED, SpeedPrior.near(21, 15, 30), 20, two).doubts())
                .containsExactly(SpeedDoubt.TWO_LINES);
    }

    @Test
    void oneLineOrNoneSaysNothing() {
        assertThat(geared(60, 4).doubts()).contains(SpeedDoubt.ONE_LINE, SpeedDoubt.CHANCE);
        assertThat(geared(60, 0.5).doubts()).contains(SpeedDoubt.NOTHING_STANDS);
        assertThat(Confirmation.of(HandMadeLines.of(20, 60, 0.5), true, GEARED, Comb.of(GEARED), ANY)
                        .doubts())
                .contains(SpeedDoubt.ONLY_MAINS);
    }

    /** 42.25 Hz lies a quarter of a hertz beside 6 × 7 Hz and beside crank 2½×, 6.075 × 7 Hz; both see it. */
    @Test
    void twoOrdersAtOnePlaceAreOneLine() {
        double[] others = at(7, 1, 3, 3, 4, 2.43, 3, 4.86, 4);
        SpeedPrior prior = SpeedPrior.between(6.8, 7.2);
        assertThat(judged(GEARED, prior, 7, together(others, new double[] {42.25, 3.5}))
                        .by())
                .hasSize(5);
        // At 10 Hz they lie 0.75 Hz apart, more than 0.8 of a resolution.
        double[] apart = at(10, 1, 3, 3, 4, 2.43, 3, 4.86, 4, 6, 3, 6.075, 2.5);
        assertThat(judged(GEARED, SpeedPrior.between(9.7, 10.3), 10, apart).by())
                .hasSize(6);
    }

    /** Blade pass and its double are what any machine with that speed shows. */
    @Test
    void multiplesOfOneOrderConfirmNothing() {
        assertThat(fan(at(20, 5, 4.2, 10, 4.2)).doubts()).contains(SpeedDoubt.ONE_SERIES);
        assertThat(fan(at(20, 4, 4.2, 8, 4.2, 6, 0.5)).doubts()).contains(SpeedDoubt.ONE_SERIES);
        assertThat(fan(at(20, 4, 4.2, 5, 4.2, 10, 4.2)).doubts()).doesNotContain(SpeedDoubt.ONE_SERIES);
        SpeedPrior near = SpeedPrior.between(19.5, 20.5);
        // Orders in halves: 1½ and 3 are multiples of 1½, 1½ and 2 of a half.
        assertThat(judged(DIRECT, near, 20, at(20, 1.5, 4, 3, 4)).doubts()).contains(SpeedDoubt.ONE_SERIES);
        assertThat(judged(DIRECT, near, 20, at(20, 1.5, 4, 2, 4)).doubts()).doesNotContain(SpeedDoubt.ONE_SERIES);
    }

    private static double slowerOrFaster(double... orders) {
        return judged(GEARED, SpeedPrior.near(40, 15, 45), 20, at(20, orders)).propellerHz();
    }

    /**
     * Of 20 and 40 Hz the faster has more, with what its entry adds: 7.96 against 6.2, which is more than 0.55 and less than
     * 0.9 of it. What only 20 Hz explains is its blade pass: 1.5 × 2.6 / 4.2 is 0.93, with 2.4 it is 0.86, and 0.9 is asked.
     */
    @Test
    void aHalfOfASpeedIsTakenWhereItAloneExplainsAStrongLine() {
        double[] rest = {4.86, 4, 6, 4.2, 9.72, 4.2, 12, 4.2, 19.44, 4.2, 2, 4.2};
        assertThat(slowerOrFaster(together(new double[] {3, 2.6}, rest))).isCloseTo(20, within(PLACE_HZ));
        assertThat(slowerOrFaster(together(new double[] {3, 2.4}, rest))).isCloseTo(40, within(2 * PLACE_HZ));
    }

    /** Ten lines that only 40 Hz explains bring it to 10.8; 20 Hz comes to 5.65, less than 0.55 of that. Without them it has more. */
    @Test
    void aHalfOfASpeedIsNotTakenWhereTheFasterExplainsMuchMore() {
        double[] rest = {3, 2.6, 4.86, 2.4, 6, 4.2, 9.72, 4.2, 12, 4.2, 19.44, 4.2, 2, 4.2};
        double[] more = {8, 4.2, 10, 4.2, 18, 4.2, 24, 4.2, 29.16, 4.2};
        assertThat(slowerOrFaster(rest)).isCloseTo(20, within(PLACE_HZ));
        assertThat(slowerOrFaster(together(rest, more))).isCloseTo(40, within(2 * PLACE_HZ));
    }

    /** Evidence is a logarithm: blade pass may lie 2 under its double, no more. */
    @Test
    void weakLinesAtHalvesOfStrongOnesAreALooseMount() {
        double[] rest = {4.86, 4, 9.72, 4.2, 12, 4.2, 19.44, 4.2, 2, 4.2};
        assertThat(slowerOrFaster(together(new double[] {3, 2.6, 6, 4.5}, rest)))
                .isCloseTo(20, within(PLACE_HZ));
        assertThat(slowerOrFaster(together(new double[] {3, 2.6, 6, 4.7}, rest)))
                .isCloseTo(40, within(2 * PLACE_HZ));
    }

    /** Without 19.44 the two come to 5.86 and 5.59: 0.95 of it. */
    @Test
    void aHalfOfASpeedThatExplainsNearlyAsMuchIsTaken() {
        double[] lines = at(20, 3, 2.4, 4.86, 4, 6, 4.2, 9.72, 4.2, 12, 4.2, 2, 4.2);
        assertThat(judged(GEARED, SpeedPrior.between(15, 45), 20, lines).propellerHz())
                .isCloseTo(20, within(PLACE_HZ));
    }

    /** Firing of 20 Hz is missing; its double is what 40 Hz calls firing. */
    @Test
    void aHalfOfASpeedWhoseFiringIsMissingIsNotTaken() {
        assertThat(slowerOrFaster(3, 4, 6, 4.2, 12, 4.2, 9.72, 1.9, 2, 4.2, 4, 4.2))
                .isCloseTo(40, within(2 * PLACE_HZ));
    }

    /** At 12 Hz crank 2½× lies 0.9 Hz beside propeller 6×, 3× of 24 Hz: another line, and 0.4 more that only 12 Hz explains. */
    @Test
    void linesALittleMoreThanAResolutionApartAreTwo() {
        double[] lines = at(12, 3, 1.9, 4.86, 3.8, 6, 3.8, 9.72, 3.8, 12, 3.8, 19.44, 3.8, 2, 3.8);
        SpeedPrior prior = SpeedPrior.near(24, 10, 27);
        assertThat(judged(GEARED, prior, 12, lines).propellerHz()).isCloseTo(24, within(PLACE_HZ));
        assertThat(judged(GEARED, prior, 12, together(lines, at(12, 6.075, 4.2)))
                        .propellerHz())
                .isCloseTo(12, within(PLACE_HZ));
    }

    /**
     * Blade pass at 60.3 Hz where half the faster speed says 60. With curvatures w·c·(k/0.667)² of the score by the square of
     * the speed's error, the slower speed lies 0.015 Hz above 20; where blade pass is at 59.7, as far below.
     */
    @Test
    void theSlowerSpeedIsWhereItsOwnLinesAre() {
        double[] rest = at(20, 6, 4.2, 4.86, 4, 8, 4.2, 10, 4.2, 2, 4.2);
        SpeedPrior prior = SpeedPrior.near(40, 15, 45);
        double above = judged(GEARED, prior, 20, together(rest, new double[] {60.3, 4.2}))
                .propellerHz();
        double below = judged(GEARED, prior, 20, together(rest, new double[] {59.7, 4.2}))
                .propellerHz();
        assertThat(above).isBetween(20.009, 20.03);
        assertThat(below).isBetween(19.97, 19.991);
    }

    /**
     * Four blades' lines for a fan of five: 4× and 8× in the place of 5× and 10×. What counts is 4× + 0.6 · 8× against 5× + 0.6 ·
     * 10×, the differences of the weights.
     */
    @Test
    void aMachineWithOtherMainLinesIsNotThisOne() {
        Confirmation.Judgement fours = fan(at(20, 1, 3, 4, 4, 8, 3.5, 5, 3.5, 10, 3));
        assertThat(fours.doubts()).containsExactly(SpeedDoubt.CHANCE);
        assertThat(fours.chance()).isEqualTo(1);
        Confirmation.Judgement fives = fan(at(20, 1, 3, 4, 4, 8, 3.5, 5, 4, 10, 4));
        assertThat(fives.confirmed()).isTrue();
        assertThat(fives.chance()).isLessThan(0.011);
        // A dial that was read says which it is.
        assertThat(judged(FAN, SpeedPrior.near(20.5, 19, 21), 20, at(20, 1, 3, 4, 4, 8, 3.5, 5, 3.5, 10, 3))
                        .confirmed())
                .isTrue();
    }

    /** Three lines that count in full over a range of speeds: at the beginning of it each is weaker than in the middle. */
    @Test
    void aMachineIsNotItsOwnRival() {
        assertThat(fan(at(20, 1, 4.6, 5, 4.6, 10, 4.6)).confirmed()).isTrue();
    }

    /** Six blades' double lies above the fan's table: 6× + 1.1 · 12× against 5× + 0.6 · 10×. */
    @Test
    void theOtherMachinesTableReachesAsFarAsItsOwnMainLines() {
        double[] own = at(20, 1, 3, 2, 2, 3, 2, 5, 3, 10, 3, 6, 3);
        assertThat(fan(own).confirmed()).isTrue();
        assertThat(fan(together(own, at(20, 12, 3))).chance()).isEqualTo(1);
    }

    /**
     * Two blades and a four-stroke on one shaft, where halves of orders are in the table: main lines at 1½ and 3 in the place of 2
     * and 4. 1.1 · 1½× + 0.6 · 3× against 2× + 0.6 · 4×.
     */
    @Test
    void whereTheTableHasHalvesOtherMainLinesMayLieAtHalves() {
        SpeedPrior near = SpeedPrior.between(19.5, 20.5);
        Confirmation.Judgement threes = judged(DIRECT, near, 20, at(20, 1, 2, 2, 3, 4, 2, 1.5, 4, 3, 3));
        assertThat(threes.chance()).isEqualTo(1);
        Confirmation.Judgement twos = judged(DIRECT, near, 20, at(20, 1, 2, 2, 3.2, 4, 2, 1.5, 2, 3, 3));
        assertThat(twos.confirmed()).isTrue();
    }

    /**
     * Seven lines of 0.5 and more each pin a speed, whatever is strong among them. Of the weak ones the fourth and eighth lead the
     * others as those of four blades do.
     */
    @Test
    void manyClearLinesPinASpeed() {
        double[] weak = at(20, 1, 2, 2, 1.4, 3, 1.4, 4, 4.1, 5, 2.5, 8, 3.4, 10, 2);
        double[] clear = at(20, 1, 3.5, 2, 2, 3, 2, 4, 4.1, 5, 3, 8, 3.4, 10, 2.4);
        assertThat(fan(weak).credit()).isCloseTo(3.07, within(CREDIT));
        assertThat(fan(weak).doubts()).containsExactly(SpeedDoubt.OTHER_BLADES, SpeedDoubt.CHANCE);
        assertThat(fan(clear).credit()).isCloseTo(3.82, within(CREDIT));
        assertThat(fan(clear).confirmed()).isTrue();
    }
}
