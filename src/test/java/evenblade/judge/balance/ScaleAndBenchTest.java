package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.PlanarSpread;
import evenblade.judge.balance.BalanceRequest.HubPlace;
import evenblade.judge.balance.HubMoments.BladeMoment;
import evenblade.judge.tracking.Layout;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Blades on the scale, hubs on knife edges; numbers computed from the definitions. */
class ScaleAndBenchTest {
    private static final Map<String, BladeMoment> BLADES = Map.of(
            "A", new BladeMoment("A", 1_000_000, 300),
            "B", new BladeMoment("B", 1_002_000, 300),
            "C", new BladeMoment("C", 1_002_000, 300),
            "D", new BladeMoment("D", 1_000_000, 300));

    @Test
    void oppositeBladesOfOneWeightLeaveNothing() {
        assertThat(HubMoments.unbalance(Layout.of("A", "B", "D", "C"), BLADES).gmm())
                .isCloseTo(0, within(1e-6));
        // 2000 g·mm more at 90° and at 180°: √2·2000 at 135°.
        Unbalance bad = HubMoments.unbalance(Layout.of("A", "B", "C", "D"), BLADES);
        assertThat(bad.gmm()).isCloseTo(2828.427, within(1e-3));
        assertThat(bad.angleDeg()).isCloseTo(135, within(1e-6));
        assertThat(HubMoments.standardErrorGmm(BLADES)).isCloseTo(424.264, within(1e-3));
    }

    @Test
    void massAndTrackAreShownSideBySide() {
        Layout now = Layout.of("A", "B", "C", "D");
        List<HubMoments.Option> choices =
                HubMoments.choices(now, BLADES, l -> Optional.of(l.blades().equals(now.blades()) ? 0.5 : 2.0));

        assertThat(choices).extracting(c -> c.layout().text()).contains("1=A, 2=B, 3=C, 4=D");
        assertThat(choices.get(0).unbalance().gmm()).isCloseTo(0, within(1e-6));
        assertThat(choices).allSatisfy(c -> assertThat(c.trackSpreadMm()).isPresent());
    }

    /** Two of four layouts have track that can be told: they are held against each other, the rest by mass. */
    @Test
    void aLayoutWhoseTrackCantBeToldDoesntPassForOneThatTracks() {
        Layout now = Layout.of("A", "B", "C", "D");
        List<HubMoments.Option> choices = HubMoments.choices(
                now, BLADES, l -> l.blades().equals(now.blades()) ? Optional.of(0.5) : Optional.empty());

        assertThat(choices)
                .filteredOn(c -> c.trackSpreadMm().isPresent())
                .singleElement()
                .satisfies(c -> assertThat(c.layout()).isEqualTo(now));
        assertThat(choices.get(0).trackSpreadMm()).isEmpty();
    }

    /** √((s² + Σ(x − mean)²)/n)/√n: stated 6, squares 8, three weighings: √(44/3)/√3. */
    @Test
    void weighingsAgainShowTheirOwnErrorBesideTheStatedOne() {
        BladeMoment moment = BladeMoment.of("A", List.of(100.0, 104.0, 102.0), 6);
        assertThat(moment.gmm()).isEqualTo(102);
        assertThat(moment.standardErrorGmm()).isCloseTo(Math.sqrt(44) / 3, within(1e-12));
        assertThat(BladeMoment.of("A", List.of(100.0), 50).standardErrorGmm()).isEqualTo(50);
        assertThat(BladeMoment.of("A", List.of(100.0, 100.0), 50).standardErrorGmm())
                .isCloseTo(25, within(1e-12));
    }

