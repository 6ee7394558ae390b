package evenblade.judge.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
        assertThat(BenchReadings.of(tests.subList(0, 2), 20)).isEmpty();
    }
}
