package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.input.recording.Stretch;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/**
 * One dwell of four lines and two channels beside figures made by numpy and scipy from the definitions:
 * {@code reference/orders/dwell.py}, which makes the same samples. They agree to ten digits where sums are the same, so what
 * is asked is eight of the largest figure; single precision keeps seven of what is left.
 */
@DisplayName("One dwell, beside figures made by another program")
class DwellReferenceTest {
    private static final double RATE_HZ = 200;
    private static final int SIZE = 1600;
    private static final double[][] AMPLITUDES = {{0.7, 0.2}, {-0.3, 0.4}, {0.25, -0.1}, {0.05, 0.15}};
    private static final List<FittedLine> LINES = List.of(
            new FittedLine(List.of(), 1, 0),
            new FittedLine(List.of(), 2.43, 0),
            new FittedLine(List.of(), 3, 0),
            FittedLine.steady(27.3));

    /** 20 Hz, faster by 0.2 Hz every second. */
    private static final SpeedTrack RISING = new SpeedTrack() {
        @Override
        public double fromS() {
            return 0;
        }

        @Override
        public double toS() {
            return 8;
        }

        @Override
        public double revolutionsAt(double t) {
            return 20 * t + 0.1 * t * t;
        }

        @Override
        public double propellerHzAt(double t) {
            return 20 + 0.2 * t;
        }
    };

