package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import evenblade.judge.balance.TrialConditions.DwellReading;
import evenblade.judge.tracking.Layout;
import evenblade.machine.installation.HubCounting;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Figures that go with an answer or a refusal, by hand from their definitions. */
class BalanceFiguresTest {
    private static final double EXACT = 1e-9; // of rounding

    private static double amount(Value value) {
        return ((Amount) value).value();
    }

    /**
     * Three runs of length 10 ± 1 without and three of 20 ± 1 with a weight, lines read exactly: sums of squares 2 and 2
     * against s²·(100 + 6.25) and s²·(400 + 6.25), as each scatters like its length and a quarter of that at rest
     * squared. They come to the 12 − 4 spare figures with s² = (2/106.25 + 2/406.25)/8 = 0.00296833. Of the variance
     * of all figures s²·2·3·(106.25 + 406.25) = 9.1276 is scatter and 3·500·(2° in radians)² = 1.8277 the placing.
     */
    @Test
    void repeatsSayTheScatterByWhatTheyDifferByFromTheirMean() {
        Weight weight = new Weight(10, 60, 0, 0);
        Influence fit = InfluenceFit.withPhase(List.of(
                        WeightedReading.withPhase(10, 0, 0),
                        WeightedReading.withPhase(11, 0, 0),
                        WeightedReading.withPhase(9, 0, 0),
                        WeightedReading.withPhase(20, 90, 0, weight),
                        WeightedReading.withPhase(21, 90, 0, weight),
                        WeightedReading.withPhase(19, 90, 0, weight)))
                .orElseThrow();
        double share = Math.sqrt(0.00296833);
        double seen = 8 * Math.pow(9.1276 / (9.1276 + 1.8277), 2);
        double filledUp = (seen * 0.00296833 + (10 - seen) * 0.0025) / 10;

        assertThat(fit.spareFigures()).isEqualTo(8);
        assertThat(fit.restAmplitude()).isCloseTo(10, within(1e-6));
        assertThat(fit.perGmm().magnitude() * 600).isCloseTo(Math.sqrt(500), within(1e-6));
        // The last digit written above.
        assertThat(fit.scatterShare()).isCloseTo(Math.sqrt(filledUp), within(1e-6 * share));
        assertThat(fit.sumOfSquares()).isCloseTo(8 * 0.00296833 / filledUp, within(1e-4));
        assertThat(fit.freedomOfReadings()).isCloseTo(10, within(1e-6));
    }

    /** What a trial does grows with its weight: the one to take does at least 5 deviations, and 1.3 times what is needed. */
    @Test
    void theWeightToTakeMovesTheLineAsFarAsIsNeeded() {
        List<WeightedReading> runs = List.of(
                WeightedReading.withPhase(3.4, 116, 0.05),
                WeightedReading.withPhase(3.4, 124, 0.05, Weight.of(2, 60, 0)));
        Fact refusal = Runs.answer(runs.toArray(WeightedReading[]::new))
                .refusals()
                .get(0)
                .fact();
        assertThat(refusal.code()).isEqualTo(ObjectionCode.TRIAL_TOO_LIGHT);
        double effect = amount(refusal.values().get(0));
        double needed = amount(refusal.values().get(1));
        assertThat(effect).isBetween(1.2, needed);
        Fact take = (Fact) refusal.values().get(2);
        double grams = 1e3 * amount(take.values().get(0));
        assertThat(effect * grams / 2).isCloseTo(Math.max(5, 1.3 * needed), within(EXACT));
        assertThat(amount(take.values().get(1))).isCloseTo(0.060, within(EXACT));

        for (double share : new double[] {0.9, 1.1}) {
            Fact answer = Balancing.balance(new BalanceRequest(
                            runs, RunsTogether.typedIn(), List.of(), OptionalDouble.of(share * grams), List.of()))
                    .refusals()
                    .get(0)
                    .fact();
            assertThat(((Fact) answer.values().get(2)).code())
                    .isEqualTo(
                            share > 1
                                    ? Objection.BalanceFact.WEIGHT_TO_TAKE
                                    : Objection.BalanceFact.WEIGHT_NOT_ALLOWED);
        }
    }

    @Test
    void missingPhasesAreCounted() {
        Fact refusal = Runs.answer(
                        WeightedReading.withPhase(3, 10, 0.1),
                        WeightedReading.withoutPhase(2, 0.1, Weight.of(10, 60, 0)),
                        WeightedReading.withPhase(2, 20, 0.1, Weight.of(10, 60, 90)))
                .refusals()
                .get(0)
                .fact();
        assertThat(refusal.values()).containsExactly(new Count(1), new Count(3));
    }

    /** Runs that agree to the last digit have closure 1, of which nothing is said. */
    @Test
    void readingsThatAgreeAreUsedWithoutAWord() {
        assertThat(Runs.answer(Runs.fourRuns(4, 15, 5.586739396326, 6.478469167055, 1.348250781221))
                        .warnings())
                .extracting(Objection::code)
                .doesNotContain(ObjectionCode.CLOSURE_POOR);
    }

    private static List<Objection> between(DwellReading from, DwellReading to) {
        TrialConditions run = new TrialConditions(
                true,
                2000,
                OptionalDouble.empty(),
                false,
                List.of(),
                Set.of(),
                List.of(from, to),
                OptionalDouble.empty());
        return new RunsTogether(List.of(run), List.of(), true).objections();
    }

