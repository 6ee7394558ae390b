package evenblade.judge.tracking;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.Angle;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import evenblade.judge.tracking.RunOutTest.Answer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HubAndFlangeTest {
    private static final Length TIP = Length.ofMillimetres(850);

    private static FaceRunOut runOut(double totalMm, double highDeg) {
        return new FaceRunOut(
                SwapTest.START,
                Length.ofMillimetres(totalMm),
                Length.ofMillimetres(50),
                Optional.of(new Angle(highDeg)));
    }

    @Test
    void a_small_run_out_is_not_small_at_the_tip() {
        // 0.05 mm at 50 mm is 0.85 mm at 850 mm, from the definition.
        assertThat(runOut(0.05, 0).atTip(TIP).millimetres()).isCloseTo(0.85, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 5, 6})
    void a_tilted_disc_is_all_once_a_turn_and_points_to_its_high_place(int blades) {
        List<Double> marks = runOut(0.2, 75).predictedMarksMm(blades, TIP).orElseThrow();
        HubPattern pattern = HubPattern.of(marks);
        assertThat(pattern.first().magnitude()).isCloseTo(1.7, within(1e-9));
        assertThat(pattern.first().degrees()).isCloseTo(360 - 75, within(1e-9));
        pattern.pair().ifPresent(pair -> assertThat(pair.magnitude()).isCloseTo(0, within(1e-9)));
    }

    @Test
    void two_blades_give_one_number_and_opposite_blades_alike_shake_twice_a_turn() {
        HubPattern two = HubPattern.of(List.of(1.0, -0.5));
        assertThat(two.first().re()).isCloseTo(1.5, within(1e-12));
        assertThat(two.first().im()).isCloseTo(0, within(1e-12));
        assertThat(two.pair()).isEmpty();
        HubPattern pairs = HubPattern.of(List.of(1.0, 0.0, 1.0, 0.0));
        assertThat(pairs.first().magnitude()).isCloseTo(0, within(1e-12));
        assertThat(pairs.pair().orElseThrow().magnitude()).isCloseTo(1, within(1e-12));
    }

    @Test
    void a_shift_of_all_marks_is_no_pattern_and_makes_no_couple() {
        List<Double> level = List.of(7.0, 7.0, 7.0);
        assertThat(HubPattern.of(level).first().magnitude()).isCloseTo(0, within(1e-12));
        assertThat(couple(level).newtonMetres()).isCloseTo(0, within(1e-9));
    }

    private static CoupleEstimate couple(List<Double> marksMm) {
        return CoupleEstimate.of(new Mass(2), Length.ofMillimetres(300), TIP, 2400, marksMm);
    }

    @Test
    void one_blade_out_makes_a_couple_of_its_pull_times_its_offset() {
        // By hand: ω = 251.327 /s, m·ω²·r = 37899.3 N, offset 3 mm · 300/850 = 1.05882 mm: 40.129 N·m. The mean taken
        // off changes nothing, because Σ e^{jθ} = 0.
        assertThat(couple(List.of(0.0, 3.0, 0.0)).newtonMetres()).isCloseTo(40.129, within(0.001));
        assertThat(couple(List.of(0.0, 3.0, 0.0)).degrees()).isCloseTo(120, within(1e-9));
    }

    @Test
    void a_degree_of_pitch_on_one_blade_offsets_the_thrust() {
        // By hand: 1.225·5.7·0.1 m·(251.327 /s)²·(0.85 m)³ = 27086 N/rad; ·(π/180)/6 = 78.79 N; ·0.85·(π/180)/8 =
        // 50.23 N·m.
        ThrustOffsetEstimate offset =
                ThrustOffsetEstimate.of(List.of(18.0, 17.0, 17.0), Length.ofMillimetres(100), TIP, 2400);
        assertThat(offset.thrustNewtons()).isCloseTo(78.79, within(0.02));
        assertThat(offset.coupleNewtonMetres()).isCloseTo(50.23, within(0.02));
        assertThat(offset.liftSlopePerRadian()).isEqualTo(5.7);
    }

    @Test
    void pitch_is_told_without_the_protractors_zero() {
        PitchReadings pitch = new PitchReadings(
                SwapTest.START,
                Layout.of("A", "B", "C"),
                ReadingsText.angles("19.0 deg, 19.1 deg, 19.6 deg; 19.2 deg, 19.1 deg, 19.6 deg", 3),
                new Angle(2.0),
                PitchReadings.Reference.HUB,
                Optional.of(Length.ofMillimetres(600)),
                PitchReadings.USUAL_SIGMA);
        assertThat(pitch.bladeAnglesDeg().get(0)).isCloseTo(17.1, within(1e-9));
        assertThat(pitch.spreadDeg()).isCloseTo(0.5, within(1e-9));
        assertThat(pitch.deviationsDeg().get("C")).isCloseTo(0.5 - 0.5 / 3, within(1e-9));
        // Two readings each: σ²/2·(1 − 1/3), σ = 0.1°.
        assertThat(pitch.standardErrorsDeg().get("C")).isCloseTo(0.1 * Math.sqrt(1.0 / 3), within(1e-9));
    }

    private static SwapTest tilted(double totalMm, double highDeg, double sigmaMm, long seed) {
        SwapTest hub = SwapTest.even(3, sigmaMm, seed);
        List<Double> marks = runOut(totalMm, highDeg).predictedMarksMm(3, TIP).orElseThrow();
        for (int p = 0; p < 3; p++) {
            hub.withPosition(p, marks.get(p));
        }
        return hub.turnedOn(0).turnedOn(1).turnedOn(2);
    }

    @Test
    void a_hub_that_shows_what_the_dial_showed_is_explained() {
        SwapFit fit = tilted(0.3, 40, 0.2, 1).fit();
        RunOutTest test = RunOutTest.of(
                        fit, runOut(0.3, 40).predictedMarksMm(3, TIP).orElseThrow())
                .orElseThrow();
        assertThat(test.answer()).isEqualTo(Answer.EXPLAINS);
        assertThat(test.share()).isCloseTo(1, within(0.2));
    }

    @Test
    void a_hub_that_is_out_elsewhere_is_not_cleared_by_the_dial() {
        SwapFit fit = tilted(0.3, 40, 0.2, 2).fit();
        assertThat(RunOutTest.of(fit, runOut(0.3, 130).predictedMarksMm(3, TIP).orElseThrow())
                        .orElseThrow()
                        .answer())
                .isEqualTo(Answer.DOES_NOT_EXPLAIN);
        // Half the run-out in the same place: seen, but the hub shows twice as much.
        assertThat(RunOutTest.of(fit, runOut(0.15, 40).predictedMarksMm(3, TIP).orElseThrow())
                        .orElseThrow()
                        .answer())
                .isEqualTo(Answer.EXPLAINS_PART);
    }

    @Test
    void a_run_out_below_the_pencils_width_cannot_be_told() {
        SwapFit fit = tilted(0.01, 40, 0.5, 3).fit();
        assertThat(RunOutTest.of(fit, runOut(0.01, 40).predictedMarksMm(3, TIP).orElseThrow())
                        .orElseThrow()
                        .answer())
                .isEqualTo(Answer.TOO_SMALL_TO_TELL);
    }

    @Test
    void with_one_layout_the_dial_is_not_tested_against_the_marks() {
        SwapFit fit = SwapTest.even(3, 0.4, 4).turnedOn(0).fit();
        assertThat(RunOutTest.of(fit, runOut(0.3, 0).predictedMarksMm(3, TIP).orElseThrow()))
                .isEmpty();
    }

    @Test
    void the_interval_of_the_share_holds_the_truth() {
        int held = 0;
        int trials = 400;
        List<Double> predicted = runOut(0.2, 40).predictedMarksMm(3, TIP).orElseThrow();
        List<Long> seeds = new ArrayList<>();
        Random random = new Random(5);
        for (int i = 0; i < trials; i++) {
            seeds.add(random.nextLong());
        }
        for (long seed : seeds) {
            RunOutTest test =
                    RunOutTest.of(tilted(0.2, 40, 0.4, seed).fit(), predicted).orElseThrow();
            held += test.shareLow() <= 1 && test.shareHigh() >= 1 ? 1 : 0;
        }
        // Two standard errors of a share of 400 runs: 0.022.
        assertThat((double) held / trials).isBetween(0.925, 0.975);
    }
}
