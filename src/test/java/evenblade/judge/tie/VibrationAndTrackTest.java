package evenblade.judge.tie;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Count;
import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import evenblade.judge.tie.TieAnswer.NotYet;
import evenblade.judge.tie.VibrationAndTrack.TieFact;
import evenblade.judge.tracking.HubPattern;
import evenblade.judge.tracking.Layout;
import evenblade.judge.tracking.SwapFit;
import evenblade.judge.tracking.TrackingSession;
import evenblade.machine.installation.HubCounting;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Tie of vibration and track on invented runs of known truth. */
class VibrationAndTrackTest {
    private static final Phasor C = Phasor.ofDegrees(2.0, 30);
    private static final Phasor K = Phasor.ofDegrees(1.5, 250);

    private static Phasor mm(double size, double degrees) {
        return Phasor.ofDegrees(size, degrees);
    }

    @Test
    void two_runs_with_phase_and_different_track_give_both_parts() {
        PhaseTie tie = (PhaseTie)
                new InventedJob(C, K, 0, 1).run(mm(2, 10)).run(mm(2, 130)).tie();
        assertThat(tie.left().value()).isCloseTo(2.0, within(1e-9));
        assertThat(tie.perMillimetrePhasor().degrees()).isCloseTo(250, within(1e-6));
        assertThat(tie.shares().get(0).withTrack().value()).isCloseTo(3.0, within(1e-9));
        assertThat(tie.expected(Phasor.ZERO)).isCloseTo(2.0, within(1e-9));
    }

    @Test
    void counted_with_the_rotation_the_pattern_is_mirrored() {
        InventedJob mirrored =
                new InventedJob(C, K, 0, 1).run(mm(2, -10)).run(mm(1, -130)).run(mm(3, -250));
        List<TieRun> asNoted = mirrored.runs().stream()
                .map(r -> new TieRun(
                        r.label(),
                        r.amplitude(),
                        r.standardError(),
                        r.phaseDegrees(),
                        new Phasor(r.trackMm().re(), -r.trackMm().im()),
                        0,
                        r.pitchDeg(),
                        r.marks(),
                        r.seating()))
                .toList();
        TrackTie tie = ((TieAnswer.Tied) VibrationAndTrack.of(asNoted, HubCounting.WITH_ROTATION)).tie();
        assertThat(tie.left().value()).isCloseTo(2.0, within(1e-9));
        assertThat(tie.perMillimetre().value()).isCloseTo(1.5, within(1e-9));
    }

    @Test
    void the_same_track_in_all_runs_ties_nothing() {
        NotYet answer = (NotYet)
                new InventedJob(C, K, 0.1, 2).run(mm(2, 10)).run(mm(2, 10)).answer();
        assertThat(answer.why().code()).isEqualTo(TieFact.SAME_TRACK);
        assertThat(answer.whatWouldSettle().code()).isEqualTo(TieFact.MOVE_AND_MARK);
        assertThat(new InventedJob(C, K, 0.1, 2).run(mm(2, 10)).answer()).isInstanceOf(NotYet.class);
    }

    @Test
    void pitch_takes_its_own_part_where_it_was_read_in_every_run() {
        Phasor q = Phasor.ofDegrees(4, 100);
        InventedJob job = new InventedJob(C, K, 0, 3)
                .run(mm(2, 10), q, Optional.of(mm(0.3, 0)), true)
                .run(mm(2, 130), q, Optional.of(mm(0.1, 200)), true)
                .run(mm(1, 50), q, Optional.of(mm(0.2, 90)), true)
                .run(mm(3, 250), q, Optional.of(mm(0.3, 310)), true);
        assertThat(job.tie().perDegree().orElseThrow().value()).isCloseTo(4, within(1e-6));
        assertThat(job.tie().left().value()).isCloseTo(2, within(1e-6));
    }

    private static final Phasor Q = Phasor.ofDegrees(4, 100);

    /** Track and angles changed one without the other, nine times. */
    private static InventedJob withPitch(double noise, long seed, int runs) {
        InventedJob job = new InventedJob(C, K, noise, seed);
        List<Phasor> tracks = List.of(
                mm(2, 10),
                mm(2, 130),
                mm(0.5, 260),
                mm(3, 40),
                mm(1, 300),
                mm(2.5, 200),
                mm(3, 100),
                mm(0.2, 0),
                mm(1.5, 330));
        List<Phasor> angles = List.of(
                mm(0.3, 0),
                mm(1.1, 200),
                mm(0.7, 90),
                mm(0.1, 310),
                mm(1.0, 20),
                mm(0.9, 140),
                mm(0.6, 250),
                mm(1.2, 80),
                mm(0.2, 170));
        for (int r = 0; r < runs; r++) {
            job.run(tracks.get(r), Q, Optional.of(angles.get(r)), false);
        }
        return job;
    }

