package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.judge.balance.BalanceRequest.HubPlace;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What is said beside a correction that is given, and not said where there is no reason. */
class BalanceWarningsTest {
    private static final WeightedReading BARE = WeightedReading.withPhase(3.4, 116, 0.05);
    private static final WeightedReading TRIAL = WeightedReading.withPhase(1.8, 42, 0.05, Weight.of(10, 60, 0));

    private static List<ObjectionCode> warnings(
            List<WeightedReading> runs, List<HubPlace> places, List<Double> stockG) {
        BalanceAnswer answer = Balancing.balance(
                new BalanceRequest(runs, RunsTogether.typedIn(), places, OptionalDouble.empty(), stockG));
        assertThat(answer.advice()).isPresent();
        return answer.warnings().stream().map(Objection::code).toList();
    }

    private static List<HubPlace> round(int places) {
        return IntStream.range(0, places)
                .mapToObj(i -> new HubPlace("P" + i, 360.0 / places * i, 60))
                .toList();
    }

    /** Ten runs of each kind, up to 7 % from the mean, say themselves how far runs differ; one of each can't. */
    @Test
    void withoutRepeatsTheScatterIsSaidToBeAssumed() {
        List<WeightedReading> repeated = DoubleStream.iterate(0.93, share -> share + 0.0155)
                .limit(10)
                .boxed()
                .flatMap(share -> Stream.of(
                        WeightedReading.withPhase(3.4 * share, 116, 0.005),
                        WeightedReading.withPhase(1.8 * share, 42, 0.005, Weight.of(10, 60, 0))))
                .toList();

        assertThat(warnings(List.of(BARE, TRIAL), List.of(), List.of())).contains(ObjectionCode.SCATTER_ASSUMED);
        assertThat(warnings(repeated, List.of(), List.of())).doesNotContain(ObjectionCode.SCATTER_ASSUMED);
    }

    @Test
    void runsOfOneKindThatDifferByAFifthAreSaidToDisagree() {
        List<WeightedReading> apart = Stream.of(0.8, 1.0, 1.2, 0.8, 1.0, 1.2)
                .flatMap(share -> Stream.of(
                        WeightedReading.withPhase(10 * share, 0, 0.01),
                        WeightedReading.withPhase(40 * share, 120, 0.01, Weight.of(10, 60, 0))))
                .toList();

        assertThat(warnings(apart, List.of(), List.of())).contains(ObjectionCode.RUNS_DISAGREE);
        assertThat(warnings(List.of(BARE, TRIAL), List.of(), List.of())).doesNotContain(ObjectionCode.RUNS_DISAGREE);
    }

    /** What is to be balanced is a fiftieth of what the trial did, and no larger than its own error. */
    @Test
    void aCorrectionNoLargerThanItsErrorIsSaidToBeSo() {
        List<WeightedReading> little = List.of(
                WeightedReading.withPhase(0.1, 0, 0.2), WeightedReading.withPhase(5, 90, 0.2, Weight.of(10, 60, 0)));

        assertThat(warnings(little, List.of(), List.of())).contains(ObjectionCode.CORRECTION_WITHIN_ERROR);
        assertThat(warnings(List.of(BARE, TRIAL), List.of(), List.of()))
                .doesNotContain(ObjectionCode.CORRECTION_WITHIN_ERROR);
    }

    /** The correction of the published case points to 329°; places at 100° and 160° can't make it. */
    @Test
    void placesOnTheOtherSideAreSaidNotToReach() {
        assertThat(warnings(
                        List.of(BARE, TRIAL),
                        List.of(new HubPlace("P1", 100, 60), new HubPlace("P2", 160, 60)),
                        List.of()))
                .contains(ObjectionCode.PLACES_DONT_REACH);
        assertThat(warnings(List.of(BARE, TRIAL), round(6), List.of())).doesNotContain(ObjectionCode.PLACES_DONT_REACH);
    }

    /** Needed are 10.06 g, five times the published case's 2.01168 g for five times its trial weight. */
    @Test
    void aStockOfHeavyWeightsOnlyIsSaidToBeTooCoarse() {
        assertThat(warnings(List.of(BARE, TRIAL), round(6), List.of(25.0))).contains(ObjectionCode.STOCK_COARSE);
        assertThat(warnings(List.of(BARE, TRIAL), round(6), List.of(0.5, 1.0, 2.0, 5.0, 10.0)))
                .doesNotContain(ObjectionCode.STOCK_COARSE);
    }
}
