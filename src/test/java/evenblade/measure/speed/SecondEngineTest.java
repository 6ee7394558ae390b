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

    private static double rpmAway(Warning told) {
        return ((Amount) told.values().get(2)).value();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.006, 0.009, -0.009, 0.012, -0.012})
    @DisplayName("is told with its distance and its side, and the stronger one's speed holds")
    void isToldWithItsDistance(double share) {
        SpeedResult found = heard(share, 0.3);

        Warning told = told(found, WarningCode.SECOND_ENGINE);
        double rpm = 60 * PROPELLER_HZ * GEARED.ratio();
        assertThat(rpmAway(told)).isCloseTo(Math.abs(share) * rpm, within(0.0006 * rpm));
        Fact side = Fact.of(share > 0 ? SpeedFact.FASTER : SpeedFact.SLOWER);
        // Where the lock follows slow beats, or a line of the machine stands as far away, the side isn't said.
        assertThat(told.values().get(3))
                .isIn(Math.abs(share) > 0.01 ? List.of(side) : List.of(side, Fact.of(SpeedFact.FASTER_OR_SLOWER)));
        Dwell dwell = found.main().orElseThrow();
        assertThat(dwell.propellerHz()).isCloseTo(PROPELLER_HZ, within(4 * dwell.standardErrorHz()));
        assertThat(dwell.secondEngine()).isBetween(0.1, 0.6);
        assertThat(found.otherMachine()).contains(true);
    }

    @Test
    @DisplayName("as strong as this one leaves no speed confirmed")
    void asStrongLeavesNothingConfirmed() {
        SpeedResult found = heard(0.008, 1);

        told(found, WarningCode.SECOND_ENGINE);
        assertThat(found.confirmed()).isFalse();
        assertThat(found.doubt()).contains(Fact.of(SpeedDoubt.SECOND_ENGINE));
        assertThat(found.dwells()).noneMatch(dwell -> dwell.confirmedBy().size() > 0);
    }

    @Test
    @DisplayName("too near to be told in the time makes the lines swell, which is said, and no distance is given")
    void tooNearIsSaid() {
        SpeedResult found = heard(0.0004, 0.6);

        told(found, WarningCode.LINES_BEAT);
        assertThat(found.warnings()).noneMatch(w -> w.code() == WarningCode.SECOND_ENGINE);
        assertThat(found.main().orElseThrow().secondEngine()).isGreaterThan(0.2);
    }

    @Test
    @DisplayName("isn't heard where none runs")
    void isNotHeardWhereNoneRuns() {
        SpeedResult found = heard(0.01, 0);

        assertThat(found.warnings())
                .noneMatch(w -> w.code() == WarningCode.SECOND_ENGINE || w.code() == WarningCode.LINES_BEAT);
        assertThat(found.main().orElseThrow().secondEngine()).isZero();
    }

    /** Lines of 1 and b together swell in power by a standard deviation of √2·b/(1 + b²) of its mean. */
    @Test
    @DisplayName("is as strong as the swelling of the power says")
    void strengthFollowsFromTheSwelling() {
        for (double b : new double[] {0.1, 0.4, 0.9}) {
            double depth = Math.sqrt(2) * b / (1 + b * b);
            assertThat(new SecondEngine(0, SpeedFact.FASTER, depth, true).strength())
                    .isCloseTo(b, within(1e-9));
        }
        assertThat(new SecondEngine(0, SpeedFact.FASTER, 0, true).strength()).isZero();
        assertThat(new SecondEngine(0, SpeedFact.FASTER, 3, true).strength()).isCloseTo(1, within(1e-6));
    }
}