    @Test
    void nine_runs_without_phase_tell_pitch_too() {
        TrackTie tie = withPitch(0, 3, 9).tie();
        assertThat(tie).isInstanceOf(AmplitudeTie.class);
        assertThat(tie.perDegree().orElseThrow().value()).isCloseTo(4, within(1e-3));
        assertThat(tie.perMillimetre().value()).isCloseTo(1.5, within(1e-3));
        assertThat(tie.left().value()).isCloseTo(2, within(1e-3));
        assertThat(withPitch(0.1, 3, 9).tie().trackMatters()).isTrue();
    }

    @Test
    void with_two_blades_six_runs_without_phase_tell_pitch_too() {
        InventedJob job = new InventedJob(C, K, 0, 3);
        double[] track = {2, -1, 0.5, -3, 1, 2.5};
        double[] angle = {0.3, 1.1, -0.7, 0.1, -1, 0.9};
        for (int r = 0; r < track.length; r++) {
            job.run(new Phasor(track[r], 0), Q, Optional.of(new Phasor(angle[r], 0)), false);
        }
        assertThat(job.tie().perDegree().orElseThrow().value()).isCloseTo(4, within(1e-3));
        assertThat(job.tie().left().value()).isCloseTo(2, within(1e-3));
    }

    private static Fact hidden(Fact why) {
        return Fact.of(TieFact.ANGLES_HIDDEN, why);
    }

    @Test
    void with_too_few_runs_for_it_pitch_is_left_out_and_that_is_told() {
        TieAnswer.Tied silent = (TieAnswer.Tied) withPitch(0.1, 3, 8).answer();
        assertThat(silent.tie().perDegree()).isEmpty();
        assertThat(silent.pitchLeftOut())
                .contains(hidden(Fact.of(TieFact.ANGLES_NEED_RUNS_WITHOUT_PHASE, new Count(9))));
        TieAnswer.Tied three = (TieAnswer.Tied) new InventedJob(C, K, 0, 3)
                .run(mm(2, 10), Q, Optional.of(mm(0.3, 0)), true)
                .run(mm(2, 130), Q, Optional.of(mm(0.1, 200)), true)
                .run(mm(1, 50), Q, Optional.of(mm(0.2, 90)), true)
                .answer();
        assertThat(three.pitchLeftOut()).contains(hidden(Fact.of(TieFact.ANGLES_NEED_RUNS, new Count(4))));
        TieAnswer.Tied once = (TieAnswer.Tied) new InventedJob(C, K, 0, 3)
                .run(mm(2, 10), Q, Optional.of(mm(0.3, 0)), true)
                .run(mm(2, 130))
                .answer();
        assertThat(once.pitchLeftOut()).contains(hidden(Fact.of(TieFact.ANGLES_NOT_ALWAYS_READ)));
        assertThat(((TieAnswer.Tied) job(C, K, 0.1, 1, true).answer()).pitchLeftOut())
                .isEmpty();
    }

    @Test
    void tracks_that_differ_by_no_more_than_the_pencil_does_tie_nothing() {
        InventedJob job = new InventedJob(C, K, 0.01, 2).run(mm(2, 10)).run(mm(2.3, 12));
        assertThat(job.answer()).isInstanceOf(TieAnswer.Tied.class);
        List<TieRun> coarse = job.runs().stream()
                .map(r -> new TieRun(
                        r.label(),
                        r.amplitude(),
                        r.standardError(),
                        r.phaseDegrees(),
                        r.trackMm(),
                        0.3,
                        r.pitchDeg(),
                        r.marks(),
                        r.seating()))
                .toList();
        NotYet answer = (NotYet) VibrationAndTrack.of(coarse, HubCounting.AGAINST_ROTATION);
        assertThat(answer.why().code()).isEqualTo(TieFact.SAME_TRACK);
    }

