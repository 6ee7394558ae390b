package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import evenblade.base.units.Length;
import evenblade.judge.tracking.TrackVerdict.Kind;
import evenblade.judge.tracking.TrackVerdict.StandOut;
import evenblade.judge.tracking.TrackVerdict.Suspect;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Marks as hands make them: rounded, worse than stated, one of them written down wrong. The figures of the large version
 * are kept in docs/figures.md.
 */
class HandMadeMarksTest {
    private static final double SIXTEENTH = 25.4 / 16;

    private static PencilMarks movedOn(PencilMarks marks, int layouts) {
        for (int s = 0; s < layouts; s++) {
            marks.markedMovedOn(s % marks.blades);
        }
        return marks;
    }

    @Test
    void a_slipped_mark_is_named_by_session_and_position() {
        PencilMarks marks = new PencilMarks(3, 11);
        marks.pencilMm = 0.3;
        marks.statedMm = 0.4;
        marks.bladeMm[2] = 4.8;
        TrackVerdict verdict = movedOn(marks, 3).slipped(1, 0, -3 * SIXTEENTH).verdict();
        assertThat(verdict.kind()).isEqualTo(Kind.MARKS_CONTRADICT);
        Suspect suspect = verdict.suspect().orElseThrow();
        assertThat(suspect.session()).isEqualTo(2);
        assertThat(suspect.position()).isEqualTo(1);
        assertThat(suspect.offMm()).isCloseTo(-4.76, within(1.2));
        assertThat(verdict.names()).isEmpty();
        assertThat(verdict.perhaps()).extracting(StandOut::name).containsExactly("C");
    }

    @Test
    void a_little_beside_much_is_said_to_be_beside_the_point() {
        PencilMarks marks = new PencilMarks(3, 5);
        marks.pencilMm = 0.03;
        marks.statedMm = 0.05;
        marks.bladeMm[0] = 0.6;
        marks.placeMm[1] = 3.5;
        TrackVerdict verdict = movedOn(marks, 3).verdict();
        assertThat(verdict.kind()).isEqualTo(Kind.POSITION);
        assertThat(verdict.names()).containsExactly("2");
        assertThat(verdict.perhaps()).extracting(StandOut::name).containsExactly("A");
    }

    @Test
    void marks_beyond_their_limit_are_never_alike() {
        for (int seed = 0; seed < 60; seed++) {
            PencilMarks marks = new PencilMarks(3, seed);
            marks.pencilMm = 1.6;
            marks.statedMm = 0.5;
            movedOn(marks, 2);
            boolean beyond = marks.sessions().stream().anyMatch(s -> s.spreadMm() > 25.4 / 8);
            if (beyond) {
                assertThat(marks.verdict().kind()).isNotEqualTo(Kind.WITHIN_READING_ERROR);
            }
        }
    }

    @Test
    void the_step_of_the_rule_is_seen_in_the_readings() {
        assertThat(step(0, 1 / 16.0 * 25.4, 3 / 16.0 * 25.4)).isCloseTo(SIXTEENTH, within(1e-9));
        assertThat(step(0, 1.5, 3)).isEqualTo(0.5);
        assertThat(step(0.3, 1.6, 4.9)).isEqualTo(0.1);
        assertThat(step(0, 2, 5)).isEqualTo(1.0);
        assertThat(step(0, 1.2345, 5)).isZero();
        assertThat(step(0, 0, 0)).isZero();
        // Eighths are believed only of four readings off zero.
        assertThat(step(0, 3.175, 6.35)).isCloseTo(SIXTEENTH, within(1e-9));
        assertThat(step(3.175, 3.175, 6.35, 9.525)).isCloseTo(3.175, within(1e-9));
    }

    private static double step(double... marksMm) {
        List<Length> marks = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (double mark : marksMm) {
            names.add(String.valueOf((char) ('A' + marks.size())));
            marks.add(Length.ofMillimetres(mark));
        }
        return RoundingStep.seenMm(
                List.of(TrackingSession.of(SwapTest.START, new Layout(names), marks, Length.ofMillimetres(0.5))));
    }

    /** Share in per cent of invented jobs whose verdict is as asked. */
    private static double percent(
            int blades, int layouts, int trials, BiConsumer<PencilMarks, Integer> made, Predicate<TrackVerdict> asked) {
        int found = 0;
        for (int seed = 0; seed < trials; seed++) {
            PencilMarks marks = new PencilMarks(blades, 7_000_000L + seed * 131L + layouts);
            made.accept(marks, layouts);
            found += asked.test(marks.verdict()) ? 1 : 0;
        }
        return 100.0 * found / trials;
    }

