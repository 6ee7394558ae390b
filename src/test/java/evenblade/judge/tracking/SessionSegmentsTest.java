package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where marks part and where they stay together, on hubs of known truth read to half a millimetre. */
class SessionSegmentsTest {
    private static final int TRIALS = 1000;
    private static final double SIGMA_MM = 0.5;

    /** Between the first two of the sessions, which are an hour apart. */
    private static final Instant IN_BETWEEN = SwapTest.START.plusSeconds(1800);

    @Test
    void a_shim_under_a_blade_that_stayed_begins_a_new_spell() {
        // Both spells differ by −4 mm at one tip: Σd² about its mean is 16·2/3, over 2σ² that is 21 on two degrees of
        // freedom,
        // far beyond the 9.2 that chance passes once in a hundred. Noise brings it below only rarely.
        int parted = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            SwapTest hub = SwapTest.even(3, SIGMA_MM, seed).withBlade(1, 4).marked(1, 0, 1, 2);
            List<TrackingSession> sessions =
                    hub.withBlade(1, 0).marked(1, 0, 1, 2).sessions();
            parted += SessionSegments.part(sessions, List.of(IN_BETWEEN)).size() - 1;
        }
        // Noncentral chi-square: P(χ'²(2, 21.3) > 9.21) = 0.957, by SciPy 1.17, ncx2.
        assertThat(parted).isBetween(935, 975);
    }

    @Test
    void a_change_that_moved_nothing_parts_one_case_in_a_hundred() {
        int parted = 0;
        for (int seed = 0; seed < TRIALS; seed++) {
            List<TrackingSession> sessions = SwapTest.even(3, SIGMA_MM, seed)
                    .marked(1, 0, 1, 2)
                    .marked(1, 0, 1, 2)
                    .sessions();
            parted += SessionSegments.part(sessions, List.of(IN_BETWEEN)).size() - 1;
        }
        // 10 expected, standard deviation 3.1.
        assertThat(parted).isBetween(1, 20);
    }

    @Test
    void without_an_entered_change_nothing_parts_and_no_session_is_lost() {
        SwapTest hub = SwapTest.even(3, SIGMA_MM, 7).withBlade(1, 9).marked(1, 0, 1, 2);
        List<TrackingSession> sessions = hub.withBlade(1, 0).marked(1, 0, 1, 2).sessions();
        Instant before = SwapTest.START.minusSeconds(60);
        Instant after = SwapTest.START.plusSeconds(7200);
        assertThat(SessionSegments.part(sessions, List.of(before, after))).containsExactly(sessions);
    }

    @Test
    void blades_moved_round_the_hub_are_no_new_spell_however_far_out_one_is() {
        List<TrackingSession> sessions = SwapTest.even(3, SIGMA_MM, 11)
                .withBlade(2, 8)
                .marked(1, 0, 1, 2)
                .turnedOn(1)
                .turnedOn(2)
                .sessions();
        assertThat(SessionSegments.part(sessions, List.of(IN_BETWEEN))).hasSize(1);
    }

    @Test
    void spells_keep_the_order_of_time() {
        SwapTest hub = SwapTest.even(3, SIGMA_MM, 3).withBlade(1, 9).marked(1, 0, 1, 2);
        List<TrackingSession> sessions =
                hub.withBlade(1, 0).marked(1, 0, 1, 2).marked(1, 0, 1, 2).sessions();
        List<TrackingSession> flat = new ArrayList<>();
        List<List<TrackingSession>> spells = SessionSegments.part(sessions, List.of(IN_BETWEEN));
        spells.forEach(flat::addAll);
        assertThat(spells).hasSize(2);
        assertThat(flat).isEqualTo(sessions);
    }
}
