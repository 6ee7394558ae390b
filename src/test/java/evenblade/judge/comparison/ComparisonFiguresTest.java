package evenblade.judge.comparison;

import static evenblade.judge.comparison.Invented.channel;
import static evenblade.judge.comparison.Invented.dwell;
import static evenblade.judge.comparison.Invented.gearbox;
import static evenblade.judge.comparison.Invented.run;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders.Unevenness;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Figures behind a comparison, by hand from their definitions. */
class ComparisonFiguresTest {
    private static final double EXACT = 1e-9; // of rounding
    private static final SignalUnit ACCELERATION = SignalUnit.METRE_PER_SECOND_SQUARED;

    /** Interval ends a factor e^(±r) from the middle reach r; a quotient below what is hidden is unsure by both. */
    @Test
    void whatIsKnownOfAFigureIsAFactor() {
        ComparedValue.Known index = (ComparedValue.Known)
                ComparedValue.of(new Unevenness(0.3, 0.27, 0.33)).orElseThrow();
        assertThat(index.reach()).isCloseTo(0.1003353, within(1e-7)); // ln(0.33/0.27)/2
        ComparedValue hidden = ComparedValue.ratio(new ComparedValue.Below(0.02), new ComparedValue.Known(0.2, 0.1));
        assertThat(hidden.size()).isCloseTo(0.1105171, within(1e-7)); // 0.1·e^0.1
        assertThat(new ComparedValue.Below(0.02).times(9.80665).size()).isCloseTo(0.196133, within(EXACT));
    }

    /** A line's loads scatter by 6 % between two runs, 6 %/√2 each; a ratio by its two parts. */
    @Test
    void theUsualScatterOfOneRunIsThatOfTwoByTheRootOfTwo() {
        assertThat(Scatter.assumed(Figure.Nature.TURNING).deviation()).isCloseTo(0.0212132, within(1e-7));
        assertThat(Scatter.assumed(Figure.Nature.LOADED).deviation()).isCloseTo(0.0424264, within(1e-7));
        assertThat(Scatter.assumed(Figure.Nature.RATIO).deviation()).isCloseTo(0.0474342, within(1e-7));
    }

    /** 1 % faster: acceleration by 2 %, velocity by 1 %, a ratio not at all; exponents unsure by 1, of a ratio by 3. */
    @Test
    void aStepInSpeedIsWorthItsExponent() {
        SpeedLaw acceleration = SpeedLaw.between(0.01, Basis.ABSOLUTE, Figure.Kind.AMPLITUDE, ACCELERATION);
        assertThat(acceleration.shift()).isCloseTo(0.02, within(EXACT));
        assertThat(acceleration.reach()).isCloseTo(0.0195996, within(1e-7));
        assertThat(SpeedLaw.between(0.01, Basis.ABSOLUTE, Figure.Kind.AMPLITUDE, SignalUnit.METRE_PER_SECOND)
                        .shift())
                .isCloseTo(0.01, within(EXACT));
        SpeedLaw ratio = SpeedLaw.between(-0.01, Basis.GAIN_FREE, Figure.Kind.TO_BLADE_PASS, ACCELERATION);
        assertThat(ratio.shift()).isZero();
        assertThat(ratio.reach()).isCloseTo(0.0587989, within(1e-7));
    }

    private static CommonPart seat(int lines, double logarithm) {
        List<OrderLine> crank = Invented.TABLE.lines().stream()
                .filter(line -> line.of() == Shaft.CRANK)
                .toList();
        List<CommonPart.Step> steps = IntStream.range(0, lines)
                .mapToObj(i -> new CommonPart.Step(
                        Figure.amplitude(crank.get(i)),
                        new ComparedValue.Known(1, 0),
                        new ComparedValue.Known(Math.exp(logarithm), 0),
                        new SpeedLaw(0, 0),
                        Scatter.of(Math.sqrt(0.0008), Double.POSITIVE_INFINITY, Scatter.Source.REPEATS)))
                .toList();
        OrderLine once = Invented.TABLE.lines().stream()
                .filter(OrderLine::propellerOnce)
                .findFirst()
                .orElseThrow();
        return CommonPart.in(Figure.amplitude(once), steps);
    }

    /**
     * Engine lines change by x each with a variance of 2·0.0008 = 1/625, the seat's own is 0.06² = 1/277.78. Two of them:
     * shift 1250x/1527.78 = 0.818182x, deviation 1/√1527.78 = 0.0255841. Misfit 277.78·0.818182²x² + 1250·0.181818²x²
     * = 227.27x², 99 % of χ² with 2 degrees is 9.2103, reached at x = 0.2013. Three are believed against the seat.
     */
    @Test
    void engineLinesThatChangeTogetherShowTheSeatUnlessTheyContradictWhatIsUsual() {
        CommonPart two = seat(2, 0.198);
        assertThat(two.shift()).isCloseTo(0.198 * 0.818182, within(1e-6));
        assertThat(two.deviation()).isCloseTo(0.0255841, within(1e-7));
        CommonPart tooFar = seat(2, 0.205);
        assertThat(tooFar.shift()).isZero();
        assertThat(tooFar.deviation()).isEqualTo(0.06);
        // 1875·0.205/2152.78
        assertThat(seat(3, 0.205).shift()).isCloseTo(0.178548, within(1e-6));
    }

