package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Value.Count;
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
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What blades make, from the definition: each the same pulse, so that only multiples of their number are left, and a share of
 * it at every other order where one blade differs. The engine is a four-cylinder four-stroke: firing is its second order.
 */
@DisplayName("A blade count")
class BladeLeadTest {
    private static final double HZ = 31.3;
    private static final double RATIO = 2.43;

    private static SpeedResult found(int blades, double oneDiffersBy, int entered) {
        List<Line> lines = new ArrayList<>();
        for (int k = 1; k <= 13; k++) {
            // A pulse as wide as a third of the way to the next blade: it falls to a half at the second multiple.
            double pulse = Math.pow(0.5, (double) k / blades - 1);
            double share = k % blades == 0 ? 1 : oneDiffersBy / blades;
            lines.add(Line.of(k, pulse * share + (k == 1 ? 0.2 : 0), 77 * k));
        }
        for (int k = 1; k <= 4; k++) {
            lines.add(Line.of(k * RATIO, k == 2 ? 1 : k == 4 ? 0.5 : 0.1, 50 * k));
        }
        Machine told = new Machine("told", Cycle.FOUR_STROKE, 4, RATIO, entered, 1600, 5800);
        Recording recording = SyntheticRun.at(SpeedProfile.steady(HZ, 10).wandering(0.003, blades))
                .withLines(lines)
                .withStrongestLineAbove(15)
                .withSeed(blades)
                .recording(2400);
        return SpeedFinder.find(
                recording,
                recording.channels(),
                told.table(),
                SpeedPrior.between(1600 / 60.0 / RATIO, 5800 / 60.0 / RATIO));
    }

    /** Twice the count entered is told only where blade pass towers over half of it: a resonance may lift a double by 15 dB. */
    @ParameterizedTest(name = "of {0}, entered as {1}, is told")
    @CsvSource({
        "3, 2, 0.3",
        "2, 3, 0.3",
        "4, 2, 0.15",
        "2, 4, 0.3",
        "3, 4, 0.3",
        "4, 3, 0.3",
        "3, 6, 0.3",
        "5, 4, 0.3",
        "6, 3, 0.3"
    })
    void wrongCountsAreTold(int blades, int entered, double most) {
        for (double differs : new double[] {0.05, most}) {
            assertThat(found(blades, differs, entered).warnings())
                    .as("one blade differs by %s", differs)
                    .anySatisfy(warning -> {
                        assertThat(warning.code()).isEqualTo(WarningCode.OTHER_BLADES_FIT);
                        assertThat(warning.values()).containsExactly(new Count(blades), new Count(entered));
                    });
        }
    }

    @ParameterizedTest(name = "of {0} that is right isn''t doubted though one blade differs")
    @CsvSource({"2", "3", "4", "5", "6"})
    void rightCountsAreNot(int blades) {
        for (double differs : new double[] {0.05, 0.3, 0.8}) {
            SpeedResult found = found(blades, differs, blades);
            assertThat(found.confirmed()).as("one blade differs by %s", differs).isTrue();
            assertThat(found.warnings()).noneMatch(warning -> warning.code() == WarningCode.OTHER_BLADES_FIT);
        }
    }
}
