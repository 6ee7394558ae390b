package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.judge.balance.TrialConditions.DwellReading;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What stands in the way of a correction, each by itself beside runs that would otherwise give one. */
class BalanceRefusalsTest {
    private static final List<WeightedReading> GOOD = List.of(
            WeightedReading.withPhase(3.4, 116, 0.05), WeightedReading.withPhase(1.8, 42, 0.05, Weight.of(10, 60, 0)));
    private static final TrialConditions RUN = TrialConditions.good(2000);

    private static List<ObjectionCode> refusals(RunsTogether together, OptionalDouble largestG) {
        BalanceAnswer answer = Balancing.balance(new BalanceRequest(GOOD, together, List.of(), largestG, List.of()));
        assertThat(answer.refused()).isEqualTo(!answer.refusals().isEmpty());
        return answer.refusals().stream().map(Objection::code).toList();
    }

    private static RunsTogether with(TrialConditions second) {
        return new RunsTogether(List.of(RUN, second), List.of(), true);
    }

    private static TrialConditions dwells(DwellReading... dwells) {
        return new TrialConditions(
                true,
                2000,
                OptionalDouble.empty(),
                false,
                List.of(),
                Set.of(),
                List.of(dwells),
                OptionalDouble.empty());
    }

    @Test
    void goodRunsAreNotRefused() {
        assertThat(refusals(with(RUN), OptionalDouble.of(30))).isEmpty();
        assertThat(refusals(with(TrialConditions.good(2039)), OptionalDouble.empty()))
                .isEmpty(); // 1.93 %
    }

