package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.WarningCode;
import evenblade.base.units.Length;
import evenblade.judge.tracking.TrackingAnalysis.NextLayout;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LayoutSearchTest {
    @ParameterizedTest
    @CsvSource({"2,1", "2,2", "3,1", "3,2", "3,3", "4,1", "4,2", "4,3"})
    void no_other_layout_lowers_the_worst_error_more(int blades, int sessions) {
        assertNoneBetter(blades, sessions, blades * 10 + sessions);
    }

    static void assertNoneBetter(int blades, int sessions, long seed) {
        SwapTest hub = SwapTest.even(blades, 0.4, seed);
        for (int s = 0; s < sessions; s++) {
            hub.shuffled();
        }
        SwapFit fit = hub.fit();
        NextLayout next = NextLayout.of(fit);
        double proposed = worstError(hub.sessions(), next.layout());
        assertThat(next.worstStandardErrorMm() / fit.scatter().factor()).isCloseTo(proposed, within(1e-9));
        int moved = next.layout().movedFrom(fit.latest().layout());
        for (Layout other : Permutations.all(fit.latest().layout())) {
            double error = worstError(hub.sessions(), other);
            assertThat(proposed).as("against " + other.text()).isLessThanOrEqualTo(error * (1 + 1e-7));
            if (error <= proposed * (1 + 1e-10)) {
                assertThat(moved)
                        .isLessThanOrEqualTo(other.movedFrom(fit.latest().layout()));
            }
        }
    }

    /** By the long way: fit the sessions with the layout added, any marks, and look at all differences. */
    private static double worstError(List<TrackingSession> sessions, Layout next) {
        List<TrackingSession> more = new ArrayList<>(sessions);
        Length zero = Length.ofMillimetres(0);
        more.add(TrackingSession.of(
                SwapTest.START, next, next.blades().stream().map(b -> zero).toList(), Length.ofMillimetres(0.4)));
        SwapFit fit = SwapFit.of(more);
        if (!fit.separable()) {
            return Double.POSITIVE_INFINITY;
        }
        double worst = 0;
        for (Contrast contrast : fit.bladeContrasts()) {
            worst = Math.max(worst, contrast.difference().standardErrorMm());
        }
        for (Contrast contrast : fit.positionContrasts()) {
            worst = Math.max(worst, contrast.difference().standardErrorMm());
        }
        return worst / fit.scatter().factor();
    }

    @Test
    void after_one_layout_of_three_all_blades_move_on() {
        NextLayout next = NextLayout.of(SwapTest.even(3, 0.4, 1).turnedOn(0).fit());
        assertThat(next.blades()).isEqualTo(3);
        assertThat(next.allTried()).isTrue();
    }

    @Test
    void the_layout_to_keep_has_the_least_spread_of_all() {
        // A high blade belongs on the low position.
        SwapTest hub = SwapTest.even(3, 0, 2)
                .withBlade(0, 2.0)
                .withPosition(1, -1.5)
                .turnedOn(0)
                .turnedOn(1);
        BestLayout best = BestLayout.of(hub.fit());
        assertThat(best.layout().at(2)).isEqualTo("A");
        for (Layout other : Permutations.all(Layout.of("A", "B", "C"))) {
            assertThat(hub.trueSpreadMm(best.layout())).isLessThanOrEqualTo(hub.trueSpreadMm(other) + 1e-9);
        }
        assertThat(best.predictedSpread().valueMm()).isCloseTo(0.5, within(1e-6));
        assertThat(best.predictedSpread().lowMm()).isZero();
        assertThat(best.spreadNow().valueMm())
                .isCloseTo(hub.trueSpreadMm(hub.fit().latest().layout()), within(1e-6));
    }

    @Test
    void with_one_layout_tried_there_is_nothing_to_choose_from() {
        BestLayout best = BestLayout.of(
                SwapTest.even(3, 0.4, 3).withBlade(0, 5).turnedOn(0).fit());
        assertThat(best.layout()).isEqualTo(Layout.of("A", "B", "C"));
        assertThat(best.blades()).isZero();
    }

    @Test
    void twelve_blades_are_searched_with_a_few_rounds_of_exchanges() {
        Layout now = SwapTest.even(12, 0.4, 4)
                .withBlade(3, 4)
                .turnedOn(0)
                .fit()
                .latest()
                .layout();
        List<String> wanted = new ArrayList<>(now.blades());
        Collections.reverse(wanted);
        AtomicInteger judged = new AtomicInteger();
        Permutations.Judged<Integer> best = Permutations.least(
                now,
                layout -> {
                    judged.incrementAndGet();
                    int wrong = 0;
                    for (int p = 0; p < wanted.size(); p++) {
                        wrong += wanted.get(p).equals(layout.blades().get(p)) ? 0 : 1;
                    }
                    return wrong;
                },
                Comparator.<Integer>naturalOrder());
        assertThat(best.layout().blades()).isEqualTo(wanted);
        // 12 turns, then rounds of 12·11/2 exchanges: six bring it there, a seventh finds nothing better.
        // All permutations would be 479 001 600.
        assertThat(judged.get()).isLessThanOrEqualTo(12 + 7 * 66);
    }

    @Test
    void six_blades_have_720_layouts_and_twelve_do_not_blow_up() {
        assertThat(Permutations.all(Layout.of("A", "B", "C", "D", "E", "F"))).hasSize(720);
        SwapTest twelve = SwapTest.even(12, 0.4, 4).withBlade(3, 4).turnedOn(0).turnedOn(1);
        TrackingAnalysis analysis = TrackingAnalysis.of(twelve.sessions());
        assertThat(analysis.verdict().names()).containsExactly("D");
        assertThat(analysis.nextLayout().allTried()).isFalse();
        assertThat(analysis.warnings()).anyMatch(w -> w.code() == WarningCode.LAYOUTS_NOT_ALL_TRIED);
        assertThat(analysis.bestLayout().predictedSpread().valueMm())
                .isLessThanOrEqualTo(analysis.bestLayout().spreadNow().valueMm() + 1e-9);
    }
}