    @Test
    void tips_that_track_as_well_as_the_marks_can_tell_need_no_more_runs() {
        List<TieRun> good = new InventedJob(C, K, 0.1, 2)
                .run(mm(0.2, 10)).run(mm(0.3, 100)).runs().stream()
                        .map(r -> new TieRun(
                                r.label(),
                                r.amplitude(),
                                r.standardError(),
                                r.phaseDegrees(),
                                r.trackMm(),
                                0.3,
                                r.pitchDeg(),
                                r.marks(),
                                r.seating()))
                        .toList();
        NotYet answer = (NotYet) VibrationAndTrack.of(good, HubCounting.WITH_ROTATION);
        assertThat(answer.why().code()).isEqualTo(TieFact.ALL_IN_TRACK);
        assertThat(answer.whatWouldSettle().code()).isEqualTo(TieFact.LOOK_AT_OTHERS);
    }

    @Test
    void what_the_pencil_leaves_open_widens_the_intervals() {
        InventedJob job = new InventedJob(C, K, 0.05, 2).run(mm(2, 10)).run(mm(2, 190));
        List<TieRun> coarse = job.runs().stream()
                .map(r -> new TieRun(
                        r.label(),
                        r.amplitude(),
                        r.standardError(),
                        r.phaseDegrees(),
                        r.trackMm(),
                        0.3,
                        r.pitchDeg(),
                        r.marks(),
                        r.seating()))
                .toList();
        TrackTie tie = ((TieAnswer.Tied) VibrationAndTrack.of(coarse, HubCounting.AGAINST_ROTATION)).tie();
        // k/√2 · 0.3 mm in each part of the mean of two runs, against 0.05/√2.
        double ratio = (tie.left().high() - tie.left().low())
                / (job.tie().left().high() - job.tie().left().low());
        assertThat(ratio).isCloseTo(Math.hypot(0.05, 1.5 * 0.3) / 0.05, within(0.6));
    }

    @Test
    void four_runs_without_phase_give_the_sizes() {
        TrackTie tie = new InventedJob(C, K, 0, 4)
                .silentRun(mm(0.3, 10))
                .silentRun(mm(2, 130))
                .silentRun(mm(1, 260))
                .silentRun(mm(3, 30))
                .tie();
        assertThat(tie).isInstanceOf(AmplitudeTie.class);
        assertThat(tie.left().value()).isCloseTo(2.0, within(1e-3));
        assertThat(tie.perMillimetre().value()).isCloseTo(1.5, within(1e-3));
        assertThat(tie.expected(mm(2, 200)))
                .isCloseTo(C.plus(K.times(mm(2, 200))).magnitude(), within(1e-3));
    }

    @Test
    void fewer_runs_without_phase_only_lie_side_by_side() {
        NotYet answer = (NotYet) new InventedJob(C, K, 0.1, 5)
                .silentRun(mm(0.3, 10))
                .silentRun(mm(2, 130))
                .silentRun(mm(1, 260))
                .answer();
        assertThat(answer.whatWouldSettle()).isEqualTo(Fact.of(TieFact.MARK_OR_MORE_RUNS, new Count(1)));
    }

    @Test
    void one_bad_blade_carried_round_the_hub_has_two_answers_without_phase() {
        NotYet answer = (NotYet) new InventedJob(C, K, 0.1, 6)
                .silentRun(mm(2, 0))
                .silentRun(mm(2, 120))
                .silentRun(mm(2, 240))
                .silentRun(mm(2, 0))
                .answer();
        assertThat(answer.why().code()).isEqualTo(TieFact.TRACKS_ALIKE);
    }

    @Test
    void two_blades_have_their_track_along_one_line() {
        TrackTie tie = new InventedJob(C, K, 0, 7)
                .silentRun(mm(2, 0))
                .silentRun(mm(2, 180))
                .silentRun(mm(0.5, 0))
                .silentRun(mm(1, 180))
                .tie();
        assertThat(tie.left().value()).isCloseTo(2.0, within(1e-3));
        assertThat(tie.perMillimetre().value()).isCloseTo(1.5, within(1e-3));
    }

    @Test
    void where_track_does_nothing_it_is_not_blamed() {
        int blamed = 0;
        for (int seed = 0; seed < 200; seed++) {
            blamed += job(C, Phasor.ZERO, 0.1, seed, true).tie().trackMatters() ? 1 : 0;
        }
        // 5 % of 200 are 10 ± 3.
        assertThat(blamed).isLessThanOrEqualTo(19);
        assertThat(job(C, K, 0.1, 1, true).tie().trackMatters()).isTrue();
        assertThat(job(C, K, 0.1, 1, false).tie().trackMatters()).isTrue();
    }

