package evenblade.judge.tie;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Phasor;
import evenblade.machine.installation.HubCounting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** A tie with phase whose blades were moved, by designs small enough to reckon by hand. */
class PhaseTieTest {
    private static final double EXACT = 1e-9; // of rounding
    private static final List<String> ONE = List.of("A", "B", "C");
    private static final List<String> OTHER = List.of("C", "A", "B");

    private static TieRun run(Phasor line, Phasor track, Optional<Phasor> pitch, List<String> seating) {
        return run(line, 1, track, 0, track + " marked" + seating + pitch, pitch, seating);
    }

    private static TieRun run(
            Phasor line,
            double error,
            Phasor track,
            double trackErrorMm,
            String marks,
            Optional<Phasor> pitch,
            List<String> seating) {
        return new TieRun(
                "run",
                line.magnitude(),
                error,
                OptionalDouble.of(line.degrees()),
                track,
                trackErrorMm,
                pitch,
                marks,
                seating);
    }

    private static PhaseTie tie(List<TieRun> runs, boolean pitch, boolean ownRest) {
        return PhaseTie.of(runs, HubCounting.AGAINST_ROTATION, pitch, ownRest).orElseThrow();
    }

    /** c = 20 at 30° in one seating and 25 at 80° in the other, k = 3 at 250°, q = 7 at 100°; nothing scatters. */
    @Test
    void everySeatingHasItsOwnRest() {
        Phasor k = Phasor.ofDegrees(3, 250);
        Phasor q = Phasor.ofDegrees(7, 100);
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Phasor track = Phasor.ofDegrees(1 + i % 3, 70 * i);
            Phasor pitch = Phasor.ofDegrees(0.5 + i % 2, 40 * i * i);
            Phasor rest = i < 4 ? Phasor.ofDegrees(20, 30) : Phasor.ofDegrees(25, 80);
            runs.add(run(
                    rest.plus(k.times(track)).plus(q.times(pitch)), track, Optional.of(pitch), i < 4 ? ONE : OTHER));
        }
        PhaseTie tie = tie(runs, true, true);
        assertThat(tie.perMillimetrePhasor().re()).isCloseTo(k.re(), within(EXACT));
        assertThat(tie.perMillimetrePhasor().im()).isCloseTo(k.im(), within(EXACT));
        assertThat(tie.perDegree().orElseThrow().value()).isCloseTo(7, within(EXACT));
        assertThat(tie.left().value()).isCloseTo(25, within(EXACT));
        Phasor track = Phasor.ofDegrees(2, 111);
        double expected = Phasor.ofDegrees(25, 80)
                .plus(k.times(track))
                .plus(q.times(runs.get(7).pitchDeg().orElseThrow()))
                .magnitude();
        assertThat(tie.expected(track)).isCloseTo(expected, within(EXACT));
        assertThat(tie.predicted(track, 0).value()).isCloseTo(expected, within(EXACT));
    }

    /** Tracks ±1 in both seatings, whose lines differ by d; what neither explains is 1 in every run, by turns. */
    private static boolean oneRestDoes(double d) {
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double seat = i < 2 ? 0.5 : -0.5;
            double side = i % 2 == 0 ? 1 : -1;
            Phasor line = new Phasor(30 + seat * d + 4 * side + 2 * seat * side, 0);
            runs.add(run(line, new Phasor(side, 0), Optional.empty(), i < 2 ? ONE : OTHER));
        }
        return tie(runs, false, true).oneRestDoes(tie(runs, false, false));
    }

    /**
     * With a rest for each 4 are left in 8 − 6 figures: with the 5 that stated errors are worth a variance of 9/7. One rest
     * leaves d² more in 2 figures, so F = d²/2/(9/7), whose chance with 2 and 2 degrees is 1/(1 + F): 5 % at F = 19.
     */
    @Test
    void oneRestDoesUpToTheUsualChance() {
        double most = Math.sqrt(19 * 2 * 9 / 7.0);
        assertThat(oneRestDoes(0.99 * most)).isTrue();
        assertThat(oneRestDoes(1.01 * most)).isFalse();
    }

    /**
     * Four runs, tracks ±1 and ±j, nothing scatters: variance 5/9 as 4 figures are over, and of a line at track 1 a part
     * of 1/4 + 1/4. An error of 0.2 mm at 4 units per mm comes beside it. Far from nothing the interval is in proportion.
     */
    @Test
    void anUnsureTrackWidensThePrediction() {
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Phasor track = Phasor.ofDegrees(1, 90 * i);
            runs.add(run(new Phasor(300, 0).plus(track.times(4)), track, Optional.empty(), ONE));
        }
        PhaseTie tie = tie(runs, false, false);
        Size sure = tie.predicted(new Phasor(1, 0), 0);
        Size unsure = tie.predicted(new Phasor(1, 0), 0.2);
        double fit = Math.sqrt(5 / 9.0 / 2);
        assertThat(sure.value()).isCloseTo(304, within(EXACT));
        // The length of a vector isn't its part along: they differ by the error's square over 304.
        assertThat((unsure.high() - unsure.low()) / (sure.high() - sure.low()))
                .isCloseTo(Math.hypot(fit, 0.8) / fit, within(0.01));
    }

    /**
     * Two markings at track ±1, read to 0.5 mm, with two runs each at σ = 1 that lie apart by 2·d: at 4 units per mm the
     * mean of a marking has the variance 1/2 + 2² in each part, c half of that. Nothing is left over, so 5 readings stand
     * for the errors. How far the repeats lie apart is in the stated errors already.
     */
    @Test
    void repeatsShareThePencilsErrorAndTheirScatterCountsOnce() {
        for (double d : new double[] {0, 3}) {
            List<TieRun> runs = new ArrayList<>();
            for (double side : new double[] {1, 1, -1, -1}) {
                double off = runs.size() % 2 == 0 ? d : -d;
                Phasor line = new Phasor(300 + 4 * side + off, 0);
                runs.add(run(line, 1, new Phasor(side, 0), 0.5, "at " + side, Optional.empty(), ONE));
            }
            Size left = tie(runs, false, false).left();
            double reach = Distributions.studentQuantile(0.975, 5) * Math.sqrt((0.5 + 4) / 2);
            assertThat(left.value()).isCloseTo(300, within(EXACT));
            assertThat((left.high() - left.low()) / 2).isCloseTo(reach, within(EXACT));
        }
    }

    /**
     * Both sides of a line read with errors, 2 units and 0.5 mm: k is the larger root of k²·Sxy + k·(δ·Sxx − Syy) − δ·Sxy
     * with δ = (2/0.5)² (Deming 1943; from memory), not Sxy/Sxx.
     */
    @Test
    void whereTheTrackIsReadWithErrorsItIsNotTakenForTrue() {
        double[] x = {-3, -1, 1, 3};
        double[] y = {90, 101, 99, 114};
        double meanY = 101;
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            sxx += x[i] * x[i];
            sxy += x[i] * (y[i] - meanY);
            syy += (y[i] - meanY) * (y[i] - meanY);
            runs.add(run(new Phasor(y[i], 0), 2, new Phasor(x[i], 0), 0.5, "at " + i, Optional.empty(), ONE));
        }
        double more = syy - 16 * sxx;
        double k = (more + Math.sqrt(more * more + 4 * 16 * sxy * sxy)) / (2 * sxy);
        PhaseTie tie = tie(runs, false, false);
        assertThat(tie.perMillimetre().value()).isCloseTo(k, within(1e-6));
        assertThat(k).isGreaterThan(1.01 * sxy / sxx);
    }
}
