package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Estimated;
import evenblade.base.fact.Value.Listed;
import evenblade.base.units.Length;
import evenblade.judge.tracking.GroupHypothesis.Family;
import evenblade.judge.tracking.TrackVerdict.StandOut;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * Chances and errors from marks beside figures made by numpy and scipy from the definitions: {@code reference/tracking/marks.py}.
 * Both reckon in double precision with ten digits or more; eight are asked.
 */
class MarksReferenceTest {
    private static final double EIGHT_DIGITS = 1e-8;

    private static TrackingSession session(String blades, double sigmaMm, double[]... marks) {
        return new TrackingSession(
                Instant.parse("2026-03-01T08:00:00Z"),
                Layout.of(blades.split("")),
                Arrays.stream(marks)
                        .map(m -> DoubleStream.of(m)
                                .mapToObj(Length::ofMillimetres)
                                .toList())
                        .toList(),
                Length.ofMillimetres(sigmaMm));
    }

    private static TrackingSession marked(String blades, double sigmaMm, double... marks) {
        return session(
                blades,
                sigmaMm,
                DoubleStream.of(marks).mapToObj(m -> new double[] {m}).toArray(double[][]::new));
    }

    private static List<TrackingSession> three() {
        return List.of(
                session("ABC", 0.4, new double[] {0.1234}, new double[] {3.4567, 3.1289}, new double[] {-0.2345}),
                marked("CAB", 0.5, 0.3456, 0.0567, 2.8913));
    }

    private static List<TrackingSession> gross() {
        return List.of(marked("ABC", 0.4, 0.1234, 17.4567, -0.2345), marked("CAB", 0.5, 16.3456, 0.0567, 0.8913));
    }

    private static MarkEvidence evidence(List<TrackingSession> sessions) {
        SwapModel model = SwapFit.of(sessions).model();
        return new MarkEvidence(model.sessions(), model.blades(), model.errorsMm());
    }

    private static double over(
            List<TrackingSession> sessions, Set<Integer> blades, Set<Integer> positions, OptionalInt slip) {
        MarkEvidence evidence = evidence(sessions);
        return evidence.log(new GroupHypothesis(blades, positions, slip))
                - evidence.log(new GroupHypothesis(Set.of(), Set.of(), OptionalInt.empty()));
    }

    @Test
    void evidenceIsTheDensityOfTheMarks() {
        OptionalInt none = OptionalInt.empty();
        assertThat(over(three(), Set.of(1), Set.of(), none)).isCloseTo(9.862637475430441, within(EIGHT_DIGITS));
        assertThat(over(three(), Set.of(), Set.of(1), none)).isCloseTo(0.4862765958066966, within(EIGHT_DIGITS));
        assertThat(over(three(), Set.of(1), Set.of(2), none)).isCloseTo(8.500476219661163, within(EIGHT_DIGITS));
        assertThat(over(three(), Set.of(1), Set.of(), OptionalInt.of(3)))
                .isCloseTo(8.178245692628185, within(EIGHT_DIGITS));
        // Half of the largest spread is more than what is large otherwise.
        assertThat(over(gross(), Set.of(), Set.of(1), none)).isCloseTo(0.2700084575262238, within(EIGHT_DIGITS));
    }

    private static void assertChances(
            List<TrackingSession> sessions, double nothing, double blades, double positions, double both, double slip) {
        GroupHypotheses all = GroupHypotheses.of(SwapFit.of(sessions).model());
        assertThat(all.probability(Family.NOTHING)).isCloseTo(nothing, within(EIGHT_DIGITS));
        assertThat(all.probability(Family.BLADES)).isCloseTo(blades, within(EIGHT_DIGITS));
        assertThat(all.probability(Family.POSITIONS)).isCloseTo(positions, within(EIGHT_DIGITS));
        assertThat(all.probability(Family.BOTH)).isCloseTo(both, within(EIGHT_DIGITS));
        assertThat(all.probability(e -> e.slip().isPresent())).isCloseTo(slip, within(EIGHT_DIGITS));
    }

    @Test
    void chancesAreThoseOfAllExplanationsTogether() {
        assertChances(
                three(),
                0.0004315506728579517,
                0.9155383039776501,
                0.0002164441499320662,
                0.08381370119956023,
                0.023457203812108068);
        assertChances(
                gross(),
                2.1457194615606513e-05,
                1.0806167044461281e-05,
                1.0132464022752624e-05,
                0.9999576041743171,
                0.09802972862354555);
        assertChances(
                List.of(
                        marked("ABCD", 0.6, 0.1234, 2.4567, -0.2345, 1.5432),
                        marked("BCDA", 0.6, 1.3456, -1.0567, 2.8913, 0.4321)),
                0.3632484910961831,
                0.4852865841813625,
                0.04807435823404601,
                0.10339056648840989,
                0.1292583816926239);
        assertChances(
                List.of(
                        marked("AB", 0.4, 0.1234, 1.9567),
                        marked("BA", 0.5, 0.3456, 0.0567),
                        marked("AB", 0.5, 0.1111, 2.3456)),
                0.14498903509528843,
                0.3973831824567498,
                0.14884869982080054,
                0.308779082627162,
                0.018050478394412012);
    }

    @Test
    void whatLayoutsWillTellIsTheVarianceOfTheLeastKnownDifference() {
        SwapFit fit = SwapFit.of(three());
        Information known = new Information(3, fit.blades());
        for (int s = 0; s < 2; s++) {
            known.add(fit.sessions().get(s), fit.model().errorsMm().get(s));
        }
        assertThat(known.worstVariance()).isCloseTo(0.26444444444444476, within(EIGHT_DIGITS));
        assertThat(known.with(Layout.of("B", "A", "C"), 0.3).worstVariance())
                .isCloseTo(0.2167682991607353, within(EIGHT_DIGITS));
    }

