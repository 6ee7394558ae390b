package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.WarningCode;
import evenblade.base.units.Length;
import java.util.List;
import org.junit.jupiter.api.Test;

class SwapFitTest {
    @Test
    void exact_marks_of_a_swapped_propeller_give_the_true_shares_back() {
        SwapTest hub = SwapTest.even(3, 0, 1)
                .withBlade(2, 3.0)
                .withPosition(0, -0.6)
                .marked(1, 0, 1, 2)
                .marked(1, 2, 0, 1);
        SwapFit fit = hub.fit();
        assertThat(fit.separable()).isTrue();
        for (int i = 0; i < 3; i++) {
            assertThat(fit.bladeDeviations().get(i).estimate().orElseThrow().valueMm())
                    .isCloseTo(hub.trueBladeDeviationMm(i), within(1e-9));
            assertThat(fit.positionDeviations().get(i).estimate().orElseThrow().valueMm())
                    .isCloseTo(hub.truePositionDeviationMm(i), within(1e-9));
        }
        assertThat(fit.bladeContrasts()).hasSize(3);
        assertThat(fit.bladeContrasts().get(1).first()).isEqualTo("A");
        assertThat(fit.bladeContrasts().get(1).second()).isEqualTo("C");
        assertThat(fit.bladeContrasts().get(1).difference().valueMm()).isCloseTo(-3.0, within(1e-9));
    }

    @Test
    void two_blades_swapped_have_the_error_that_a_pencil_and_paper_give() {
        // t_A − t_B = ((y11 − y12) − (y21 − y22))/2, variance 4σ²/4 = σ².
        SwapFit fit = SwapTest.even(2, 0.4, 2).marked(1, 0, 1).marked(1, 1, 0).fit();
        Estimate difference = fit.bladeContrasts().get(0).difference();
        assertThat(difference.standardErrorMm() / fit.scatter().factor()).isCloseTo(0.4, within(1e-12));
    }

    @Test
    void one_layout_tells_blade_and_position_together_only_however_often_it_is_marked() {
        SwapFit fit = SwapTest.even(3, 0, 3)
                .withBlade(1, 2.0)
                .marked(3, 0, 1, 2)
                .marked(2, 0, 1, 2)
                .fit();
        assertThat(fit.separable()).isFalse();
        assertThat(fit.nothingSeparable()).isTrue();
        assertThat(fit.bladeDeviations()).allMatch(d -> d.estimate().isEmpty());
        assertThat(fit.positionContrasts()).isEmpty();
        assertThat(fit.bladesAlike()).isEmpty();
        List<Estimate> together = fit.predictedTrack(Layout.of("A", "B", "C")).orElseThrow();
        assertThat(together.get(1).valueMm()).isCloseTo(2.0 * 2 / 3, within(1e-9));
        assertThat(fit.predictedTrack(Layout.of("B", "A", "C"))).isEmpty();
    }

    @Test
    void with_only_two_of_four_exchanged_only_their_difference_is_known() {
        SwapFit fit = SwapTest.even(4, 0, 4)
                .withBlade(1, 2.0)
                .marked(1, 0, 1, 2, 3)
                .marked(1, 1, 0, 2, 3)
                .fit();
        assertThat(fit.separable()).isFalse();
        assertThat(fit.nothingSeparable()).isFalse();
        assertThat(fit.bladeContrasts()).hasSize(1);
        assertThat(fit.bladeContrasts().get(0).difference().valueMm()).isCloseTo(-2.0, within(1e-9));
        assertThat(fit.positionContrasts()).hasSize(1);
    }

    @Test
    void repeats_refine_the_reading_error_and_bad_repeats_replace_it() {
        SwapTest steady = SwapTest.even(3, 0.4, 5).marked(6, 0, 1, 2);
        assertThat(steady.fit().scatter().fromReadings()).isEqualTo(15);
        assertThat(steady.fit().scatter().statedIsTooSmall()).isFalse();
        // The same marks with a tenth of the reading error stated: not believed.
        List<TrackingSession> boastful = steady.sessions().stream()
                .map(s -> new TrackingSession(s.at(), s.layout(), s.readings(), Length.ofMillimetres(0.04)))
                .toList();
        ReadingScatter scatter = SwapFit.of(boastful).scatter();
        assertThat(scatter.statedIsTooSmall()).isTrue();
        assertThat(scatter.factor() * 0.04).isBetween(0.2, 0.7);
        assertThat(TrackingAnalysis.of(boastful).warnings())
                .anyMatch(w -> w.code() == WarningCode.READINGS_SCATTER_MORE);
    }

    @Test
    void a_constant_added_to_all_marks_of_a_session_changes_nothing() {
        SwapTest hub = SwapTest.even(3, 0.4, 6).withBlade(0, 2).turnedOn(0).turnedOn(1);
        List<TrackingSession> moved = hub.sessions().stream()
                .map(s -> TrackingSession.of(
                        s.at(),
                        s.layout(),
                        s.marksMm().stream()
                                .map(mm -> Length.ofMillimetres(mm + 25))
                                .toList(),
                        s.sigma()))
                .toList();
        for (int i = 0; i < 3; i++) {
            assertThat(SwapFit.of(moved)
                            .bladeDeviations()
                            .get(i)
                            .estimate()
                            .orElseThrow()
                            .valueMm())
                    .isCloseTo(
                            hub.fit()
                                    .bladeDeviations()
                                    .get(i)
                                    .estimate()
                                    .orElseThrow()
                                    .valueMm(),
                            within(1e-9));
        }
    }
}
