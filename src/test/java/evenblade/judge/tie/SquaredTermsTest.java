package evenblade.judge.tie;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * Which runs leave one answer without phase. Nine terms with pitch: a condition that holds in every run makes two of them
 * the same, however many runs there are.
 */
class SquaredTermsTest {
    /** Twelve tracks of all sizes and angles, and what else is read with them. */
    private static List<TieRun> runs(java.util.function.BiFunction<Integer, Phasor, Phasor> pitch) {
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            Phasor track = Phasor.ofDegrees(1 + 0.3 * (i * 5 % 7), 10 + 77 * i);
            runs.add(run(track, Optional.of(pitch.apply(i, track))));
        }
        return runs;
    }

    private static TieRun run(Phasor track, Optional<Phasor> pitch) {
        return new TieRun("run", 2, 0.1, OptionalDouble.empty(), track, 0, pitch, "marking", List.of("A", "B", "C"));
    }

    private static double any(int i) {
        return 0.4 + 0.2 * (i * 3 % 5) - 0.1 * (i * i % 4);
    }

    @Test
    void tracksAndAnglesThatChangeFreelyAreToldApart() {
        assertThat(SquaredTerms.tellApart(runs((i, t) -> Phasor.ofDegrees(any(i), 50 * i * i)), true))
                .isTrue();
    }

    /** P = (1 + j·x)·T/|T|² has Re T̄P = 1 in every run, P = (x + j)·T/|T|² has Im T̄P = 1. */
    @Test
    void anglesThatKeepOneProductWithTheTrackAreNot() {
        assertThat(SquaredTerms.tellApart(
                        runs((i, t) -> t.times(new Phasor(1, any(i))).times(1 / square(t))), true))
                .isFalse();
        assertThat(SquaredTerms.tellApart(
                        runs((i, t) -> t.times(new Phasor(any(i), 1)).times(1 / square(t))), true))
                .isFalse();
    }

    private static double square(Phasor value) {
        return value.magnitude() * value.magnitude();
    }

    @Test
    void tracksOfOneSizeAreNotHoweverMany() {
        List<TieRun> round = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            round.add(run(Phasor.ofDegrees(2, 10 + 50 * i), Optional.empty()));
        }
        assertThat(SquaredTerms.tellApart(round, false)).isFalse();
        round.add(run(Phasor.ofDegrees(1, 10), Optional.empty()));
        assertThat(SquaredTerms.tellApart(round, false)).isTrue();
    }

    /** Two blades: tracks and angles lie on one line, here at 45° and at 130°. */
    @Test
    void twoBladesAreToldApartWhereverTheirLineLies() {
        double[] track = {2, -1, 0.5, -2.5, 1, 1.5, -2};
        double[] angle = {0.3, 1.1, -0.7, 0.1, -1, 0.9, -0.4};
        List<TieRun> free = new ArrayList<>();
        List<TieRun> inverse = new ArrayList<>();
        for (int i = 0; i < track.length; i++) {
            Phasor t = Phasor.ofDegrees(track[i], 45);
            free.add(run(t, Optional.of(Phasor.ofDegrees(angle[i], 130))));
            // The product of the two is the same in every run.
            inverse.add(run(t, Optional.of(Phasor.ofDegrees(1 / track[i], 130))));
        }
        assertThat(SquaredTerms.tellApart(free.subList(0, 3), false)).isTrue();
        assertThat(SquaredTerms.number(free)).isEqualTo(6);
        assertThat(SquaredTerms.tellApart(free, true)).isTrue();
        assertThat(SquaredTerms.tellApart(inverse, true)).isFalse();
    }
}