    /** The next layout is promised the error of its least known difference, at the scatter in use. */
    @Test
    void theNextLayoutIsPromisedItsError() {
        SwapFit fit = SwapFit.of(three());
        TrackingAnalysis.NextLayout next = TrackingAnalysis.NextLayout.of(fit);
        Information known = new Information(3, fit.blades());
        for (int s = 0; s < 2; s++) {
            known.add(fit.sessions().get(s), fit.model().errorsMm().get(s));
        }
        double least = Permutations.least(
                        fit.latest().layout(),
                        layout -> known.with(layout, 0.5).worstVariance(),
                        java.util.Comparator.<Double>naturalOrder())
                .score();
        double factor = fit.scatter().factor();
        assertThat(next.worstStandardErrorMm() * next.worstStandardErrorMm())
                .isCloseTo(factor * factor * least, within(EIGHT_DIGITS));
        assertThat(fit.readingSigmaMm()).isCloseTo(0.5 * factor, within(EIGHT_DIGITS));
    }

    /** Steps of 1/8 in, 3.175 mm: with an error of 0.3 mm stated √(0.3² + 3.175²/12). */
    @Test
    void marksOnCoarseStepsAreRoundedByTheirStep() {
        TrackingSession coarse = marked("ABCD", 0.3, 3.175, 6.35, -3.175, 9.525);
        assertThat(RoundingStep.seenMm(List.of(coarse))).isCloseTo(3.175, within(EIGHT_DIGITS));
        assertThat(RoundingStep.readingErrorMm(coarse, 3.175)).isCloseTo(0.9643921, within(1e-7));
        // The same on 0.5 mm, which all of them are multiples of; and on none.
        assertThat(RoundingStep.seenMm(List.of(marked("ABCD", 0.3, 1.5, 2.5, -0.5, 4))))
                .isEqualTo(0.5);
        assertThat(RoundingStep.seenMm(List.of(marked("ABCD", 0.3, 1.2345, 2.5, -0.5, 4))))
                .isZero();
    }

    /** Squares of 11 in 4 degrees beside the 5 that a stated error is worth: √(16/9) of what was stated. */
    @Test
    void scatterIsPooledWithWhatWasStated() {
        ReadingScatter scatter = ReadingScatter.of(11, 4);
        assertThat(scatter.factor()).isCloseTo(4 / 3.0, within(1e-12));
        assertThat(scatter.variance()).isCloseTo(16 / 9.0, within(1e-12));
        assertThat(scatter.degreesOfFreedom()).isEqualTo(24);
    }

    /** A tip 3 mm out that goes with blade B, written and told: lengths are told in metres, places counted from one. */
    @Test
    void factsAreToldInMetresAndPlacesFromOne() {
        SwapFit fit = SwapFit.of(three());
        assertThat(fit.positionDeviations()).extracting(SwapFit.Deviation::name).containsExactly("1", "2", "3");
        assertThat(fit.positionContrasts()).extracting(Contrast::first).containsExactly("1", "1", "2");
        assertThat(fit.positionContrasts()).extracting(Contrast::second).containsExactly("2", "3", "3");

        List<StandOut> mirrored = List.of(
                new StandOut("A", true, new Estimate(3, 0.5, 2, 4)),
                new StandOut("B", true, new Estimate(-3, 0.5, -4, -2)));
        List<evenblade.base.fact.Value> values = VerdictFact.one(true, mirrored, List.of(), TrackLimits.USUAL, 100)
                .values();
        evenblade.base.fact.Fact off =
                (evenblade.base.fact.Fact) ((Listed) values.get(0)).items().get(0);
        Estimated estimated = (Estimated) off.values().get(1);
        assertThat(estimated.value()).isCloseTo(0.003, within(1e-12));
        assertThat(estimated.low()).isCloseTo(0.002, within(1e-12));
        assertThat(estimated.high()).isCloseTo(0.004, within(1e-12));
        assertThat(((evenblade.base.fact.Fact) values.get(1)).code()).isEqualTo(TrackingFact.MIRRORED);
        assertThat(((Amount) VerdictFact.withinError(fit).values().get(0)).value())
                .isCloseTo(fit.readingSigmaMm() / 1000, within(1e-12));
        assertThat(((Amount) VerdictFact.contradict(fit).values().get(0)).value())
                .isCloseTo(fit.readingSigmaMm() / 1000, within(1e-12));
    }

    /** What lies between two tips as predicted is what the fit gives for both. */
    @Test
    void aDifferenceOfTipsIsTheDifferenceOfTheirPredictions() {
        SwapFit fit = SwapFit.of(three());
        Layout layout = Layout.of("B", "A", "C");
        List<Double> marks = fit.predictedMarksMm(layout).orElseThrow();
        assertThat(fit.trackDifference(layout, 2, 0).valueMm()).isCloseTo(marks.get(2) - marks.get(0), within(1e-9));
    }

    /** A level added to all marks changes no couple: 1, 0, 0 leaves one phasor of length 1 at position 1. */
    @Test
    void aLevelOfAllMarksTurnsNothing() {
        for (double level : new double[] {0, 7}) {
            assertThat(CoupleEstimate.around(List.of(1 + level, level, level)).re())
                    .isCloseTo(1, within(1e-12));
            assertThat(HubPattern.of(List.of(level, 1 + level, level)).first().degrees())
                    .isCloseTo(240, within(1e-9));
        }
    }
}