    /** Five runs with tracks of different place and size. */
    private static InventedJob job(Phasor c, Phasor k, double noise, long seed, boolean phase) {
        InventedJob job = new InventedJob(c, k, noise, seed);
        for (Phasor track : List.of(mm(0.4, 10), mm(2, 130), mm(1, 260), mm(3, 30), mm(2.5, 200))) {
            job.run(track, Phasor.ZERO, Optional.empty(), phase);
        }
        return job;
    }

    @Test
    void the_layout_that_shakes_least_may_not_be_the_one_that_tracks_best() {
        // One blade 2 mm out; where it sits decides whether it works with what the mass leaves or against it.
        Instant at = Instant.parse("2026-03-01T08:00:00Z");
        Length sigma = Length.ofMillimetres(0.1);
        List<TrackingSession> sessions = List.of(
                TrackingSession.of(at, Layout.of("A", "B", "C"), marks(2, 0, 0), sigma),
                TrackingSession.of(at, Layout.of("C", "A", "B"), marks(0, 2, 0), sigma));
        SwapFit fit = SwapFit.of(sessions);
        TrackTie tie = job(C, K, 0.001, 1, true).tie();
        SmoothestLayout best = SmoothestLayout.of(tie, fit);
        double least = Double.POSITIVE_INFINITY;
        int place = 0;
        for (int p = 0; p < 3; p++) {
            List<Double> marks = List.of(p == 0 ? 2.0 : 0.0, p == 1 ? 2.0 : 0.0, p == 2 ? 2.0 : 0.0);
            double shake = C.plus(K.times(HubPattern.of(marks).first())).magnitude();
            if (shake < least) {
                least = shake;
                place = p + 1;
            }
        }
        assertThat(best.layout().at(place)).isEqualTo("A");
        assertThat(best.predicted().value()).isCloseTo(least, within(0.02));
        assertThat(best.predicted().value())
                .isBetween(best.predicted().low(), best.predicted().high());
    }

    private static List<Length> marks(double... mm) {
        return Arrays.stream(mm).mapToObj(Length::ofMillimetres).toList();
    }

    @Test
    void with_phase_the_intervals_hold_the_truth() {
        Coverage coverage = new Coverage();
        for (int seed = 0; seed < 500; seed++) {
            coverage.count(C, K, 0.3, seed, true);
        }
        coverage.assertBetween(0.925, 0.975);
    }

    @Test
    @Tag("long")
    void where_track_does_nothing_it_is_not_blamed_without_phase_either() {
        int blamed = 0;
        for (int seed = 0; seed < 400; seed++) {
            blamed += job(C, Phasor.ZERO, 0.1, seed, false).tie().trackMatters() ? 1 : 0;
        }
        System.out.println("blamed without phase, of 400: " + blamed);
        // 5 % of 400 are 20 ± 4.4; the fit of the amplitudes is curved, so allow for a few more.
        assertThat(blamed).isLessThanOrEqualTo(36);
    }

    @Test
    @Tag("long")
    void coverage_over_sizes_of_noise() {
        for (boolean phase : new boolean[] {true, false}) {
            for (double noise : new double[] {0.05, 0.1, 0.2, 0.4}) {
                for (double left : new double[] {0, 0.5, 2}) {
                    Coverage coverage = new Coverage();
                    for (int seed = 0; seed < (phase ? 2000 : 500); seed++) {
                        coverage.count(Phasor.ofDegrees(left, 30), K, noise, seed, phase);
                    }
                    System.out.printf(
                            Locale.ROOT,
                            "| %s | %.2f | %.1f | %.1f | %.1f | %.1f | %d |%n",
                            phase ? "with" : "without",
                            noise,
                            left,
                            100 * coverage.share(coverage.left),
                            100 * coverage.share(coverage.perMm),
                            100 * coverage.share(coverage.predicted),
                            coverage.untied);
                    // Without phase 500 runs: two standard errors are 0.02; wider intervals than asked are known there.
                    coverage.assertBetween(0.93, phase ? 0.99 : 1.0);
                }
            }
        }
    }

