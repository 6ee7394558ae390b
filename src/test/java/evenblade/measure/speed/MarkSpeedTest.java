package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.keep.practice.MarkPulses;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.List;
import org.junit.jupiter.api.Test;

class MarkSpeedTest {
    private static final Machine GEARED = Machine.ALL.get(0);
    private static final SpeedProfile PROFILE = SpeedProfile.steady(34, 20).wandering(0.01, 5);
    private static final TimeBase TIME = new TimeBase.Even(0, 2400, 48_000);

    @Test
    void theMarkGivesTheExactSpeed() {
        SpeedResult found = found(MarkPulses.clean(), SpeedPrior.around(34, 0.05));

        assertThat(found.origin()).isEqualTo(SpeedResult.Origin.MARK);
        assertThat(found.warnings()).isEmpty();
        assertTrue(found);
    }

    @Test
    void missingAndDoubledPulsesArePutRightAndCounted() {
        SpeedResult found = found(new MarkPulses(1, 0.05, 0.02, 0.02, 0.03, 3), SpeedPrior.around(34, 0.05));

        assertTrue(found);
        assertThat(found.warnings()).anyMatch(w -> w.code() == WarningCode.MARK_REPAIRED);
    }

    @Test
    void pulsesMayPointDown() {
        assertTrue(found(new MarkPulses(-2, 0.03, 0, 0, 0.05, 3), SpeedPrior.around(34, 0.05)));
    }

    @Test
    void aChannelWithoutPulsesLeavesTheSpeedToTheLines() {
        SpeedResult found = found(new MarkPulses(0, 0.05, 0, 0, 0.05, 3), SpeedPrior.around(34, 0.05));

        assertThat(found.origin()).isEqualTo(SpeedResult.Origin.SIGNAL);
        assertThat(found.warnings()).anyMatch(w -> w.code() == WarningCode.MARK_WITHOUT_PULSES);
    }

    @Test
    void aMarkOnTheCrankIsDoubted() {
        SpeedProfile crank = SpeedProfile.steady(34 * GEARED.ratio(), 20);
        Recording recording = recording(MarkPulses.clean().samples(crank, TIME));

        SpeedResult found = MarkSpeed.find(
                recording,
                recording.channels().get(1),
                recording.channels().subList(0, 1),
                GEARED.table(),
                SpeedPrior.around(34, 0.05));

        assertThat(found.warnings()).anyMatch(w -> w.code() == WarningCode.MARK_NOT_ONCE_PER_REVOLUTION);
    }

    @Test
    void aMarkThatDisagreesWithTheLinesIsDoubted() {
        Recording recording = recording(MarkPulses.clean().samples(SpeedProfile.steady(34.5, 20), TIME));

        SpeedResult found = MarkSpeed.find(
                recording,
                recording.channels().get(1),
                recording.channels().subList(0, 1),
                GEARED.table(),
                SpeedPrior.around(34, 0.05));

        Dwell dwell = found.main().orElseThrow();
        double apart = 1 - PROFILE.meanHz(dwell.fromS(), dwell.toS()) / dwell.propellerHz();
        assertThat(found.warnings())
                .filteredOn(w -> w.code() == WarningCode.MARK_DISAGREES)
                .singleElement()
                .satisfies(w -> {
                    Amount share = (Amount) w.fact().values().get(0);
                    // Lines tell the speed of 20 s to some hundred thousandths.
                    assertThat(share.value()).isCloseTo(apart, within(1e-4));
                    assertThat(w.fact().values().get(1)).isEqualTo(Fact.of(SpeedFact.SLOWER));
                });
    }

    private static void assertTrue(SpeedResult found) {
        Dwell dwell = found.main().orElseThrow();
        double truth = PROFILE.meanHz(dwell.fromS(), dwell.toS());
        // A pulse's edge is placed to a few hundredths of a sample; over 20 s that is some 10⁻⁶ of the speed.
        assertThat(dwell.propellerHz()).isCloseTo(truth, within(5e-6 * truth));
    }

    private static SpeedResult found(MarkPulses pulses, SpeedPrior expectation) {
        Recording recording = recording(pulses.samples(PROFILE, TIME));
        return MarkSpeed.find(
                recording,
                recording.channels().get(1),
                recording.channels().subList(0, 1),
                GEARED.table(),
                expectation);
    }

    private static Recording recording(double[] mark) {
        SyntheticRun run = SyntheticRun.at(PROFILE)
                .withLine(1, 0.5, 40)
                .withLine(3, 1, 200)
                .withLine(4.86, 0.8, 120)
                .withNoise(0.3);
        return SyntheticRun.recordingOf(
                TIME,
                List.of(
                        run.channel("shake", SignalUnit.STANDARD_GRAVITY, TIME),
                        new Channel("mark", SignalUnit.FULL_SCALE, Series.of(mark))));
    }
}
