package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("Another engine of the same kind")
class SecondEngineTest {
    private static final Machine GEARED = Machine.ALL.get(0);
    private static final double PROPELLER_HZ = 30;
    private static final double SECONDS = 24;

    /** Ours at 30 turns of the propeller a second, the other faster by a share, each of its lines a given size of ours. */
    private static SpeedResult heard(double share, double size) {
        SyntheticRun ours = run(PROPELLER_HZ, 0.02);
        TimeBase time = ours.evenClock(1200);
        double[] samples = ours.samples(time);
        double[] others = run(PROPELLER_HZ * (1 + share), 0).samples(time);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += size * others[i];
        }
        Recording both = SyntheticRun.recordingOf(
                time, List.of(new Channel("a", SignalUnit.STANDARD_GRAVITY, Series.of(samples))));
        return SpeedFinder.find(both, both.channels(), GEARED.table(), SpeedPrior.around(PROPELLER_HZ, 0.05));
    }

    private static SyntheticRun run(double propellerHz, double noise) {
        return SyntheticRun.at(SpeedProfile.steady(propellerHz, SECONDS))
                .withLines(GEARED.lines(new Random(3)))
                .withNoise(noise)
                .withSeed(3);
    }

    private static Warning told(SpeedResult found, WarningCode code) {
        return found.warnings().stream()
                .filter(w -> w.code() == code)
                .findFirst()
                .orElseThrow();
    }

    /** The rate of a beat is looked for in steps of a share of 0.0002, and a part of 6 s splits 0.0006 at 300 Hz. */
    @ParameterizedTest
    @ValueSource(doubles = {0.006, 0.009, -0.009, 0.012, -0.012})
    @DisplayName("is told with its distance, and nothing is measured beside it")
    void isToldWithItsDistance(double share) {
        SpeedResult found = heard(share, 0.3);

        Warning told = told(found, WarningCode.SECOND_ENGINE);
        double rpm = 60 * PROPELLER_HZ * GEARED.ratio();
        assertThat(((Amount) told.values().get(2)).value()).isCloseTo(Math.abs(share) * rpm, within(0.0006 * rpm));
        assertThat(found.confirmed()).isFalse();
        assertThat(found.doubt()).contains(Fact.of(SpeedDoubt.SECOND_ENGINE));
        assertThat(found.doubtful()).extracting(DoubtfulDwell::doubt).containsOnly(SpeedDoubt.SECOND_ENGINE);
        assertThat(found.otherMachine()).contains(true);
    }

    @Test
    @DisplayName(
            "too near to be told in the time makes the lines swell: said, without a distance, and the speed is as unsure")
    void tooNearIsSaid() {
        SpeedResult found = heard(0.0004, 0.6);

        told(found, WarningCode.LINES_BEAT);
        assertThat(found.warnings()).noneMatch(w -> w.code() == WarningCode.SECOND_ENGINE);
        Dwell dwell = found.main().orElseThrow();
        assertThat(dwell.standardErrorHz()).isGreaterThan(0.0013 * PROPELLER_HZ);
        assertThat(dwell.propellerHz()).isCloseTo(PROPELLER_HZ, within(2 * dwell.standardErrorHz()));
    }

    @Test
    @DisplayName("isn't heard where none runs")
    void isNotHeardWhereNoneRuns() {
        SpeedResult found = heard(0.01, 0);

        assertThat(found.confirmed()).isTrue();
        assertThat(found.warnings())
                .noneMatch(w -> w.code() == WarningCode.SECOND_ENGINE || w.code() == WarningCode.LINES_BEAT);
    }

    /** A sixth order of 3.4 crank turns stands 0.04 of a propeller turn beside its 17th multiple halved: both beat. */
    @Test
    @DisplayName("isn't heard where a machine's own lines stand near each other and beat")
    void ownLinesThatBeatAreNone() {
        SyntheticRun one = SyntheticRun.at(SpeedProfile.steady(PROPELLER_HZ, SECONDS))
                .withLines(GEARED.lines(new Random(4)))
                .withNoise(0.02)
                .withSeed(4);
        TimeBase time = one.evenClock(1200);
        double[] samples = one.samples(time);
        double crank = GEARED.ratio();
        for (double half = 1; half < 12; half++) {
            double order = half * crank / 2;
            double near = Math.rint(order);
            if (Math.abs(order - near) * PROPELLER_HZ < 3.6) {
                for (int i = 0; i < samples.length; i++) {
                    double turns = PROPELLER_HZ * time.at(i);
                    samples[i] +=
                            0.5 * Math.cos(2 * Math.PI * order * turns) + 0.4 * Math.cos(2 * Math.PI * near * turns);
                }
            }
        }
        Recording recording = SyntheticRun.recordingOf(
                time, List.of(new Channel("a", SignalUnit.STANDARD_GRAVITY, Series.of(samples))));
        SpeedResult found = SpeedFinder.find(
                recording, recording.channels(), GEARED.table(), SpeedPrior.around(PROPELLER_HZ, 0.05));
        assertThat(found.confirmed()).isTrue();
        assertThat(found.warnings())
                .noneMatch(w -> w.code() == WarningCode.SECOND_ENGINE || w.code() == WarningCode.LINES_BEAT);
    }
}
