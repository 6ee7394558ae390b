package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import evenblade.keep.practice.Line;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.machine.installation.Engine.Cycle;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines of a two-blade propeller and a four-cylinder four-stroke, each series falling as pulses do. */
@DisplayName("Of a machine with two shafts")
class WrongEntryTest {
    private static final int BLADES = 2;

    /** @param once lines once per turn of either shaft, beside blade pass and firing */
    private static SpeedResult found(double hz, double ratio, double told, double once) {
        List<Line> lines = new ArrayList<>();
        double[] falling = {once, 1, 0.1, 0.5, 0.03, 0.25};
        for (int k = 1; k <= falling.length; k++) {
            lines.add(Line.of(k, falling[k - 1], 70 * k));
            lines.add(Line.of(k * ratio, 0.9 * falling[k - 1], 40 * k));
        }
        Machine entered = new Machine("entered", Cycle.FOUR_STROKE, 4, told, BLADES, 1600, 5800);
        Recording recording = SyntheticRun.at(SpeedProfile.steady(hz, 12).wandering(0.004, 3))
                .withLines(lines)
                .withStrongestLineAbove(12)
                .withSeed(4)
                .recording(2400);
        return SpeedFinder.find(
                recording,
                recording.channels(),
                entered.table(),
                SpeedPrior.between(1600 / 60.0 / told, 5800 / 60.0 / told));
    }

    /**
     * Propeller and crank shake once per turn as strongly as blades pass and cylinders fire: these lines are the blade pass and
     * firing of half the speed too, with their doubles, and nothing stands between them there.
     */
    @ParameterizedTest(name = "the speed of {0} engine rpm is confirmed, not half of it")
    @ValueSource(ints = {3700, 4300, 5100, 5600})
    void halfTheSpeedIsNotConfirmed(int rpm) {
        double ratio = 38 / 17.0;
        SpeedResult found = found(rpm / 60.0 / ratio, ratio, ratio, 1);
        assertThat(found.confirmed()).isTrue();
        assertThat(60 * ratio * found.main().orElseThrow().propellerHz()).isCloseTo(rpm, within(0.005 * rpm));
    }

    @ParameterizedTest(
            name = "a ratio of 3, which puts the engine''s lines on the propeller''s, is told at {0} engine rpm")
    @ValueSource(ints = {4100, 5200, 5600})
    void aWholeRatioIsJudgedToo(int rpm) {
        double ratio = 59 / 17.0;
        SpeedResult found = found(rpm / 60.0 / ratio, ratio, 3, 0.3);
        assertThat(found.confirmed()).isFalse();
        Warning told = found.warnings().stream()
                .filter(warning -> warning.code() == WarningCode.OTHER_RATIO_FITS)
                .findFirst()
                .orElseThrow();
        assertThat(((Amount) told.values().get(0)).value()).isCloseTo(ratio, within(0.02 * ratio));
    }
}
