package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * What other ratio lines point to and by how much, by hand. Engine 2.43 to one as entered, propeller at 30 Hz, so the crank at
 * 72.9 Hz; four cylinders, four-stroke, three blades. Every measured line has a standard error of 0.1, so a line of amplitude
 * A counts ln(1 + 50·A²).
 */
@DisplayName("Which ratio the lines point to, and how clearly")
class RatioCheckFiguresTest {
    private static final double RATIO = 2.43;
    private static final double HZ = 30;
    private static final OrderTable TABLE = new Installation(
                    Optional.empty(),
                    new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
                    new Reduction(Reduction.Kind.UNSTATED, RATIO, Optional.empty()),
                    new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                    List.of())
            .orders();
    private static final double EXACT = 1e-9; // of rounding

    private static double counts(double amplitude) {
        return Math.log(1 + 50 * amplitude * amplitude);
    }

    /** Lines that stand out of one dwell of 40 s: by name where the entered ratio has them, by frequency what is left over. */
    private static DwellOrders dwell(Map<String, Double> found, double[]... leftOver) {
        return dwell(new Dwell(0, 40, HZ, 1e-4, HZ, HZ), true, found, leftOver);
    }

    private static DwellOrders dwell(Dwell dwell, boolean follows, Map<String, Double> found, double[]... leftOver) {
        List<OrderReading> readings = new ArrayList<>();
        for (OrderLine line : TABLE.lines()) {
            double amplitude = found.getOrDefault(line.name(), 0.0);
            readings.add(new OrderReading(
                    line,
                    line.propellerOrder() * HZ,
                    new Level.Measured(
                            amplitude, 0.1, 0, 0.2, OptionalDouble.empty(), amplitude > 0, Level.Estimator.COHERENT),
                    List.of()));
        }
        List<UnexplainedLine> others = Arrays.stream(leftOver)
                .map(at -> new UnexplainedLine(at[0], at[1], at[0] / HZ, at[0] / HZ / RATIO, follows, false))
                .toList();
        return new DwellOrders(dwell, readings, others, Optional.empty());
    }

    private static Optional<RatioDoubt> doubt(DwellOrders... dwells) {
        return doubt(0, dwells);
    }

    private static Optional<RatioDoubt> doubt(double ratioCorrection, DwellOrders... dwells) {
        SpeedResult speed = new SpeedResult(
                SpeedResult.Origin.SIGNAL,
                true,
                Optional.empty(),
                null,
                Optional.of(dwells[0].dwell()),
                Arrays.stream(dwells).map(DwellOrders::dwell).toList(),
                ratioCorrection,
                List.of());
        return RatioCheck.of(
                List.of(new ChannelOrders("x", SignalUnit.METRE_PER_SECOND_SQUARED, List.of(dwells))), TABLE, speed);
    }

    private static final Map<String, Double> PROPELLER = Map.of("propeller 1×", 1.0, "blade pass", 2.0);

    /** Crank 1× and firing, usual both, at 61.02 and 122 Hz: 1.1 and 1.2 times what they count, and the mean of both ratios. */
    @Test
    @DisplayName("crank lines off their place point to the ratio that puts them there")
    void propellerKept() {
        RatioDoubt doubt = doubt(dwell(PROPELLER, new double[] {61.02, 0.8}, new double[] {122, 0.6}))
                .orElseThrow();
        assertThat(doubt.kept()).isEqualTo(Shaft.PROPELLER);
        assertThat(doubt.lines()).containsExactly("crank 1×", "firing");
        assertThat(doubt.enteredLines()).isZero();
        assertThat(doubt.margin()).isCloseTo(1.1 * counts(0.8) + 1.2 * counts(0.6), within(EXACT));
        assertThat(doubt.pointsTo())
                .isCloseTo((counts(0.8) * 61.02 + counts(0.6) * 61) / HZ / (counts(0.8) + counts(0.6)), within(EXACT));
    }