    @Test
    @Tag("long")
    void with_pitch_and_without_phase_the_intervals_hold_the_truth() {
        int[] held = new int[3];
        int trials = 300;
        for (int seed = 0; seed < trials; seed++) {
            TrackTie tie = withPitch(0.1, seed, 9).tie();
            held[0] += Coverage.holds(tie.left(), C.magnitude());
            held[1] += Coverage.holds(tie.perMillimetre(), K.magnitude());
            held[2] += Coverage.holds(tie.perDegree().orElseThrow(), Q.magnitude());
        }
        System.out.printf(
                Locale.ROOT,
                "with pitch, without phase: left %.1f, per mm %.1f, per degree %.1f%n",
                100.0 * held[0] / trials,
                100.0 * held[1] / trials,
                100.0 * held[2] / trials);
        for (int share : held) {
            // 300 runs: two standard errors of a share of 0.95 are 0.025.
            assertThat((double) share / trials).isGreaterThan(0.92);
        }
    }

    /** Counts how often intervals hold the truth. */
    private static final class Coverage {
        int trials;
        int untied;
        int left;
        int perMm;
        int predicted;

        void count(Phasor c, Phasor k, double noise, long seed, boolean phase) {
            TieAnswer answer = job(c, k, noise, seed, phase).answer();
            if (answer instanceof TieAnswer.Tied tied) {
                trials++;
                Phasor other = mm(2, 300);
                left += holds(tied.tie().left(), c.magnitude());
                perMm += holds(tied.tie().perMillimetre(), k.magnitude());
                predicted += holds(
                        tied.tie().predicted(other, 0), c.plus(k.times(other)).magnitude());
            } else {
                untied++;
            }
        }

        private static int holds(Size size, double truth) {
            return size.low() <= truth && truth <= size.high() ? 1 : 0;
        }

        double share(int held) {
            return (double) held / trials;
        }

        void assertBetween(double least, double most) {
            // Two standard errors of a share of 500 runs: 0.02.
            assertThat(share(left)).isBetween(least, most);
            assertThat(share(perMm)).isBetween(least, most);
            assertThat(share(predicted)).isBetween(least, most);
        }
    }

    /** One blade heavy by m, another out of track by 2.4 mm; both turn with the blades when they are moved on. */
    private static InventedJob heavyAndOut(boolean reset) {
        Phasor heavy = Phasor.ofDegrees(2.9, 200);
        InventedJob job = new InventedJob(Phasor.ZERO, K, 0.02, 8);
        String[][] order = {{"A", "B", "C"}, {"C", "A", "B"}, {"B", "C", "A"}};
        for (int turn = 0; turn < 3; turn++) {
            Phasor m = heavy.times(Phasor.ofDegrees(1, -120.0 * turn));
            job.seated(order[turn]).run(mm(2.4, -120.0 * turn), new Phasor(1, 0), Optional.of(m), true);
        }
        if (reset) {
            job.run(mm(0.2, -240), new Phasor(1, 0), Optional.of(heavy.times(Phasor.ofDegrees(1, -240))), true);
        }
        return job;
    }

    /** The same runs, the mass not known to who reads them. */
    private static TieAnswer.Tied unknowing(InventedJob job) {
        return (TieAnswer.Tied) VibrationAndTrack.of(
                job.runs().stream()
                        .map(r -> new TieRun(
                                r.label(),
                                r.amplitude(),
                                r.standardError(),
                                r.phaseDegrees(),
                                r.trackMm(),
                                0,
                                Optional.empty(),
                                r.marks(),
                                r.seating()))
                        .toList(),
                HubCounting.AGAINST_ROTATION);
    }

    @Test
    void blades_moved_on_turn_mass_with_track_and_so_the_answer_says_blades() {
        TieAnswer.Tied moved = unknowing(heavyAndOut(false));
        assertThat(moved.follows()).isEqualTo(TieAnswer.Follows.BLADES);
        // Nothing stays on the hub here.
        assertThat(moved.tie().left().low()).isLessThan(0.05);
    }

    @Test
    void track_reset_where_the_blades_sit_tells_track_from_mass() {
        TieAnswer.Tied reset = unknowing(heavyAndOut(true));
        assertThat(reset.follows()).isEqualTo(TieAnswer.Follows.TRACK);
        assertThat(reset.tie().left().low()).isLessThan(2.9);
        assertThat(reset.tie().left().high()).isGreaterThan(2.9);
        assertThat(reset.tie().left().value()).isCloseTo(2.9, within(0.2));
        assertThat(reset.tie().perMillimetre().value()).isCloseTo(1.5, within(0.1));
    }
}