    private static boolean blamed(TrackVerdict verdict) {
        return verdict.kind() == Kind.BLADE || verdict.kind() == Kind.POSITION || verdict.kind() == Kind.BOTH;
    }

    private static boolean alike(TrackVerdict verdict) {
        return verdict.kind() == Kind.WITHIN_READING_ERROR;
    }

    private static void even(PencilMarks marks, int layouts, double pencilMm, double statedMm, double divisionMm) {
        marks.pencilMm = pencilMm;
        marks.statedMm = statedMm;
        marks.divisionMm = divisionMm;
        movedOn(marks, layouts);
    }

    private static void slip(PencilMarks marks, int layouts) {
        marks.pencilMm = 0.4;
        marks.statedMm = 0.4;
        marks.bladeMm[marks.any(marks.blades)] = 4.8;
        movedOn(marks, layouts)
                .slipped(
                        marks.any(layouts),
                        marks.any(marks.blades),
                        marks.any(2) == 0 ? 3 * SIXTEENTH : -3 * SIXTEENTH);
    }

    private static void oneOut(PencilMarks marks, int layouts) {
        marks.pencilMm = 1.0;
        marks.statedMm = 0.5;
        marks.bladeMm[marks.any(marks.blades)] = 3.5;
        movedOn(marks, layouts);
    }

    @Test
    void nobody_is_blamed_for_a_rough_rule_or_a_boastful_error() {
        // 150 tries: 8 % would be exceeded by 2.2 standard errors at 13 %.
        assertThat(percent(3, 3, 150, (m, l) -> even(m, l, 0.5, 0.5, SIXTEENTH), HandMadeMarksTest::blamed))
                .isLessThan(13);
        assertThat(percent(3, 3, 150, (m, l) -> even(m, l, 1.0, 0.5, 0), HandMadeMarksTest::blamed))
                .isLessThan(18);
        assertThat(percent(3, 3, 150, HandMadeMarksTest::oneOut, HandMadeMarksTest::alike))
                .isLessThan(5);
    }

    @ParameterizedTest
    @Tag("long")
    @CsvSource({"2,2", "2,3", "2,4", "3,2", "3,3", "3,4", "4,2", "4,3", "4,4", "5,2", "5,3", "5,4", "6,2", "6,3", "6,4"
    })
    void many_marks_made_by_hand(int blades, int layouts) {
        assumeTrue(Integer.getInteger("marks.blades", blades) == blades);
        int trials = Integer.getInteger("marks.trials", 600);
        double slipAlike = percent(blades, layouts, trials, HandMadeMarksTest::slip, HandMadeMarksTest::alike);
        double slipSeen =
                percent(blades, layouts, trials, HandMadeMarksTest::slip, v -> v.kind() == Kind.MARKS_CONTRADICT);
        double outAlike = percent(blades, layouts, trials, HandMadeMarksTest::oneOut, HandMadeMarksTest::alike);
        double outNamed = percent(blades, layouts, trials, HandMadeMarksTest::oneOut, v -> v.kind() == Kind.BLADE);
        double boastful =
                percent(blades, layouts, trials, (m, l) -> even(m, l, 1.0, 0.5, 0), HandMadeMarksTest::blamed);
        double rough =
                percent(blades, layouts, trials, (m, l) -> even(m, l, 0.5, 0.5, SIXTEENTH), HandMadeMarksTest::blamed);
        double half = percent(blades, layouts, trials, (m, l) -> even(m, l, 0.4, 0.4, 0.5), HandMadeMarksTest::blamed);
        System.out.printf(
                Locale.ROOT,
                "| %d | %d | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f | %.1f |%n",
                blades,
                layouts,
                slipAlike,
                slipSeen,
                outAlike,
                outNamed,
                boastful,
                rough,
                half);
        // The bounds asked for, with two standard errors of 600 trials.
        assertThat(slipAlike).isZero();
        assertThat(outAlike).isLessThan(5 + 1.8);
        assertThat(boastful).isLessThan(12 + 2.7);
        assertThat(rough).isLessThan(8 + 2.2);
        assertThat(half).isLessThan(8 + 2.2);
    }
}
