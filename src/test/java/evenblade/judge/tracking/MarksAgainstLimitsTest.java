package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.judge.tracking.LimitCheck.Outcome;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Limit.PitchLimit;
import evenblade.machine.installation.Limit.Statistic;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Marks 0.000, +0.090 and −0.020 in against limits as published, computed from their definitions: 0.125 in total and
 * ±0.062 in about the middle (a propeller maker's public owner's manual), 3.0 mm between any two blades (a maker's
 * public manual), 1/16 in (FAA-H-8083-32, read in a restatement).
 */
class MarksAgainstLimitsTest {
    private static final List<Double> MARKS_MM = List.of(0.0, 0.090 * 25.4, -0.020 * 25.4);

    private static Outcome check(Statistic statistic, double inches) {
        return LimitCheck.track(
                        List.of(new Limit(Limit.Subject.TRACK, statistic, Length.ofInches(inches), "invented sheet")),
                        MARKS_MM)
                .get(0)
                .outcome();
    }

    @Test
    void the_same_marks_pass_one_limit_and_fail_another() {
        assertThat(MarkStatistics.measure(Statistic.SPREAD, MARKS_MM).getAsDouble())
                .isCloseTo(2.794, within(1e-9));
        assertThat(check(Statistic.SPREAD, 0.125)).isEqualTo(Outcome.WITHIN);
        assertThat(check(Statistic.SPREAD, 3.0 / 25.4)).isEqualTo(Outcome.WITHIN);
        assertThat(check(Statistic.SPREAD, 1.0 / 16)).isEqualTo(Outcome.BEYOND);
        assertThat(MarkStatistics.measure(Statistic.ABOUT_MIDDLE, MARKS_MM).getAsDouble() / 25.4)
                .isCloseTo(0.055, within(1e-12));
        assertThat(check(Statistic.ABOUT_MIDDLE, 0.062)).isEqualTo(Outcome.WITHIN);
        assertThat(MarkStatistics.measure(Statistic.ABOUT_MEAN, MARKS_MM).getAsDouble() / 25.4)
                .isCloseTo(0.0667, within(5e-5));
        assertThat(check(Statistic.ABOUT_MEAN, 0.062)).isEqualTo(Outcome.BEYOND);
    }

    @Test
    void three_blades_have_no_opposite_one_and_four_have() {
        assertThat(check(Statistic.OPPOSITE_BLADE, 1.0 / 16)).isEqualTo(Outcome.NOT_APPLICABLE);
        assertThat(MarkStatistics.measure(Statistic.OPPOSITE_BLADE, List.of(0.0, 5.0, 1.5, 4.0))
                        .getAsDouble())
                .isCloseTo(1.5, within(1e-12));
    }

    @Test
    void a_mark_on_the_limit_is_within_it_whatever_the_unit() {
        Limit limit = new Limit(Limit.Subject.TRACK, Statistic.SPREAD, Length.ofInches(1.0 / 8), "invented sheet");
        assertThat(LimitCheck.track(List.of(limit), List.of(0.0, 3.175)).get(0).outcome())
                .isEqualTo(Outcome.WITHIN);
        assertThat(Phrases.of(Face.COMMAND_LINE)
                        .text(LimitCheck.track(List.of(limit), List.of(0.0, 3.176))
                                .get(0)
                                .fact()))
                .contains("BEYOND")
                .contains("largest minus smallest")
                .contains("invented sheet");
    }

    @Test
    void an_angle_split_over_a_fifth_of_a_degree_is_beyond_a_limit_of_that() {
        // 0.2° between blades: a composite propeller's public owner's manual.
        PitchLimit limit = new PitchLimit(Statistic.SPREAD, new Angle(0.2), "invented sheet");
        assertThat(LimitCheck.pitch(List.of(limit), List.of(17.4, 17.5, 17.6))
                        .get(0)
                        .outcome())
                .isEqualTo(Outcome.WITHIN);
        assertThat(LimitCheck.pitch(List.of(limit), List.of(17.4, 17.5, 17.7))
                        .get(0)
                        .outcome())
                .isEqualTo(Outcome.BEYOND);
    }
}