    private static RunComparison repeated(double... onces) {
        List<MeasuredRun> runs = IntStream.range(0, onces.length)
                .mapToObj(i -> run("r" + i, dwell(4800, onces[i], 1.0)))
                .toList();
        return BeforeAndAfter.compare(
                run("a", dwell(4800, 1, 1)), run("b", dwell(4800, 1, 1)), List.of(new TrendStage(List.of(), runs)));
    }

    /**
     * A repeat is asked about from a factor 2 on, and what both runs leave open: the line ±1 % and the 0.588 % that none
     * beside a line of 1.0 is steadier than, √(1² + 0.588²) = 1.16 % and at 0.5 √(1² + 1.18²) = 1.54 %, together a factor
     * 2.055; the ratio to blade pass the same and 1.16 % twice, 2.047.
     */
    @Test
    void aRepeatOfLessThanHalfIsAskedAbout() {
        assertThat(repeated(1, 1 / 2.03).warnings())
                .extracting(w -> w.code())
                .doesNotContain(WarningCode.REPEATS_DIFFER);
        assertThat(repeated(1, 1 / 2.08).warnings()).extracting(w -> w.code()).contains(WarningCode.REPEATS_DIFFER);
    }

    @Test
    void repeatsOnBothSidesOfAJumpCount() {
        assertThat(repeated(1, 1.01, 0.2, 0.202).channels().get(0).repeatRuns()).isEqualTo(2);
    }

    /** 1 g = 9.80665 m/s² by definition: the same line in two units is a repeat without any scatter. */
    @Test
    void repeatsInOtherUnitsAreBroughtToOne() {
        List<MeasuredRun> repeats = IntStream.range(0, 5)
                .mapToObj(i -> i % 2 == 0
                        ? run("r" + i, gearbox(), channel("x", SignalUnit.STANDARD_GRAVITY, dwell(4800, 0.1, 0.1)))
                        : run("r" + i, gearbox(), channel("x", ACCELERATION, dwell(4800, 0.980665, 0.980665))))
                .toList();
        RunComparison comparison = BeforeAndAfter.compare(
                run("a", dwell(4800, 1, 1)), run("b", dwell(4800, 1, 1)), List.of(new TrendStage(List.of(), repeats)));
        assertThat(Invented.once(comparison).scatter().deviation()).isCloseTo(0, within(EXACT));
    }

    @Test
    void speedsAreToldInEngineTurns() {
        RunComparison small =
                BeforeAndAfter.compare(run("a", dwell(4800, 1, 1)), run("b", dwell(4808, 1, 1)), List.of());
        assertThat(small.channels().get(0).dwells().get(0).engineRpmBefore()).isCloseTo(4800, within(1e-6));
        assertThat(small.channels().get(0).dwells().get(0).engineRpmAfter()).isCloseTo(4808, within(1e-6));
        // 8 of 4800 are 1.7 in a thousand, 12 are 2.5: told from 2 on.
        assertThat(small.warnings()).extracting(w -> w.code()).doesNotContain(WarningCode.RPM_DIFFERS);
        assertThat(BeforeAndAfter.compare(run("a", dwell(4800, 1, 1)), run("b", dwell(4788, 1, 1)), List.of())
                        .warnings())
                .extracting(w -> w.code())
                .contains(WarningCode.RPM_DIFFERS);
    }

    /**
     * By hand, of 0.8 beside 1.0: the line ±1 %, steadiness 1.95996·0.003/0.8 = 0.735 %, one run's scatter 1.95996·3 %/√2 =
     * 4.158 %, the sensor put back 1.95996·6 %/√2 = 8.315 %; the root of their squares is 9.3794 %.
     */
    @Test
    void aPointOfTheTrendReachesAsFarAsOneRunMayBeOff() {
        Trend.Point point = TrendOverJob.of(
                        List.of(new TrendStage(List.of(), List.of(run("a", dwell(4800, 0.8, 1.0))))))
                .get(0)
                .speeds()
                .get(0)
                .lines()
                .stream()
                .filter(line -> line.figure().name().equals("propeller 1×"))
                .findFirst()
                .orElseThrow()
                .points()
                .get(0);
        assertThat(Math.log(point.ciHigh() / 0.8)).isCloseTo(0.0937939, within(1e-6));
        assertThat(Math.log(0.8 / point.ciLow())).isCloseTo(0.0937939, within(1e-6));
    }

    /** Both dwells of the second run lie within 2 % of the first run's, by 10 and by 70 of 4800. */
    @Test
    void theDwellNearestInSpeedIsFollowed() {
        Trend trend = TrendOverJob.of(List.of(new TrendStage(
                        List.of(),
                        List.of(
                                run("a", dwell(4800, 0.8, 1.0)),
                                run("b", dwell(4730, 0.6, 1.0), dwell(4790, 0.5, 1.0))))))
                .get(0);
        assertThat(trend.speeds().get(0).lines().get(0).points())
                .extracting(p -> p.value().size())
                .containsExactly(0.8, 0.5);
    }

    @Test
    void theChannelThatShakesMostComesFirst() {
        List<Trend> trends = TrendOverJob.of(List.of(new TrendStage(
                List.of(),
                List.of(new MeasuredRun(
                        "a",
                        gearbox(),
                        Optional.empty(),
                        Optional.empty(),
                        3,
                        Invented.RATIO,
                        List.of(
                                channel("x", ACCELERATION, dwell(4800, 0.2, 1)),
                                channel("y", ACCELERATION, dwell(4800, 0.6, 1))))))));
        assertThat(trends).extracting(Trend::channel).containsExactly("y", "x");
    }
}