    private static Series samples(double scale, int a, int b, double level) {
        double[] x = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            double t = i / RATE_HZ;
            x[i] = level + 0.02 * t * t + 0.3 * (((long) i * i * a + (long) i * b) % 1009 / 1009.0 - 0.5);
            for (int k = 0; k < LINES.size(); k++) {
                FittedLine line = LINES.get(k);
                double angle = 2
                        * Math.PI
                        * (line.steadyHz() > 0 ? line.steadyHz() * t : line.order() * RISING.revolutionsAt(t));
                x[i] += scale
                        * (1 + 0.02 * k * Math.sin(1.1 * t + k))
                        * (AMPLITUDES[k][0] * Math.cos(angle) + AMPLITUDES[k][1] * Math.sin(angle));
            }
        }
        return Series.of(x);
    }

    private static DwellFit fit() {
        List<Channel> channels = List.of(
                new Channel("x", SignalUnit.METRE_PER_SECOND_SQUARED, samples(1, 37, 11, 3)),
                new Channel("y", SignalUnit.METRE_PER_SECOND_SQUARED, samples(0.4, 53, 29, -1)));
        TimeBase time = new TimeBase.Even(0, RATE_HZ, SIZE);
        Recording recording =
                new Recording(null, time, channels, List.of(), Optional.empty(), List.of(), List.of(new Stretch(0, 8)));
        Dwell dwell = new Dwell(0, 8, 20.8, 1e-4, 20, 21.6);
        return DwellFit.of(new DwellBlocks(recording, channels, dwell, LINES), RISING)
                .orElseThrow();
    }

    private static Offset<Double> digits(double size, int digits) {
        return within(size * Math.pow(10, -digits));
    }

    @Test
    @DisplayName("amplitudes are those of least squares over all samples with each block's level and slope beside")
    void amplitudes() {
        double[][] solutions = {
            {
                0.6988684351009845,
                0.1958069069753731,
                -0.298405277930215,
                0.4028290510211766,
                0.2478729868895263,
                -0.10219477459577293,
                0.0473107507980765,
                0.1451123862306406
            },
            {
                0.28246889063032127,
                0.08009248139054562,
                -0.11952697543383117,
                0.1586063564896804,
                0.09699541393479683,
                -0.03712529768116165,
                0.017832927223269485,
                0.05776575434520423
            }
        };
        DwellFit fit = fit();
        assertThat(fit.blocks()).isEqualTo(8);
        assertThat(fit.blockS()).isEqualTo(1);
        for (DwellFit each : List.of(fit, fit.settled(), fit.on(RISING))) {
            for (int c = 0; c < 2; c++) {
                for (int line = 0; line < 4; line++) {
                    assertThat(each.cosine(c, line)).isCloseTo(solutions[c][2 * line], digits(1, 8));
                    assertThat(each.sine(c, line)).isCloseTo(solutions[c][2 * line + 1], digits(1, 8));
                    assertThat(each.amplitude(c, line))
                            .isCloseTo(Math.hypot(solutions[c][2 * line], solutions[c][2 * line + 1]), digits(1, 8));
                }
            }
        }
    }

    @Test
    @DisplayName("their scatter is that of the blocks")
    void scatter() {
        double[][] expected = {
            {5.996231274445084e-06, 3.246098734944134e-06, 7.380784530123955e-05},
            {1.4481026631475061e-05, 2.134753585608244e-05, 0.0002878447124582214},
            {2.4496492324597276e-05, 5.962750250624831e-06, 0.0002442110993212682},
            {6.204096982459106e-06, 1.1444564129701195e-05, 0.0001415208355512382}
        };
        double[] squares = {
            0.25954423672689225,
            0.24510350663192507,
            0.2314534739101682,
            0.24924154713580965,
            0.2482252618450193,
            0.2533436609512503,
            0.26577658698061224,
            0.2597582262100844
        };
        List<DwellFit.Scatter> scatter = fit().settled().scatter(0);
        for (int line = 0; line < 4; line++) {
            assertThat(scatter.get(line).alongVariance()).isCloseTo(expected[line][0], digits(expected[line][0], 6));
            assertThat(scatter.get(line).acrossVariance()).isCloseTo(expected[line][1], digits(expected[line][1], 6));
            assertThat(scatter.get(line).blockScatter()).isCloseTo(expected[line][2], digits(expected[line][2], 6));
        }
        for (int block = 0; block < squares.length; block++) {
            assertThat(scatter.get(1).blockSquares().get(block)).isCloseTo(squares[block], digits(1, 8));
        }
        double[] other = {1.936554038351059e-05, 8.739511184108107e-06, 0.00022431348114986154};
        DwellFit.Scatter ofOther = fit().settled().scatter(1).get(2);
        assertThat(ofOther.alongVariance()).isCloseTo(other[0], digits(other[0], 6));
        assertThat(ofOther.acrossVariance()).isCloseTo(other[1], digits(other[1], 6));
        assertThat(ofOther.blockScatter()).isCloseTo(other[2], digits(other[2], 6));
    }

    @Test
    @DisplayName("what is left asks for the angle that fits each slice better")
    void wishes() {
        List<SharpenedTrack.TrackCorrection> wishes = fit().lookedThrough().wishes();
        assertThat(wishes).hasSize(80);
        double[][] expected = {
            {0, 0.05, -0.0020651221847852127, 6.8848316021345484e-06},
            {1, 0.15, -0.004166615092841905, 6.882121002012788e-06},
            {17, 1.75, -0.002065956466751992, 5.873395983658942e-06},
            {79, 7.95, -0.0036234353414738374, 6.078062752313041e-06}
        };
        for (double[] each : expected) {
            SharpenedTrack.TrackCorrection wish = wishes.get((int) each[0]);
            assertThat(wish.timeS()).isCloseTo(each[1], digits(1, 9));
            assertThat(wish.revolutions()).isCloseTo(each[2], digits(0.002, 6));
            assertThat(wish.variance()).isCloseTo(each[3], digits(each[3], 6));
        }
    }

    @Test
    @DisplayName("noise beside a line is the median of Welch's spectrum there, other lines left out")
    void noise() {
        ResidualSpectrum spectrum = new ResidualSpectrum(fit().settled().residual(0), RATE_HZ);
        ResidualSpectrum.Noise alone = spectrum.around(30, List.of());
        assertThat(alone.unitSquaredPerHz()).isCloseTo(7.828693115340749e-05, digits(1e-4, 6));
        assertThat(alone.dof()).isCloseTo(117.04, digits(100, 9));
        ResidualSpectrum.Noise beside = spectrum.around(30, List.of(34.6, 36.0));
        assertThat(beside.unitSquaredPerHz()).isCloseTo(8.671265840358074e-05, digits(1e-4, 6));
        assertThat(beside.dof()).isCloseTo(83.6, digits(100, 9));
        // Near zero there are bins on one side only, here an odd number.
        ResidualSpectrum.Noise low = spectrum.around(3.1, List.of());
        assertThat(low.unitSquaredPerHz()).isCloseTo(7.101788599276306e-05, digits(1e-4, 6));
        assertThat(low.dof()).isCloseTo(75.24, digits(100, 9));
    }

    @Test
    @DisplayName("sums of products are free of each column's level and slope")
    void sumsOfProducts() {
        // Orthogonal polynomials over five places, of degree 2, 3 and 4 with squares 14, 10 and 70, level and slope
        // added.
        double[][] free = {{2, -1, -2, -1, 2}, {-1, 2, 0, -2, 1}, {1, -4, 6, -4, 1}};
        double[][] parts = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}, {1, 1, 0}, {1, 0, -1}, {2, 1, 3}, {0, -1, 2}};
        double[] time = {3, 3.5, 4, 4.5, 5};
        double[][] columns = new double[parts.length][5];
        for (int k = 0; k < parts.length; k++) {
            for (int i = 0; i < 5; i++) {
                columns[k][i] = 7 - 3 * k + (0.5 + k) * time[i];
                for (int d = 0; d < 3; d++) {
                    columns[k][i] += parts[k][d] * free[d][i];
                }
            }
        }
        BlockSums sums = BlockSums.of(columns, parts.length, 5, time);
        double[][] matrix = new double[parts.length][parts.length];
        sums.addTo(matrix);
        for (int r = 0; r < parts.length; r++) {
            for (int c = 0; c <= r; c++) {
                double expected = 14 * parts[r][0] * parts[c][0]
                        + 10 * parts[r][1] * parts[c][1]
                        + 70 * parts[r][2] * parts[c][2];
                assertThat(sums.at(r, c)).isCloseTo(expected, digits(1000, 10));
                assertThat(sums.at(c, r)).isCloseTo(expected, digits(1000, 10));
                assertThat(matrix[r][c]).isCloseTo(expected, digits(1000, 10));
            }
        }
    }

    /** A correction of 0.01·t² − 0.03·t turns, read exactly: between its readings the curve goes through them as it bends. */
    @Test
    @DisplayName("a sharpened track follows what was asked, and goes on straight beyond")
    void sharpened() {
        List<SharpenedTrack.TrackCorrection> wishes = new ArrayList<>();
        for (int k = 0; k <= 40; k++) {
            double t = 1 + 0.1 * k;
            wishes.add(new SharpenedTrack.TrackCorrection(t, 0.01 * t * t - 0.03 * t, 1e-12));
        }
        SpeedTrack track = SharpenedTrack.of(RISING, wishes);
        for (double t : new double[] {1.03, 2.5, 2.56, 3.999, 4.97}) {
            // Half a thousandth of the correction's range; the ends' rates are known less well.
            assertThat(track.revolutionsAt(t) - RISING.revolutionsAt(t))
                    .as("at " + t)
                    .isCloseTo(0.01 * t * t - 0.03 * t, within(5e-5));
        }
        for (double t : new double[] {2.5, 2.56, 3.999}) {
            assertThat(track.propellerHzAt(t) - RISING.propellerHzAt(t)).isCloseTo(0.02 * t - 0.03, within(5e-4));
        }
        double end = track.revolutionsAt(5) - RISING.revolutionsAt(5);
        double rate = track.propellerHzAt(5) - RISING.propellerHzAt(5);
        assertThat(track.revolutionsAt(7) - RISING.revolutionsAt(7)).isCloseTo(end + 2 * rate, within(1e-9));
        double start = track.revolutionsAt(1) - RISING.revolutionsAt(1);
        double first = track.propellerHzAt(1) - RISING.propellerHzAt(1);
        assertThat(track.revolutionsAt(0.5) - RISING.revolutionsAt(0.5)).isCloseTo(start - 0.5 * first, within(1e-9));
        double squares = wishes.stream()
                .mapToDouble(w -> w.revolutions() * w.revolutions())
                .average()
                .orElseThrow();
        assertThat(SharpenedTrack.size(track)).isCloseTo(Math.sqrt(squares), within(1e-6));
    }
}