    /** Propeller 1× and blade pass at 34.72 and 104.1 Hz, the crank where the entered ratio has it. */
    @Test
    @DisplayName("propeller lines off their place too, from the crank's speed")
    void crankKept() {
        RatioDoubt doubt = doubt(dwell(
                        Map.of("crank 1×", 1.0, "firing", 1.0), new double[] {34.72, 0.5}, new double[] {104.1, 0.9}))
                .orElseThrow();
        assertThat(doubt.kept()).isEqualTo(Shaft.CRANK);
        assertThat(doubt.lines()).containsExactly("propeller 1×", "blade pass");
        assertThat(doubt.margin()).isCloseTo(1.1 * counts(0.5) + 1.2 * counts(0.9), within(EXACT));
        assertThat(doubt.pointsTo())
                .isCloseTo(
                        (counts(0.5) * 72.9 / 34.72 + counts(0.9) * 72.9 * 3 / 104.1) / (counts(0.5) + counts(0.9)),
                        within(EXACT));
    }

    /** Firing, which most machines show, is missing beside crank 1× and 1½×: half the mean of the two is taken off. */
    @Test
    @DisplayName("a usual line that is missing costs half of what one counts")
    void missing() {
        RatioDoubt doubt = doubt(dwell(PROPELLER, new double[] {61, 0.8}, new double[] {91.5, 0.6}))
                .orElseThrow();
        double sum = 1.1 * counts(0.8) + 0.75 * counts(0.6);
        assertThat(doubt.pointsTo()).isCloseTo(61 / HZ, within(EXACT));
        assertThat(doubt.margin()).isCloseTo(sum - 0.5 * sum / 2, within(EXACT));
    }

    /** Crank 3× stands where the entered ratio has it and counts against, twice; three lines stand for the other. */
    @Test
    @DisplayName("a line that only the entered ratio explains counts against, twice")
    void against() {
        Map<String, Double> found = Map.of("propeller 1×", 1.0, "blade pass", 2.0, "crank 3×", 0.5);
        double[][] three = {{61, 0.8}, {91.5, 0.7}, {122, 0.6}};
        RatioDoubt doubt = doubt(dwell(found, three)).orElseThrow();
        assertThat(doubt.enteredLines()).isEqualTo(1);
        double stands = 1.1 * counts(0.8) + 0.75 * counts(0.7) + 1.2 * counts(0.6);
        assertThat(doubt.margin()).isCloseTo(stands - 2 * counts(0.5), within(EXACT));
        // Two lines against one are not enough.
        assertThat(doubt(dwell(found, three[0], three[2]))).isEmpty();
        // In two dwells all counts twice, and so do lines for and against.
        RatioDoubt twice = doubt(dwell(found, three), dwell(found, three)).orElseThrow();
        assertThat(twice.margin()).isCloseTo(2 * doubt.margin(), within(EXACT));
        assertThat(twice.pointsTo()).isCloseTo(61 / HZ, within(EXACT));
        // A line below 15 % of the loudest left over may be what leaks of it.
        Map<String, Double> faint = Map.of("propeller 1×", 1.0, "blade pass", 2.0, "crank 3×", 0.11);
        assertThat(doubt(dwell(faint, three)).orElseThrow().enteredLines()).isZero();
        Map<String, Double> seen = Map.of("propeller 1×", 1.0, "blade pass", 2.0, "crank 3×", 0.13);
        assertThat(doubt(dwell(seen, three)).orElseThrow().enteredLines()).isEqualTo(1);
    }

    /** In 40 s a line is at its place within 0.4/8 + 0.05 = 0.1 Hz, whichever of the two lines the place comes from. */
    @Test
    @DisplayName("lines fit together only where their places agree")
    void together() {
        assertThat(doubt(dwell(PROPELLER, new double[] {61, 0.8}, new double[] {122.19, 0.6})))
                .isPresent();
        assertThat(doubt(dwell(PROPELLER, new double[] {61, 0.8}, new double[] {122.21, 0.6})))
                .isEmpty();
    }

