package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value.Count;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** The speed that a mark tells, from pulses drawn where they belong: a roof of ten samples about each whole turn. */
class MarkFiguresTest {
    private static final double RATE_HZ = 1000;

    private static Recording recording(double startS, int size, DoubleUnaryOperator turns) {
        double[] x = new double[size];
        for (int i = 0; i < size; i++) {
            double at = turns.applyAsDouble(i / RATE_HZ);
            double off = (at - Math.rint(at)) * 8;
            x[i] = Math.rint(at) < 1 ? 0 : Math.max(0, 1 - Math.abs(off));
        }
        Channel mark = new Channel("mark", SignalUnit.FULL_SCALE, Series.of(x));
        return new Recording(
                new Source(Path.of("x.wav"), FileHash.of("0"), "wav", false, RATE_HZ, size / RATE_HZ, List.of("mark")),
                new TimeBase.Even(startS, RATE_HZ, size),
                List.of(mark),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(startS, startS + size / RATE_HZ)));
    }

    /** 20 turns a second that rise by 0.4 every second: over the last frame, and by how much its half differs from it. */
    @Test
    void theSpeedNowIsThatOfTheLastPulses() {
        Recording run = recording(3, 1500, t -> 20 * t + 0.2 * t * t);
        SpeedNow now = MarkSpeed.now(run, run.channels().get(0)).orElseThrow();
        // A straight slope is crossed where it should be, to a hundredth of a sample; the frame is 0.6 s or a pulse
        // more.
        assertThat(now.toS() - now.fromS()).isBetween(0.6, 0.65);
        double first = now.fromS() - 3;
        double last = now.toS() - 3;
        assertThat(now.propellerHz()).isCloseTo(20 + 0.2 * (first + last), within(2e-3));
        // The second half is faster by 0.4 × a quarter of the frame; twice that, and two twentieths of a sample of 20
        // Hz.
        double half = 2 * 0.4 * (last - first) / 4;
        double pulse = now.propellerHz() * 0.1 / RATE_HZ / (last - first);
        assertThat(now.plusMinusHz()).isCloseTo(half + pulse, within(0.012));
        assertThat(now.evidence()).isEqualTo(1);
        assertThat(now.rivalShare()).isZero();
        Recording still = recording(0, 1500, t -> 20 * t);
        SpeedNow steady = MarkSpeed.now(still, still.channels().get(0)).orElseThrow();
        assertThat(steady.propellerHz()).isCloseTo(20, within(1e-6));
        assertThat(steady.plusMinusHz()).isCloseTo(20 * 0.1 / RATE_HZ / (steady.toS() - steady.fromS()), within(1e-6));
    }

    /** 25 turns a second for 10 s, of which two aren't seen: 250 less the first instant, and nothing strays. */
    @Test
    void aDwellHasTheMeanSpeedOfItsMark() {
        Recording run =
                recording(5, 10_000, t -> Math.rint(25 * t) == 100 || Math.rint(25 * t) == 101 ? 100.5 : 25 * t);
        SpeedResult found = MarkSpeed.find(run, run.channels().get(0), List.of(), null, SpeedPrior.around(25, 0.05));
        assertThat(found.origin()).isEqualTo(SpeedResult.Origin.MARK);
        Dwell dwell = found.main().orElseThrow();
        assertThat(dwell.propellerHz()).isCloseTo(25, within(1e-5));
        assertThat(dwell.minHz()).isCloseTo(25, within(0.01));
        assertThat(dwell.maxHz()).isCloseTo(25, within(0.01));
        assertThat(dwell.fromS()).isBetween(5.0, 5.6);
        assertThat(dwell.toS()).isBetween(14.4, 15.0);
    }

    /** Entered 34 where the mark comes 27.1 times (0.797 of it) or 27.3 (0.803), 42.4 (1.247) or 42.6 (1.253). */
    @Test
    void aMarkFarFromWhatWasEnteredIsDoubted() {
        double[] hz = {27.1, 27.3, 42.4, 42.6};
        boolean[] doubted = {true, false, false, true};
        for (int k = 0; k < hz.length; k++) {
            double each = hz[k];
            Recording run = recording(0, 8000, t -> each * t);
            SpeedResult found =
                    MarkSpeed.find(run, run.channels().get(0), List.of(), null, SpeedPrior.around(34, 0.05));
            assertThat(found.warnings().stream().anyMatch(w -> w.code() == WarningCode.MARK_NOT_ONCE_PER_REVOLUTION))
                    .as("at " + each)
                    .isEqualTo(doubted[k]);
        }
    }

    /** One of 25 a second left out: 199 turns or so, one missing, none doubled. */
    @Test
    void missingPulsesAreTold() {
        Recording run = recording(0, 8000, t -> Math.rint(25 * t) == 100 ? 100.5 : 25 * t);
        SpeedResult found = MarkSpeed.find(run, run.channels().get(0), List.of(), null, SpeedPrior.around(25, 0.05));
        assertThat(found.warnings())
                .filteredOn(w -> w.code() == WarningCode.MARK_REPAIRED)
                .singleElement()
                .satisfies(w -> {
                    // The first pulse is the first turn's, the last that of turn 199 or 200 at the end.
                    assertThat(((Count) w.fact().values().get(0)).number()).isBetween(199L, 200L);
                    assertThat(w.fact().values().get(1)).isEqualTo(new Count(1));
                    assertThat(w.fact().values().get(2)).isEqualTo(new Count(0));
                });
        assertThat(found.main().orElseThrow().propellerHz()).isCloseTo(25, within(1e-5));
    }
}