    static Stream<Arguments> faults() {
        OptionalDouble none = OptionalDouble.empty();
        return Stream.of(
                Arguments.of(
                        ObjectionCode.SPEED_NOT_CONFIRMED,
                        with(new TrialConditions(false, 2000, none, false, List.of(), Set.of(), List.of(), none))),
                Arguments.of(ObjectionCode.SPEEDS_APART, with(TrialConditions.good(2041))), // 2.03 %
                Arguments.of(
                        ObjectionCode.INSEPARABLE_FROM_CRANK,
                        with(new TrialConditions(
                                true, 2000, OptionalDouble.of(1), true, List.of(), Set.of(), List.of(), none))),
                Arguments.of(
                        ObjectionCode.BEYOND_LIMIT_FIRST,
                        new RunsTogether(
                                List.of(RUN, RUN),
                                List.of(Objection.beyondLimit(Objection.Property.TRACK, 0.0048, 0.0032)),
                                true)),
                Arguments.of(
                        ObjectionCode.CHANGED_BETWEEN,
                        with(new TrialConditions(
                                true, 2000, none, false, List.of("pitch reset"), Set.of(), List.of(), none))),
                Arguments.of(
                        ObjectionCode.SENSOR_CHANGED,
                        with(new TrialConditions(
                                true,
                                2000,
                                none,
                                false,
                                List.of(),
                                Set.of(Objection.SensorAspect.GAIN),
                                List.of(),
                                none))),
                Arguments.of(
                        ObjectionCode.NEAR_RESONANCE,
                        with(dwells(
                                new DwellReading(1800, 2, 0.05, OptionalDouble.of(350)),
                                new DwellReading(2000, 2.2, 0.05, OptionalDouble.of(40))))),
                Arguments.of(
                        ObjectionCode.NEAR_RESONANCE,
                        with(dwells(new DwellReading(1800, 2, 0.05, none), new DwellReading(2000, 1.5, 0.05, none)))),
                Arguments.of(
                        ObjectionCode.LOOSE_MOUNT,
                        with(new TrialConditions(
                                true, 2000, none, false, List.of(), Set.of(), List.of(), OptionalDouble.of(0.3)))),
                Arguments.of(ObjectionCode.SENSE_NOT_CONFIRMED, new RunsTogether(List.of(RUN, RUN), List.of(), false)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void aFaultOfTheRunsRefuses(ObjectionCode code, RunsTogether together) {
        assertThat(refusals(together, OptionalDouble.empty())).containsExactly(code);
    }

    /** The phase may cross 0°: 350° to 10° is a turn of 20°. */
    @Test
    void aSmallTurnAcrossZeroIsNoResonance() {
        assertThat(refusals(
                        with(dwells(
                                new DwellReading(1800, 2, 0.05, OptionalDouble.of(350)),
                                new DwellReading(2000, 2.4, 0.05, OptionalDouble.of(10)))),
                        OptionalDouble.empty()))
                .isEmpty();
    }

    @Test
    void moreThanTheLargestMassIsRefused() {
        assertThat(refusals(with(RUN), OptionalDouble.of(10))).containsExactly(ObjectionCode.BEYOND_LARGEST_MASS);
    }

    @Test
    void aTrialLostInTheScatterIsRefusedWithAUsefulWeight() {
        BalanceAnswer answer = Runs.answer(
                WeightedReading.withPhase(3.4, 116, 0.05),
                WeightedReading.withPhase(3.5, 115, 0.05, Weight.of(2, 60, 0)));

        assertThat(answer.advice()).isEmpty();
        assertThat(answer.refusals()).singleElement().satisfies(o -> {
            assertThat(o.code()).isEqualTo(ObjectionCode.TRIAL_TOO_LIGHT);
            List<Value> values = o.fact().values();
            double needed = ((Amount) values.get(1)).value();
            assertThat(((Amount) values.get(0)).value()).isLessThan(needed);
            assertThat(needed).isGreaterThanOrEqualTo(3);
            Fact take = (Fact) values.get(2);
            assertThat(take.code()).isEqualTo(Objection.BalanceFact.WEIGHT_TO_TAKE);
            assertThat(((Amount) take.values().get(0)).value()).isGreaterThan(2 * 1.5e-3);
        });
    }

    /** F with 2 and ν degrees of freedom has the tail (1 + 2x/ν)^(−ν/2); a vector of known deviation exp(−d²/2). */
    @Test
    void aTrialMustMoveTheLineFartherThanChanceDoesInOneOfTwoThousand() {
        double share = 0.1;
        for (double freedom : new double[] {2, 8, 30}) {
            double needed = Balancing.neededEffect(freedom, share);
            assertThat(Math.pow(1 + needed * needed / freedom, -freedom / 2)).isCloseTo(1 / 2000.0, within(1e-9));
        }
        double known = Balancing.neededEffect(1e7, share);
        assertThat(Math.exp(-known * known / 2)).isCloseTo(1 / 2000.0, within(1e-8));
        // Where the usual 5 % are reckoned with, no more than at 8 %, which is the most that is usual.
        assertThat(Balancing.neededEffect(8, 0.05)).isCloseTo(known * 8 / 5, within(1e-5));
    }

    /** Variances 0.0009 of scatter and 0.0016 of the lines: ν·p² = 25·(0.36)² = 3.24 of the 10 wanted. */
    @Test
    void scatterHiddenByTheLinesErrorsIsFilledUpByWhatIsUsual() {
        TrialScatter scatter = TrialScatter.measured(0.03, 25, 0.36);
        assertThat(scatter.measuredFreedom()).isCloseTo(3.24, within(1e-12));
        assertThat(scatter.freedom()).isEqualTo(10);
        assertThat(scatter.share()).isCloseTo(Math.sqrt((3.24 * 0.0009 + 6.76 * 0.0025) / 10), within(1e-12));
        assertThat(scatter.seen()).isFalse();
        TrialScatter plain = TrialScatter.measured(0.03, 25, 1);
        assertThat(plain).isEqualTo(new TrialScatter(0.03, 25, 25));
        assertThat(plain.seen()).isTrue();
    }

    @Test
    void runsThatCantAnswerSayWhatIsMissing() {
        Weight weight = Weight.of(10, 60, 0);
        assertThat(codes(WeightedReading.withPhase(3, 10, 0.1), WeightedReading.withPhase(3, 12, 0.1)))
                .containsExactly(ObjectionCode.NO_TRIAL);
        assertThat(codes(WeightedReading.withPhase(3, 10, 0.1, weight), WeightedReading.withPhase(3, 12, 0.1, weight)))
                .containsExactly(ObjectionCode.NO_RUN_WITHOUT_WEIGHTS);
        assertThat(codes(WeightedReading.withPhase(3, 10, 0.1), WeightedReading.withoutPhase(2, 0.1, weight)))
                .containsExactly(ObjectionCode.PHASES_MISSING);
        assertThat(codes(
                        WeightedReading.withoutPhase(3, 0.1),
                        WeightedReading.withoutPhase(2, 0.1, weight),
                        WeightedReading.withoutPhase(2.5, 0.1, Weight.of(10, 60, 120))))
                .containsExactly(ObjectionCode.TRIALS_TOO_FEW);
        // All on one line through the shaft: which side of it is heavy stays open.
        assertThat(codes(
                        WeightedReading.withoutPhase(3, 0.1),
                        WeightedReading.withoutPhase(2, 0.1, weight),
                        WeightedReading.withoutPhase(2.5, 0.1, Weight.of(5, 60, 0)),
                        WeightedReading.withoutPhase(4, 0.1, Weight.of(10, 60, 180))))
                .containsExactly(ObjectionCode.TRIALS_TOO_FEW);
    }

    /** 4, then 6.5 wherever the weight sits: no unbalance does that. */
    @Test
    void readingsThatContradictEachOtherAreRefused() {
        assertThat(codes(Runs.fourRuns(4, 15, 6.5, 6.5, 6.5))).containsExactly(ObjectionCode.CLOSURE_FAILED);
        assertThat(codes(Runs.fourRuns(4, 15, 2, 2, 2))).containsExactly(ObjectionCode.CLOSURE_FAILED);
    }

    /** The machine answers with the phases turned over: two trials at 90° show it. */
    @Test
    void twoTrialsShowAnglesCountedTheWrongWay() {
        evenblade.base.numeric.Phasor rest = evenblade.base.numeric.Phasor.ofDegrees(3, 70);
        evenblade.base.numeric.Phasor alpha = evenblade.base.numeric.Phasor.ofDegrees(0.004, 25);
        WeightedReading[] right = new WeightedReading[3];
        WeightedReading[] wrong = new WeightedReading[3];
        for (int i = 0; i < 3; i++) {
            Weight[] on = i == 0 ? new Weight[0] : new Weight[] {Weight.of(10, 60, 90 * i)};
            evenblade.base.numeric.Phasor sum = i == 0 ? evenblade.base.numeric.Phasor.ZERO : on[0].vectorGmm();
            evenblade.base.numeric.Phasor line = rest.plus(alpha.times(sum));
            right[i] = WeightedReading.withPhase(line.magnitude(), line.degrees(), 0.03, on);
            wrong[i] = WeightedReading.withPhase(line.magnitude(), -line.degrees(), 0.03, on);
        }

        assertThat(codes(wrong)).containsExactly(ObjectionCode.SENSE_LOOKS_OTHER);
        BalanceAnswer answer = Runs.answer(right);
        assertThat(answer.refused()).isFalse();
        assertThat(answer.advice().orElseThrow().correction().value().gmm()).isCloseTo(750, within(1e-6));
    }

    private static List<ObjectionCode> codes(WeightedReading... runs) {
        return Runs.answer(runs).refusals().stream().map(Objection::code).toList();
    }
}
