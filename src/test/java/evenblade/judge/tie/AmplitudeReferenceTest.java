package evenblade.judge.tie;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/**
 * A tie without phase whose runs scatter, beside figures made by numpy and scipy from the definitions:
 * {@code reference/tie/amplitudes.py}.
 */
class AmplitudeReferenceTest {
    /** As draws are made wider. */
    private static final double WIDER = 1.06;

    /** A 2.5 % point of 400 draws scatters by 7 % of the reach; three of that. */
    private static final double OF_DRAWS = 0.2;

    private static final List<Phasor> TRACKS = List.of(
            Phasor.ofDegrees(1, 0),
            Phasor.ofDegrees(1.5, 70),
            Phasor.ofDegrees(0.8, 160),
            Phasor.ofDegrees(1.2, 230),
            Phasor.ofDegrees(1.7, 300),
            Phasor.ofDegrees(0.4, 20));
    /** What the runs differ by from |2 + k·T|. */
    private static final double[] OFF = {0.03, -0.04, 0.02, 0.05, -0.03, -0.02};

    private static AmplitudeTie tie(double k, double offBy, double error, double unit, double mm) {
        List<TieRun> runs = new ArrayList<>();
        for (int i = 0; i < OFF.length; i++) {
            double amplitude = new Phasor(2, 0)
                    .plus(Phasor.ofDegrees(k, 40).times(TRACKS.get(i)))
                    .magnitude();
            runs.add(new TieRun(
                    "run " + i,
                    unit * (amplitude + offBy * OFF[i]),
                    unit * error,
                    OptionalDouble.empty(),
                    TRACKS.get(i).times(mm),
                    0,
                    Optional.empty(),
                    "marking " + i,
                    List.of("A", "B", "C")));
        }
        return AmplitudeTie.of(runs, false).orElseThrow();
    }

    private static void assertInterval(Size size, double value, double standardError) {
        double reach = WIDER * 1.96 * standardError;
        assertThat(size.value()).isCloseTo(value, within(1e-5 * value));
        assertThat((size.high() - size.low()) / 2).isCloseTo(reach, within(OF_DRAWS * reach));
    }

    /** Misfit 144.6 in 3 markings more than unknowns, with 5 for the stated errors: errors are √(149.6/8) times those stated. */
    @Test
    void runsThatScatterMoreThanStatedWidenTheIntervals() {
        AmplitudeTie tie = tie(0.5, 1, 0.005, 1, 1);
        assertInterval(tie.left(), 2.00904817, 0.01035421);
        assertInterval(tie.perMillimetre(), 0.48718509, 0.01218918);
    }

    /** The same in other units: a thousandth of the amplitudes, tracks of hundreds. */
    @Test
    void unitsDontMatter() {
        AmplitudeTie tie = tie(0.5, 1, 0.005, 1e-3, 200);
        assertInterval(tie.left(), 2.00904817e-3, 0.01035421e-3);
        assertInterval(tie.perMillimetre(), 0.48718509e-3 / 200, 0.01218918e-3 / 200);
    }

    /** The chance that track does nothing is 0.067 at 0.030 of a unit per mm and 0.034 at 0.036. */
    @Test
    void trackMattersFromOneChanceInTwentyOn() {
        assertThat(tie(0.030, 0.6, 0.02, 1, 1).trackMatters()).isFalse();
        assertThat(tie(0.030, 0.6, 0.02, 1, 1).perMillimetre().low()).isZero();
        assertThat(tie(0.036, 0.6, 0.02, 1, 1).trackMatters()).isTrue();
    }
}