    /** A fall from 2 to 1.5 is three deviations of their difference up to 0.5/√18 = 0.118 of each. */
    @Test
    void aFallWithinItsErrorsIsNoResonance() {
        OptionalDouble none = OptionalDouble.empty();
        assertThat(between(new DwellReading(1800, 2, 0.12, none), new DwellReading(2000, 1.5, 0.12, none)))
                .isEmpty();
        List<Value> values = between(new DwellReading(1800, 2, 0.116, none), new DwellReading(2000, 1.5, 0.116, none))
                .get(0)
                .fact()
                .values();
        assertThat(amount(values.get(values.size() - 1))).isCloseTo(0.75, within(EXACT));
    }

    /** A tenth of a gram at most, one percent of what is lighter than 10 g. */
    @Test
    void aLightWeightIsWeighedFiner() {
        assertThat(Weight.usualMassErrorG(2)).isCloseTo(0.02, within(EXACT));
        assertThat(Weight.usualMassErrorG(40)).isCloseTo(0.1, within(EXACT));
    }

    /** 2828 as the blades sit, 1000 in the layout that is told first. */
    @Test
    void whatTheFirstLayoutSavesIsADifference() {
        HubMoments.Option best =
                new HubMoments.Option(Layout.of("A", "B"), Unbalance.of(100, 10, 20), Optional.empty());
        assertThat(new BalanceAtRest.Scale(List.of(), Unbalance.of(282.8, 10, 0), List.of(best), 900).betterGmm())
                .isCloseTo(1828, within(EXACT));
    }

    /**
     * Six places in even steps, each reading 10 g·mm too much and too little by turns: that is neither friction nor a
     * light side. Squares of 600 over 6 − 3 degrees of freedom, √200 each, times √(2/6) for the parts.
     */
    @Test
    void testMassesThatDontAgreeShowTheirOwnError() {
        List<Weight> tests = IntStream.range(0, 6)
                .mapToObj(i -> Weight.of((400 + 10 * (i % 2 == 0 ? 1 : -1)) / 50.0, 50, 60 * i))
                .toList();
        BenchReadings bench = BenchReadings.of(tests, 5).orElseThrow();
        assertThat(bench.errorAlongGmm()).isCloseTo(Math.sqrt(200 / 3.0), within(1e-6));
        assertThat(bench.errorAcrossGmm()).isCloseTo(Math.sqrt(200 / 3.0), within(1e-6));
    }

    @Test
    void placesOnTheFarSideTakeNothing() {
        assertThat(Split.exact(
                        Unbalance.of(10, 10, 0), List.of(new HubPlace("1", 100, 10), new HubPlace("2", 265, 10))))
                .isEmpty();
    }

    /**
     * 100 g·mm at 5°: 10 g at 0° leave 200·sin 2.5° = 8.7; with a piece at 30° less than 2.7 is left. A quarter of an error
     * of 40 hides that difference, of an error of 4 not.
     */
    @Test
    void fewerPlacesAreTakenWhereTheErrorHidesTheDifference() {
        List<HubPlace> places = List.of(new HubPlace("1", 0, 10), new HubPlace("2", 30, 10));
        Unbalance wanted = Unbalance.of(10, 10, 5);
        Split coarse = StockSearch.best(wanted, 40, places, List.of(1.0, 10.0), OptionalDouble.of(12));
        assertThat(coarse.shares()).singleElement().satisfies(s -> assertThat(s.massG())
                .isEqualTo(10));
        assertThat(coarse.leftGmm()).isCloseTo(200 * Math.sin(Math.toRadians(2.5)), within(EXACT));
        Split fine = StockSearch.best(wanted, 4, places, List.of(1.0, 10.0), OptionalDouble.of(12));
        assertThat(fine.shares()).hasSize(2);
        assertThat(fine.leftGmm()).isLessThan(2.7);
    }

    /** Two pieces of 5 g are the most allowed, and not more than that. */
    @Test
    void aPlaceMayTakeItsLargestMassExactly() {
        Split split = StockSearch.best(
                Unbalance.of(20, 10, 0), 1, List.of(new HubPlace("1", 0, 10)), List.of(5.0), OptionalDouble.of(10));
        assertThat(split.shares()).singleElement().satisfies(s -> assertThat(s.massG())
                .isEqualTo(10));
    }

    private static double counted(HubCounting sense, double degrees) {
        return new JobBalance(
                        "job",
                        true,
                        null,
                        Optional.of(sense),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        List.of(),
                        null,
                        null,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        List.of(),
                        List.of())
                .asCounted(degrees);
    }

    /** 350° against the rotation are 10° with it; all are told from 0° up to 360°. */
    @Test
    void anglesAreToldInTheSenseOfWhoCounts() {
        assertThat(counted(HubCounting.WITH_ROTATION, 350)).isCloseTo(10, within(EXACT));
        assertThat(counted(HubCounting.WITH_ROTATION, -30)).isCloseTo(30, within(EXACT));
        assertThat(counted(HubCounting.AGAINST_ROTATION, -30)).isCloseTo(330, within(EXACT));
        assertThat(counted(HubCounting.AGAINST_ROTATION, 725)).isCloseTo(5, within(EXACT));
    }
}