    /** Three lines, of which 61 and 122 Hz fit: they are 0.6 of all that is left over where the third counts 1/0.6 − 1 of both. */
    @Test
    @DisplayName("what fits has to be most of what is left over")
    void most() {
        // A third line that counts for more than either, but for less than the strongest of the two.
        double[] first = {61, 2.0};
        double[] second = {122, 0.45};
        double both = counts(2) + counts(0.45);
        double third = Math.sqrt((Math.exp(both / 0.6 - both - 0.05) - 1) / 50);
        double more = Math.sqrt((Math.exp(both / 0.6 - both + 0.05) - 1) / 50);
        assertThat(counts(more)).isLessThan(counts(2));
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {203.7, third})))
                .isPresent();
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {203.7, more})))
                .isEmpty();
    }

    /**
     * Whole turns of the propeller and, above the table, half turns of the crank explain a line without another ratio, within
     * 0.1 Hz: 7·30 = 210 Hz, 4½·72.9 = 328.05 Hz. Left over, so strong a line would outweigh the two that fit.
     */
    @Test
    @DisplayName("orders above the table are left alone")
    void leftAlone() {
        double[] first = {61, 0.8};
        double[] second = {122, 0.6};
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {210.09, 2})))
                .isPresent();
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {210.12, 2})))
                .isEmpty();
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {328.14, 2})))
                .isPresent();
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {328.17, 2})))
                .isEmpty();
        // Crank 4× is the table's last: half turns up to there are left over.
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {291.6, 2})))
                .isEmpty();
    }

    /** Crank 1× as entered lies at 72.9 Hz; a line there within 0.1 Hz and 0.2 % is the crank's though 1 % was corrected. */
    @Test
    @DisplayName("a line where the entered ratio had it counts for that ratio")
    void asEntered() {
        double[][] three = {{61, 0.8}, {91.5, 0.7}, {122, 0.6}};
        assertThat(doubt(0.01, dwell(PROPELLER, three[0], three[1], three[2], new double[] {73.13, 0.5}))
                        .orElseThrow()
                        .enteredLines())
                .isEqualTo(1);
        assertThat(doubt(0.01, dwell(PROPELLER, three[0], three[1], three[2], new double[] {73.16, 0.5}))
                        .orElseThrow()
                        .enteredLines())
                .isZero();
    }

    /** 1 Hz from a line of 1, blocks of a second let through 1/(1 + π) = 0.241 of it: crank 3× of 0.23 may be that, of 0.25 not. */
    @Test
    @DisplayName("what leaks of a line left over isn't counted for the entered ratio")
    void leaked() {
        double[][] three = {{62.77, 0.8}, {125.54, 0.6}, {219.7, 1.0}};
        Map<String, Double> little = Map.of("propeller 1×", 1.0, "blade pass", 2.0, "crank 3×", 0.23);
        Map<String, Double> more = Map.of("propeller 1×", 1.0, "blade pass", 2.0, "crank 3×", 0.25);
        assertThat(doubt(dwell(little, three)).orElseThrow().enteredLines()).isZero();
        assertThat(doubt(dwell(more, three)).orElseThrow().enteredLines()).isEqualTo(1);
    }

    /** Corrected by 1 %, the crank turns at 30·2.43·1.01 = 73.629 Hz. */
    @Test
    @DisplayName("a ratio that was corrected is kept as corrected")
    void corrected() {
        RatioDoubt doubt = doubt(
                        0.01, dwell(Map.of("crank 1×", 1.0, "firing", 1.0), new double[] {34.72, 0.5}, new double[] {
                            104.1, 0.9
                        }))
                .orElseThrow();
        assertThat(doubt.pointsTo())
                .isCloseTo(
                        (counts(0.5) * 73.629 / 34.72 + counts(0.9) * 73.629 * 3 / 104.1) / (counts(0.5) + counts(0.9)),
                        within(EXACT));
    }

    private static boolean standing(Dwell dwell, double... hz) {
        double[][] lines =
                Arrays.stream(hz).mapToObj(f -> new double[] {f, 0.8}).toArray(double[][]::new);
        return doubt(dwell(dwell, false, PROPELLER, lines)).isPresent();
    }

    /** Multiples of 50 Hz within a thousandth and 0.1 Hz are the mains', 100 Hz within 0.2 and 200 Hz within 0.3. */
    @Test
    @DisplayName("standing lines at multiples of the mains are the mains'")
    void mains() {
        Dwell steady = new Dwell(0, 40, HZ, 1e-4, HZ, HZ);
        assertThat(doubt(dwell(PROPELLER, new double[] {100, 0.8}, new double[] {200, 0.8})))
                .isPresent();
        assertThat(standing(steady, 100, 200)).isFalse();
        assertThat(standing(steady, 100.19, 200.29)).isFalse();
        assertThat(standing(steady, 100.22, 200.44)).isTrue();
        assertThat(standing(steady, 99.78, 199.56)).isTrue();
    }

    /** A bin of 8 s is 1/8 Hz: a line that the wander would move by more and that stands doesn't turn with the machine. */
    @Test
    @DisplayName("a line that stands though the speed wanders is no line of the machine")
    void wandering() {
        assertThat(standing(new Dwell(0, 40, HZ, 1e-4, HZ - 0.015, HZ + 0.015), 61, 122))
                .isTrue();
        assertThat(standing(new Dwell(0, 40, HZ, 1e-4, HZ - 0.0165, HZ + 0.0165), 61, 122))
                .isFalse();
        // In 20 s a bin is 1/5 Hz.
        assertThat(standing(new Dwell(0, 20, HZ, 1e-4, HZ - 0.0165, HZ + 0.0165), 61, 122))
                .isTrue();
    }

    /** In 8 s a place is good to 0.4/2 + 0.05 = 0.25 Hz. */
    @Test
    @DisplayName("in a short dwell places are known less well")
    void shortDwell() {
        Dwell dwell = new Dwell(0, 8, HZ, 1e-4, HZ, HZ);
        assertThat(doubt(dwell(dwell, true, PROPELLER, new double[] {61, 0.8}, new double[] {122.49, 0.6})))
                .isPresent();
        assertThat(doubt(dwell(dwell, true, PROPELLER, new double[] {61, 0.8}, new double[] {122.51, 0.6})))
                .isEmpty();
    }

    /** Beside blade pass of 2 at 90 Hz: within 1 % and below three times of it, a line is its smear and isn't left over. */
    @Test
    @DisplayName("what lies beside a line may be its smear")
    void smeared() {
        double[] first = {61, 0.8};
        double[] second = {122, 0.6};
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {90.6, 1.8})))
                .isPresent();
        assertThat(doubt(dwell(PROPELLER, first, second, new double[] {91.2, 1.8})))
                .isEmpty();
    }

    @Test
    @DisplayName("a ratio upside down is told as such")
    void upsideDown() {
        assertThat(new RatioDoubt(2.43, 1 / 2.43, Shaft.CRANK, List.of(), 0, 1).upsideDown())
                .isTrue();
        assertThat(new RatioDoubt(2.43, 1.02 / 2.43, Shaft.CRANK, List.of(), 0, 1).upsideDown())
                .isFalse();
        assertThat(new RatioDoubt(1.005, 1 / 1.005, Shaft.CRANK, List.of(), 0, 1).upsideDown())
                .isFalse();
        assertThat(new UnexplainedLine(146, 1, 4.86, 2.003, true, false).ofTheCrank())
                .isTrue();
        assertThat(new UnexplainedLine(146, 1, 4.86, 2.005, true, false).ofTheCrank())
                .isFalse();
    }

    @Test
    @DisplayName("lines are joined that a dwell is too short to tell apart")
    void joined() {
        // 5 and 4.86 are 0.14·30 = 4.2 Hz apart, 6 and 6.075 2.25 Hz, 3.645 and 4 10.65 Hz: 1.5/length of 0.36 s are
        // 4.17 Hz.
        List<FittedLine> apart = FittedLine.group(TABLE, 0, HZ, 0.36, 200, FittedLine.RESOLVED);
        assertThat(apart.stream().filter(l -> l.members().size() > 1))
                .singleElement()
                .satisfies(l -> assertThat(l.order()).isCloseTo((6 + 6.075) / 2, within(EXACT)));
        assertThat(FittedLine.group(TABLE, 0, HZ, 0.35, 200, FittedLine.RESOLVED).stream()
                        .filter(l -> l.members().size() > 1)
                        .mapToDouble(FittedLine::order))
                .containsExactly((4.86 + 5) / 2, (6 + 6.075) / 2);
        // Up to 200 Hz, 6.67 orders: six of the propeller, five of the crank, of which two are one.
        assertThat(apart).hasSize(10);
        assertThat(apart.get(0).frequencyHz(HZ)).isCloseTo(30, within(EXACT));
        assertThat(FittedLine.steady(27.3).frequencyHz(HZ)).isEqualTo(27.3);
        // A crank that turns 1 % faster.
        assertThat(FittedLine.group(TABLE, 0.01, HZ, 40, 200, FittedLine.RESOLVED).stream()
                        .mapToDouble(FittedLine::order))
                .anyMatch(o -> Math.abs(o - 1.215 * 1.01) < EXACT)
                .anyMatch(o -> o == 3);
    }
}