    /** Friction 400 g·mm, light side 250 g·mm at 30°: each place just turns at 400 + 250·cos(θ − 30°). */
    @Test
    void testMassesRoundTheHubGiveFrictionAndLightSide() {
        List<Weight> tests = java.util.stream.IntStream.range(0, 6)
                .mapToObj(i -> Weight.of((400 + 250 * Math.cos(Math.toRadians(60 * i - 30))) / 50, 50, 60 * i))
                .toList();
        BenchReadings bench = BenchReadings.of(tests, 20).orElseThrow();

        assertThat(bench.frictionGmm()).isCloseTo(400, within(1e-6));
        assertThat(bench.correction().gmm()).isCloseTo(250, within(1e-6));
        assertThat(bench.correction().angleDeg()).isCloseTo(30, within(1e-6));
        assertThat(bench.belowFriction()).isTrue();
        assertThat(bench.alongSeen()).isTrue();
        // σ·√(2/N) in each part.
        assertThat(bench.errorAlongGmm()).isCloseTo(20 * Math.sqrt(2 / 6.0), within(1e-6));
        assertThat(bench.errorAcrossGmm()).isCloseTo(20 * Math.sqrt(2 / 6.0), within(1e-6));
        assertThat(BenchReadings.of(tests.subList(0, 2), 20)).isEmpty();
        // 217 along and 125 across against twice the error: 92 and 92, then 139 and 139, then 231 and 231.
        assertThat(BenchReadings.of(tests, 80).orElseThrow().acrossSeen()).isTrue();
        assertThat(BenchReadings.of(tests, 120).orElseThrow().alongSeen()).isTrue();
        assertThat(BenchReadings.of(tests, 120).orElseThrow().acrossSeen()).isFalse();
        assertThat(BenchReadings.of(tests, 200).orElseThrow().alongSeen()).isFalse();
    }

    /** 2828 g·mm as the blades sit, nothing in the best layout: clearly better while an error is below half of that. */
    @Test
    void bladesAreMovedForMoreThanErrorsCanMake() {
        Layout now = Layout.of("A", "B", "C", "D");
        List<HubMoments.Option> choices = HubMoments.choices(now, BLADES, l -> Optional.empty());
        Unbalance sits = HubMoments.unbalance(now, BLADES);
        BalanceAtRest.Scale fine = new BalanceAtRest.Scale(List.of(), sits, choices, 1400);
        assertThat(fine.betterGmm()).isCloseTo(2000 * Math.sqrt(2), within(1e-6));
        assertThat(fine.clearlyBetter()).isTrue();
        assertThat(new BalanceAtRest.Scale(List.of(), sits, choices, 1430).clearlyBetter())
                .isFalse();
    }

    /** One place 60° off the light side: 100 g·mm · cos 60° at 10 mm are 5 g, and 100 · sin 60° stay. */
    @Test
    void onePlaceAsideTakesWhatItCan() {
        Split split = Split.exact(Unbalance.of(10, 10, 0), List.of(new HubPlace("only", 60, 10)))
                .orElseThrow();
        assertThat(split.shares()).singleElement().satisfies(s -> assertThat(s.massG())
                .isCloseTo(5, within(1e-9)));
        assertThat(split.leftGmm()).isCloseTo(50 * Math.sqrt(3), within(1e-9));
    }

    /**
     * A check run against a round prediction of variance 1 about (3, 4), read with a standard error of 2. With a phase:
     * F with 2 and 6 degrees has the tail (1 + 2f/6)⁻³, and (8, 4) lies 25/5 off, so f = 2.5. About zero without a phase:
     * Rayleigh, its standard deviation widened by Student's t to the normal quantile, 2.4469 to 1.95996 in any table.
     */
    @Test
    void aCheckRunIsHeldAgainstWhatWasPredicted() {
        PlanarSpread line = new PlanarSpread(new Phasor(3, 4), 1, 0, 1);
        double deg = Math.toDegrees(Math.atan2(4, 8));
        WeightedReading run = WeightedReading.withPhase(Math.sqrt(80), deg, 2);
        assertThat(new Residual(5, 0, 0, line, 6).check(run, true).chance())
                .isCloseTo(Math.pow(1 + 2.5 / 3, -3), within(1e-9));
        PlanarSpread aboutZero = new PlanarSpread(Phasor.ZERO, 1, 0, 1);
        double widened = 5 * Math.pow(2.4469 / 1.95996, 2);
        for (double amplitude : new double[] {1, 7}) {
            double above = Math.exp(-amplitude * amplitude / (2 * widened));
            assertThat(new Residual(0, 0, 0, aboutZero, 6)
                            .check(WeightedReading.withoutPhase(amplitude, 2), false)
                            .chance())
                    // The table's last place: 2e-5 of the width.
                    .isCloseTo(2 * Math.min(above, 1 - above), within(1e-4));
        }
    }
}
