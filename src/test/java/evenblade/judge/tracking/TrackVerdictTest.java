package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.judge.tracking.TrackVerdict.Kind;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.List;
import org.junit.jupiter.api.Test;

class TrackVerdictTest {
    @Test
    void what_moves_with_the_blade_is_the_blades() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(3, 0.4, 1)
                .withBlade(2, 4.0)
                .turnedOn(0)
                .turnedOn(1)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.BLADE);
        assertThat(verdict.names()).containsExactly("C");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(verdict.fact()))
                .contains("goes with the blade")
                .contains("blade C");
        assertThat(verdict.standOuts().get(0).offset().valueMm()).isCloseTo(4.0, within(1.2));
    }

    @Test
    void what_stays_is_the_hubs() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(4, 0.4, 2)
                .withPosition(1, -4.0)
                .turnedOn(0)
                .turnedOn(1)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.POSITION);
        assertThat(verdict.names()).containsExactly("2");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(verdict.fact()))
                .contains("stays on the hub")
                .contains("hub position 2");
    }

    @Test
    void both_are_named_where_both_are_out() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(4, 0.4, 3)
                .withPosition(0, 5.0)
                .withBlade(3, -5.0)
                .turnedOn(0)
                .turnedOn(1)
                .turnedOn(2)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.BOTH);
        assertThat(verdict.names()).containsExactly("D", "1");
    }

    @Test
    void two_of_five_blades_out_are_both_named() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(5, 0.4, 4)
                .withBlade(0, 5.0)
                .withBlade(3, -5.0)
                .turnedOn(0)
                .turnedOn(1)
                .turnedOn(2)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.BLADE);
        assertThat(verdict.names()).containsExactly("A", "D");
    }

    @Test
    void with_two_blades_the_difference_is_known_but_not_which_of_them_is_wrong() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(2, 0.4, 5)
                .withBlade(1, 5.0)
                .turnedOn(0)
                .turnedOn(1)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.BLADE);
        assertThat(verdict.names()).containsExactly("A", "B");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(verdict.fact())).contains("can't say which of them");
    }

    @Test
    void one_layout_never_blames_anybody() {
        TrackVerdict large = TrackVerdict.of(
                SwapTest.even(3, 0.4, 6).withBlade(2, 6.0).turnedOn(0).fit());
        assertThat(large.kind()).isEqualTo(Kind.NOT_SEPARABLE);
        assertThat(large.names()).isEmpty();
        assertThat(Phrases.of(Face.COMMAND_LINE).text(large.fact())).contains("more than the reading error");
        TrackVerdict small =
                TrackVerdict.of(SwapTest.even(3, 0.4, 7).turnedOn(0).fit());
        assertThat(small.kind()).isEqualTo(Kind.NOT_SEPARABLE);
        assertThat(Phrases.of(Face.COMMAND_LINE).text(small.fact())).contains("reading error alone can do");
    }

    @Test
    void an_even_propeller_is_within_reading_error() {
        TrackVerdict verdict =
                TrackVerdict.of(SwapTest.even(3, 0.4, 8).turnedOn(0).turnedOn(1).fit());
        assertThat(verdict.kind()).isEqualTo(Kind.WITHIN_READING_ERROR);
        assertThat(verdict.names()).isEmpty();
    }

    @Test
    void the_blade_that_moved_is_named_although_others_never_did() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(4, 0.4, 9)
                .withBlade(1, 5.0)
                .marked(1, 0, 1, 2, 3)
                .marked(1, 1, 0, 2, 3)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.BLADE);
        assertThat(verdict.names()).containsExactly("B");
    }

    @Test
    void a_blade_that_never_moved_is_not_told_from_its_position() {
        TrackVerdict verdict = TrackVerdict.of(SwapTest.even(4, 0.4, 10)
                .withBlade(3, 5.0)
                .marked(1, 0, 1, 2, 3)
                .marked(1, 1, 0, 2, 3)
                .fit());
        assertThat(verdict.kind()).isEqualTo(Kind.NOT_SEPARABLE);
        assertThat(verdict.names()).isEmpty();
        assertThat(Phrases.of(Face.COMMAND_LINE).text(verdict.fact()))
                .contains("blade D")
                .contains("hub position 4");
    }

    @Test
    void the_words_of_the_kinds_hold_still() {
        assertThat(List.of(Kind.values()).stream().map(Kind::word))
                .containsExactly(
                        "blade", "position", "both", "within-reading-error", "not-separable", "marks-contradict");
    }
}
