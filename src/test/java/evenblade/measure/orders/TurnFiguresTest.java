package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Reduction;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Figures of a turn and of a level whose closed form is known. */
@DisplayName("Figures of a mean turn, of blades, of a level, by hand")
class TurnFiguresTest {
    private static final double RATE_HZ = 4000;
    private static final double HZ = 20;

    private static final SpeedTrack STEADY = new SpeedTrack() {
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
            return HZ * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return HZ;
        }
    };

    private static Series samples(int size, DoubleUnaryOperator ofTime) {
        return Series.of(IntStream.range(0, size)
                .mapToDouble(i -> ofTime.applyAsDouble(i / RATE_HZ))
                .toArray());
    }

    /**
     * A wave of (1 ± 0.3)·cos θ + 0.5·sin θ + 3, by turns, over 40 turns: the mean is cos θ + 0.5·sin θ, and its scatter at θ
     * is 0.3·|cos θ|·√(40/39), so its error 0.3·|cos θ|/√39.
     */
    @Test
    @DisplayName("the error of a mean turn is its scatter over the root of the turns")
    void errorOfTheMean() {
        int size = (int) (2.001 * RATE_HZ) + 1;
        Series x = samples(size, t -> {
            double turns = HZ * t;
            double strength = 1 + ((int) Math.floor(turns + 1e-9) % 2 == 0 ? 0.3 : -0.3);
            return 3 + strength * Math.cos(2 * Math.PI * turns) + 0.5 * Math.sin(2 * Math.PI * turns);
        });
        AngleAverage turn = AngleAverage.of(new TimeBase.Even(0, RATE_HZ, size), x, STEADY, 0, 2.0005, 20)
                .orElseThrow();
        assertThat(turn.turns()).isEqualTo(40);
        for (int k = 0; k < 20; k++) {
            double angle = 2 * Math.PI * k / 20;
            // The cubic between samples, 200 to a turn, is good to 1e-6; a turn's first place falls between two
            // strengths.
            assertThat(turn.mean().at(k)).isCloseTo(Math.cos(angle) + 0.5 * Math.sin(angle), within(0.016));
            assertThat(turn.standardError().at(k))
                    .isCloseTo(0.3 * Math.abs(Math.cos(angle)) / Math.sqrt(39), within(k == 0 ? 0.01 : 1e-5));
        }
    }

    /** Three pushes of 1, 1.06 and 1, a fiftieth of a turn wide: 0.06 less a third of it over their mean 1.02, and the others. */
    @Test
    @DisplayName("a blade's strength is told from the mean of all, its place from the mark")
    void strength() {
        int size = (int) (12 * RATE_HZ);
        double[] strength = {1, 1.06, 1};
        Series x = samples(size, t -> {
            double sum = 0.5 * Math.cos(2 * Math.PI * HZ * t) + 0.3;
            for (int b = 0; b < 3; b++) {
                double u = HZ * t - b / 3.0 - 0.05;
                u = (u - Math.rint(u)) / 0.02;
                sum += strength[b] * u * Math.exp(0.5 - u * u / 2);
            }
            return sum;
        });
        BladeShares found = BladeShares.of(
                        new TimeBase.Even(0, RATE_HZ, size), x, STEADY, new Dwell(0, 12, HZ, 0.001, HZ, HZ), table())
                .orElseThrow();
        assertThat(found.blocks()).isEqualTo(24);
        double[] expected = {-0.02 / 1.02, 0.04 / 1.02, -0.02 / 1.02};
        for (int b = 0; b < 3; b++) {
            BladeShares.Share share = found.shares().get(b);
            // Steps of 2° on a push 7° wide: what isn't fitted is a thousandth.
            assertThat(share.strength().value()).isCloseTo(expected[b], within(1e-3));
            assertThat(share.late().value()).isCloseTo(0, within(0.02));
            double at = b / 3.0 + 0.05;
            assertThat(share.atTurns()).isCloseTo(at - Math.rint(at), within(1 / 180.0));
        }
        // Student's t with 23·2 degrees, from a table: 2.0129.
        assertThat(found.interval95()).isCloseTo(2.0129, within(1e-4));
        // 0.045·(1 + 2.5/9)/3 and 0.005/3, two sides, by scipy.
        assertThat(found.quantile(true)).isCloseTo(2.4277, within(1e-3));
        assertThat(found.quantile(false)).isCloseTo(3.3404, within(1e-3));
    }

    private static final Installation GEARED = new Installation(
            Optional.empty(),
            new Engine(Engine.Cycle.FOUR_STROKE, 4, OptionalDouble.empty(), OptionalDouble.empty()),
            new Reduction(Reduction.Kind.UNSTATED, 2.43, Optional.empty()),
            new Installation.Propeller(3, Optional.empty(), Optional.empty()),
            List.of());

    private static OrderTable table() {
        return GEARED.orders();
    }

    /** 2.43 and 1 % are 2.4543; of 20 Hz a clock good to 50 ppm leaves 0.001 Hz beside 0.002 Hz of the lines. */
    @Test
    @DisplayName("a ratio is told as corrected, a speed with the error of the clock")
    void ratioAndClock() {
        Dwell dwell = new Dwell(0, 10, HZ, 0.002, HZ, HZ);
        RunOrders run = new RunOrders(
                null,
                GEARED,
                new SpeedResult(
                        SpeedResult.Origin.SIGNAL,
                        true,
                        Optional.empty(),
                        STEADY,
                        Optional.of(dwell),
                        List.of(dwell),
                        0.01,
                        List.of()),
                List.of(),
                List.of(),
                Optional.empty(),
                List.of());
        assertThat(run.ratio()).isCloseTo(2.4543, within(1e-12));
        assertThat(run.standardErrorHz(dwell)).isCloseTo(0.001 * Math.sqrt(5), within(1e-12));
    }

    /**
     * Uneven 3 ± 0.1 and 4 ± 0.2, even 12 ± 0.3 and 5 ± 0.1: 5/13. Variances of the sums of squares 4·A²σ² + 4σ⁴: 2.9268 and
     * 52.8728; of half their logarithms √2.9268/50 = 0.034216 and √52.8728/338 = 0.021513, together 0.040417.
     */
    @Test
    @DisplayName("unevenness and its interval follow from the lines and their errors")
    void unevenness() {
        Map<String, double[]> found = Map.of(
                "propeller 1×", new double[] {3, 0.1},
                "propeller 2×", new double[] {4, 0.2},
                "blade pass", new double[] {12, 0.3},
                "2× blade pass", new double[] {5, 0.1},
                "crank 1×", new double[] {9, 0.1});
        List<OrderReading> readings = new ArrayList<>();
        for (OrderLine line : table().lines()) {
            double[] level = found.get(line.name());
            if (level != null) {
                readings.add(new OrderReading(
                        line,
                        line.propellerOrder() * HZ,
                        new Level.Measured(
                                level[0], level[1], 0, 99, OptionalDouble.empty(), true, Level.Estimator.COHERENT),
                        List.of()));
            }
        }
        assertThat(readings).anyMatch(r -> r.line().of() == Shaft.CRANK);
        DwellOrders.Unevenness index = UnevennessIndex.of(readings, table()).orElseThrow();
        assertThat(index.value()).isCloseTo(5 / 13.0, within(1e-12));
        assertThat(Math.log(index.ciHigh() / index.value())).isCloseTo(1.96 * 0.040417, within(1e-5));
        assertThat(Math.log(index.value() / index.ciLow())).isCloseTo(1.96 * 0.040417, within(1e-5));
    }

    /** A wave of 30 Hz about 9.8, its size (1 + 0.3·cos 2π·3t): E is that size; by 0.6/1.3 of its most. */
    @Test
    @DisplayName("a level is the size of the wave, and its swell by how much it falls")
    void level() {
        int size = (int) (17 * RATE_HZ);
        Series x =
                samples(size, t -> 9.8 + (1 + 0.3 * Math.cos(2 * Math.PI * 3 * t)) * Math.cos(2 * Math.PI * 100 * t));
        SlowSwell found = SlowSwell.of(new TimeBase.Even(0, RATE_HZ, size), x, new Dwell(2, 17, HZ, 0.001, HZ, HZ))
                .orElseThrow();
        assertThat(found.timeS().at(0)).isCloseTo(2.0425, within(1e-9));
        assertThat(found.timeS().at(100)).isCloseTo(2.5425, within(1e-9));
        for (int k = 0; k < 400; k += 37) {
            double size3 = 1 + 0.3 * Math.cos(2 * Math.PI * 3 * found.timeS().at(k));
            // The window of 80 ms takes a part in twenty off a swell of 3 Hz.
            assertThat(found.level().at(k)).isCloseTo(size3, within(0.025));
        }
        SlowSwell.Swell swell = found.swell().orElseThrow();
        assertThat(swell.hz()).isCloseTo(3, within(0.02));
        // As of two sines: m of E² is 2·0.3/(1 + 0.3²/2), r = (1 − √(1 − m²))/m.
        double m = 0.6 / 1.045;
        double r = (1 - Math.sqrt(1 - m * m)) / m;
        assertThat(swell.depth()).isCloseTo(2 * r / (1 + r), within(0.01));
    }
}
