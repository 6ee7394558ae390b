package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * Levels of four lines beside figures made by numpy and scipy from the definitions: {@code reference/orders/levels.py}, which
 * makes the same samples. What the fit leaves is kept in single precision, so five digits are asked.
 */
@DisplayName("Levels and their errors, beside figures made by another program")
class LevelReferenceTest {
    private static final double RATE_HZ = 200;
    private static final int SIZE = 3200;
    private static final double FIVE_DIGITS = 1e-5;

    private static final OrderTable TABLE = new Installation(
                    Optional.empty(),
                    new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
                    new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()),
                    new Installation.Propeller(3, Optional.empty(), Optional.empty()),
                    List.of())
            .orders();

    private static final SpeedTrack STEADY = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return 16;
        }

        @Override
        public double revolutionsAt(double t) {
            return 20 * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return 20;
        }
    };

    private static double sample(int i) {
        double t = i / RATE_HZ;
        double turns = 2 * Math.PI * 20 * t;
        int block = i / 200;
        long n = i;
        return 0.3 * ((n * n * 37 + n * 11) % 1009 / 1009.0 - 0.5)
                + (1 + 0.03 * Math.sin(1.7 * block)) * (0.7 * Math.cos(turns) + 0.2 * Math.sin(turns))
                + 0.004 * Math.cos(2 * turns)
                + 0.3 * (1 + 0.2 * Math.sin(block)) * Math.cos(3 * turns + 2.1 * block * block + 0.4)
                + 0.05 * Math.cos(4 * turns - 1);
    }

    private static List<OrderReading> readings(SpeedResult.Origin origin, boolean confirmed) {
        return readings(origin, confirmed, List.of());
    }

    private static List<OrderReading> readings(SpeedResult.Origin origin, boolean confirmed, List<FittedLine> beside) {
        Channel channel = new Channel(
                "x",
                SignalUnit.METRE_PER_SECOND_SQUARED,
                Series.of(IntStream.range(0, SIZE)
                        .mapToDouble(LevelReferenceTest::sample)
                        .toArray()));
        Recording recording = new Recording(
                null,
                new TimeBase.Even(0, RATE_HZ, SIZE),
                List.of(channel),
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(new Stretch(0, 16)));
        Dwell dwell = new Dwell(0, 16, 20, 1e-4, 20, 20);
        List<FittedLine> lines = new ArrayList<>();
        IntStream.range(0, 4).forEach(k -> lines.add(new FittedLine(List.of(k), k + 1, 0)));
        lines.addAll(beside);
        DwellFit fit = DwellFit.of(new DwellBlocks(recording, List.of(channel), dwell, lines), STEADY)
                .orElseThrow()
                .settled();
        SpeedResult speed = new SpeedResult(
                origin, confirmed, Optional.empty(), STEADY, Optional.of(dwell), List.of(dwell), 0, List.of());
        List<OrderReading> readings =
                new ArrayList<>(Collections.nCopies(TABLE.lines().size(), (OrderReading) null));
        new OrderEstimator(TABLE, speed, dwell, lines, fit, 0)
                .read(new ResidualSpectrum(fit.residual(0), RATE_HZ), readings);
        return readings;
    }

    private static Level.Measured level(List<OrderReading> readings, int line) {
        return (Level.Measured) readings.get(line).level();
    }

    private static void assertClose(double actual, double expected) {
        assertThat(actual).isCloseTo(expected, within(FIVE_DIGITS * expected));
    }

    /** Blocks scatter more than the noise beside it explains: the scatter alone. Far from nothing, an amplitude is as fitted. */
    @Test
    @DisplayName("a line that swells has the scatter of its blocks")
    void swelling() {
        List<OrderReading> readings = readings(SpeedResult.Origin.MARK, true);
        Level.Measured level = level(readings, 0);
        assertThat(level.detected()).isTrue();
        assertThat(level.estimator()).isEqualTo(Level.Estimator.COHERENT);
        assertClose(level.standardError(), 0.003962676678447385);
        // Noise adds 2σ² to the square of a vector's length.
        assertClose(
                level.amplitude(),
                Math.sqrt(0.7291969700886238 * 0.7291969700886238 - 2 * 0.003962676678 * 0.003962676678));
        assertClose(level.phaseDeg().orElseThrow(), 343.96006039079856);
        assertThat(readings.get(0).frequencyHz()).isCloseTo(20, within(1e-9));
        // Student's t with 15 degrees.
        assertThat(level.ciHigh() - level.amplitude())
                .isCloseTo(2.13145 * 0.003962676678447385, within(0.01 * 0.003962676678447385));
    }

    @Test
    @DisplayName("a steady line shares the noise beside it with its blocks")
    void steady() {
        Level.Measured level = level(readings(SpeedResult.Origin.MARK, true), 3);
        assertThat(level.detected()).isTrue();
        assertThat(level.estimator()).isEqualTo(Level.Estimator.COHERENT);
        assertClose(level.standardError(), 0.002265700484055652);
        assertThat(level.phaseDeg().orElseThrow()).isCloseTo(302.65712457528196, within(1e-4));
    }

    /** Weaker than four deviations, both parts of the scatter tell; below what is said to be there. */
    @Test
    @DisplayName("a line that is hardly there isn't detected")
    void weak() {
        Level.Measured level = level(readings(SpeedResult.Origin.MARK, true), 1);
        assertThat(level.detected()).isFalse();
        assertClose(level.standardError(), 0.0020004519482792215);
        assertThat(level.ciHigh()).isGreaterThanOrEqualTo(1.96 * 0.0020004519482792215);
    }

    @Test
    @DisplayName("a line that keeps no step is read block by block, without a phase")
    void outOfStep() {
        Level.Measured level = level(readings(SpeedResult.Origin.MARK, true), 2);
        assertThat(level.detected()).isTrue();
        assertThat(level.estimator()).isEqualTo(Level.Estimator.BLOCK_RMS);
        assertClose(level.amplitude(), 0.305686037383861);
        assertClose(level.standardError(), 0.010682215088768546);
        assertClose(level.ciHigh() - level.amplitude(), 0.0227686024965275);
        assertClose(level.amplitude() - level.ciLow(), 0.0227686024965275);
        assertThat(level.phaseDeg()).isEmpty();
    }

    @Test
    @DisplayName("without a mark there is no phase, without a speed nothing is detected")
    void unsure() {
        assertThat(level(readings(SpeedResult.Origin.SIGNAL, true), 0).phaseDeg())
                .isEmpty();
        List<OrderReading> unconfirmed = readings(SpeedResult.Origin.SIGNAL, false);
        for (int line = 0; line < 4; line++) {
            assertThat(level(unconfirmed, line).detected()).isFalse();
        }
    }

    /** In blocks of a second lines nearer than 1.5 Hz can't be split: then nothing is said of a line's step. */
    @Test
    @DisplayName("a line with another close by isn't read block by block")
    void notAlone() {
        Level.Measured near = level(readings(SpeedResult.Origin.MARK, true, List.of(FittedLine.steady(61.3))), 2);
        assertThat(near.estimator()).isEqualTo(Level.Estimator.COHERENT);
        Level.Measured far = level(readings(SpeedResult.Origin.MARK, true, List.of(FittedLine.steady(61.7))), 2);
        assertThat(far.estimator()).isEqualTo(Level.Estimator.BLOCK_RMS);
    }
}
