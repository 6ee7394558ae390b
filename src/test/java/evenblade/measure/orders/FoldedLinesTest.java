package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Source;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FoldedLinesTest {
    /** Sampled at 100 Hz, cos 2π·f·t reads as the line below 50 Hz that agrees at every sample: |f − 100·n|. */
    @ParameterizedTest
    @CsvSource({"30, 30", "50, 50", "70, 30", "100, 0", "130, 30", "149, 49", "151, 49", "199, 1", "260, 40"})
    void aLineAppearsAtItsDistanceFromTheNearestMultipleOfTheRate(double hz, double at) {
        assertThat(FoldedLines.appearsAtHz(hz, 100)).isCloseTo(at, within(1e-9));
        for (int i = 0; i < 20; i++) {
            double t = i / 100.0;
            assertThat(Math.cos(2 * Math.PI * FoldedLines.appearsAtHz(hz, 100) * t))
                    .isCloseTo(Math.cos(2 * Math.PI * hz * t), within(1e-9));
        }
    }

    /** 20 turns a second at first; over 20 s so many more than at a steady speed. */
    private static SpeedTrack track(double moreTurns) {
        return new SpeedTrack() {
            @Override
            public double fromS() {
                return 0;
            }

            @Override
            public double toS() {
                return 20;
            }

            @Override
            public double revolutionsAt(double t) {
                return 20 * t + moreTurns * t * t / 400;
            }

            @Override
            public double propellerHzAt(double t) {
                return 20 + moreTurns * t / 200;
            }
        };
    }

    private static FoldedLines folded(double moreTurns, double fileRateHz) {
        OrderTable table = new Installation(
                        Optional.empty(),
                        new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
                        new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()),
                        new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                        List.of())
                .orders();
        Recording recording = new Recording(
                new Source(Path.of("x.csv"), FileHash.of("0"), "csv", false, fileRateHz, 20, List.of()),
                new TimeBase.Even(0, 100, 2000),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, 20)));
        Dwell dwell = new Dwell(0, 20, 20, 1e-4, 20, 20);
        SpeedResult speed = new SpeedResult(
                SpeedResult.Origin.MARK,
                true,
                Optional.empty(),
                track(moreTurns),
                Optional.of(dwell),
                List.of(dwell),
                0,
                List.of());
        List<FittedLine> lines = List.of(
                new FittedLine(List.of(0), 1, 0),
                new FittedLine(List.of(6), 1.215, 0),
                new FittedLine(List.of(1), 2, 0));
        return FoldedLines.of(recording, table, speed, dwell, lines, 45);
    }

    /**
     * At 100 samples a second and 20 turns a second order 3 (60 Hz) reads as order 2, order 4 (80 Hz) as order 1; 2.43
     * (48.6 Hz), 3.645 (reads as 27.1 Hz) and 4.86 (2.8 Hz) stand by themselves; 5 (100 Hz) and above aren't looked at.
     */
    @Test
    void linesThatFoldOntoOthersHideUnderThem() {
        FoldedLines found = folded(0, 100);
        assertThat(found.hiddenUnder().keySet()).containsExactlyInAnyOrder(0, 2);
        assertThat(found.hiddenUnder().get(0)).extracting(OrderLine::name).containsExactly("propeller 4×");
        assertThat(found.hiddenUnder().get(2)).extracting(OrderLine::name).containsExactly("blade pass");
        assertThat(found.along()).extracting(FittedLine::order).containsExactly(2.43, 3.6450000000000005, 4.86);
        // Brought down from a higher rate, nothing folds.
        assertThat(folded(0, 102).along()).isEmpty();
        assertThat(folded(0, 102).hiddenUnder()).isEmpty();
    }

    /**
     * What folds runs the other way: orders 3 and 2, 4 and 1 come apart by five times the turns gained. Of x turns gained by
     * the square of time |mean e^{2πi·x·u²}| is 0.9 at x = 0.243 (by numpy), so at 0.0486 turns of the propeller.
     */
    @Test
    void aSpeedThatWandersTellsThemApart() {
        assertThat(folded(0.046, 100).hiddenUnder()).hasSize(2);
        assertThat(folded(-0.046, 100).hiddenUnder()).hasSize(2);
        FoldedLines told = folded(0.051, 100);
        assertThat(told.hiddenUnder()).isEmpty();
        assertThat(told.along()).extracting(FittedLine::order).contains(3.0, 4.0);
    }
}
