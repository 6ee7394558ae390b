package evenblade.orders;

import evenblade.numeric.PositiveDefinite;
import evenblade.recording.Channel;
import evenblade.recording.Recording;
import evenblade.recording.Series;
import evenblade.speed.Clock;
import evenblade.speed.Dwell;
import evenblade.speed.OrderWaves;
import evenblade.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * All lines of one dwell fitted together by least squares at the true sample times, block by block
 * for the scatter and over the whole dwell for the amplitude.
 *
 * <p>The sums of the blocks are added and solved once: that is the fit over the whole dwell with each
 * block's level and slope fitted along, so lines much closer than a block could split come apart.
 * What each block would change in the result, u_b = G⁻¹C_b'r_b, gives the scatter of the estimate
 * without assuming white noise: the covariance M/(M−1) Σ u_b u_b' (cluster-robust, Liang &amp; Zeger
 * 1986, Biometrika 73:13, with blocks as clusters).
 */
final class DwellFit {
    private final List<FittedLine> lines;
    private final BlockSums[] blocks;
    private final double[] blockLengthS;
    private final double[][] inverse;
    private final double[][] solution;
    private final int[] firstSample;
    private final SpeedTrack track;
    private final Recording recording;

    private DwellFit(
            List<FittedLine> lines,
            BlockSums[] blocks,
            double[] blockLengthS,
            double[][] inverse,
            double[][] solution,
            int[] firstSample,
            SpeedTrack track,
            Recording recording) {
        this.lines = lines;
        this.blocks = blocks;
        this.blockLengthS = blockLengthS;
        this.inverse = inverse;
        this.solution = solution;
        this.firstSample = firstSample;
        this.track = track;
        this.recording = recording;
    }

    /** How many blocks a dwell is cut into: of about a second, at least eight, at most four hundred. */
    static int blockCount(double lengthS) {
        return (int) Math.max(8, Math.min(400, Math.round(lengthS)));
    }

    static DwellFit of(
            Recording recording, List<Channel> channels, SpeedTrack track, Dwell dwell, List<FittedLine> lines) {
        int count = blockCount(dwell.durationS());
        int[] first = blockStarts(recording, dwell, count);
        int columns = 2 * lines.size() + channels.size();
        BlockSums[] blocks = new BlockSums[count];
        double[] lengths = new double[count];
        IntStream.range(0, count).parallel().forEach(b -> {
            int n = first[b + 1] - first[b];
            lengths[b] = n / recording.time().rateHz();
            if (n >= 4) {
                double[][] values = columns(recording, channels, track, lines, first[b], n);
                double[] time = new double[n];
                recording.time().copyTo(first[b], time, n);
                blocks[b] = BlockSums.of(values, columns, n, time);
            }
        });
        BlockSums[] filled = java.util.Arrays.stream(blocks)
                .filter(java.util.Objects::nonNull)
                .toArray(BlockSums[]::new);
        double[] filledLengths = IntStream.range(0, count)
                .filter(b -> blocks[b] != null)
                .mapToDouble(b -> lengths[b])
                .toArray();
        int unknowns = 2 * lines.size();
        double[][] normal = new double[unknowns][unknowns];
        for (BlockSums block : filled) {
            for (int r = 0; r < unknowns; r++) {
                for (int c = 0; c < unknowns; c++) {
                    normal[r][c] += block.at(r, c);
                }
            }
        }
        double[][] inverse = PositiveDefinite.inverse(normal)
                .orElseThrow(() -> new IllegalStateException("the lines of this dwell are not independent"));
        double[][] solution = new double[channels.size()][unknowns];
        for (int ch = 0; ch < channels.size(); ch++) {
            for (BlockSums block : filled) {
                for (int r = 0; r < unknowns; r++) {
                    double sum = block.at(unknowns + ch, r);
                    for (int k = 0; k < unknowns; k++) {
                        solution[ch][k] += inverse[k][r] * sum;
                    }
                }
            }
        }
        return new DwellFit(lines, filled, filledLengths, inverse, solution, first, track, recording);
    }

    private static double[][] columns(
            Recording recording, List<Channel> channels, SpeedTrack track, List<FittedLine> lines, int first, int n) {
        int unknowns = 2 * lines.size();
        double[][] values = new double[unknowns + channels.size()][n];
        List<FittedLine> turning = lines.stream().filter(l -> l.steadyHz() == 0).toList();
        double[] orders = turning.stream().mapToDouble(FittedLine::order).toArray();
        double[][] cos = new double[orders.length][];
        double[][] sin = new double[orders.length][];
        int k = 0;
        for (int l = 0; l < lines.size(); l++) {
            if (lines.get(l).steadyHz() == 0) {
                cos[k] = values[2 * l];
                sin[k] = values[2 * l + 1];
                k++;
            } else {
                for (int i = 0; i < n; i++) {
                    double angle = 2
                            * Math.PI
                            * lines.get(l).steadyHz()
                            * recording.time().at(first + i);
                    values[2 * l][i] = Math.cos(angle);
                    values[2 * l + 1][i] = Math.sin(angle);
                }
            }
        }
        new OrderWaves(track, recording.time()).fill(orders, first, n, cos, sin);
        for (int c = 0; c < channels.size(); c++) {
            channels.get(c).values().copyTo(first, values[unknowns + c], n);
        }
        return values;
    }

    int blocks() {
        return blocks.length;
    }

    /** Mean length of a block, seconds. */
    double blockS() {
        return java.util.Arrays.stream(blockLengthS).average().orElseThrow();
    }

    double cosine(int channel, int line) {
        return solution[channel][2 * line];
    }

    double sine(int channel, int line) {
        return solution[channel][2 * line + 1];
    }

    double amplitude(int channel, int line) {
        return Math.hypot(cosine(channel, line), sine(channel, line));
    }

    /**
     * How the blocks scatter about one line's amplitude.
     *
     * @param alongVariance variance of the estimate along its own direction
     * @param acrossVariance and across it, which is phase
     * @param blockScatter mean square distance of the blocks' own amplitudes from the whole dwell's
     * @param blockSquares squared amplitude of each block
     */
    record Scatter(double alongVariance, double acrossVariance, double blockScatter, List<Double> blockSquares) {}

    /** The scatter of every line of a channel, in their order. */
    List<Scatter> scatter(int channel) {
        int unknowns = 2 * lines.size();
        double[] beta = solution[channel];
        double[][] gradient = new double[blocks.length][unknowns];
        for (int b = 0; b < blocks.length; b++) {
            for (int r = 0; r < unknowns; r++) {
                double g = blocks[b].at(unknowns + channel, r);
                for (int c = 0; c < unknowns; c++) {
                    g -= blocks[b].at(r, c) * beta[c];
                }
                gradient[b][r] = g;
            }
        }
        List<Scatter> all = new ArrayList<>();
        for (int line = 0; line < lines.size(); line++) {
            all.add(scatter(beta[2 * line], beta[2 * line + 1], line, gradient));
        }
        return all;
    }

    private Scatter scatter(double a, double b, int line, double[][] gradient) {
        double length = Math.max(Math.hypot(a, b), 1e-300);
        double along = 0;
        double across = 0;
        double away = 0;
        List<Double> squares = new ArrayList<>();
        for (int block = 0; block < blocks.length; block++) {
            double[] g = gradient[block];
            double ua = 0;
            double ub = 0;
            for (int r = 0; r < g.length; r++) {
                ua += inverse[2 * line][r] * g[r];
                ub += inverse[2 * line + 1][r] * g[r];
            }
            double alongStep = (ua * a + ub * b) / length;
            double acrossStep = (ub * a - ua * b) / length;
            along += alongStep * alongStep;
            across += acrossStep * acrossStep;
            BlockSums sums = blocks[block];
            double cc = sums.at(2 * line, 2 * line);
            double ss = sums.at(2 * line + 1, 2 * line + 1);
            double cs = sums.at(2 * line, 2 * line + 1);
            double determinant = cc * ss - cs * cs;
            double da = (ss * g[2 * line] - cs * g[2 * line + 1]) / determinant;
            double db = (cc * g[2 * line + 1] - cs * g[2 * line]) / determinant;
            away += da * da + db * db;
            squares.add((a + da) * (a + da) + (b + db) * (b + db));
        }
        double m = blocks.length;
        return new Scatter(along * m / (m - 1), across * m / (m - 1), away / (m - 1), squares);
    }

    private static final double SLICE_S = 0.4;

    /** What the residuals ask the track to be moved by, slice by slice, all channels and lines together. */
    List<SharpenedTrack.Wish> wishes(List<Channel> channels) {
        double[] weight = new double[channels.size()];
        for (int c = 0; c < weight.length; c++) {
            weight[c] = 1 / Math.max(residualVariance(c), 1e-300);
        }
        SharpenedTrack.Wish[][] perBlock = new SharpenedTrack.Wish[firstSample.length - 1][];
        IntStream.range(0, perBlock.length)
                .parallel()
                .forEach(b ->
                        perBlock[b] = wishes(channels, weight, firstSample[b], firstSample[b + 1] - firstSample[b]));
        return java.util.Arrays.stream(perBlock)
                .flatMap(java.util.Arrays::stream)
                .toList();
    }

    private SharpenedTrack.Wish[] wishes(List<Channel> channels, double[] weight, int first, int n) {
        int slices = (int) Math.max(1, Math.round(n / recording.time().rateHz() / SLICE_S));
        double[] above = new double[slices];
        double[] below = new double[slices];
        double[][] values = columns(recording, channels, track, lines, first, n);
        int unknowns = 2 * lines.size();
        double[] slope = new double[n];
        for (int c = 0; c < weight.length; c++) {
            double[] x = values[unknowns + c];
            java.util.Arrays.fill(slope, 0);
            for (int l = 0; l < lines.size(); l++) {
                double a = solution[c][2 * l];
                double b = solution[c][2 * l + 1];
                double turn = 2 * Math.PI * lines.get(l).order();
                double[] cos = values[2 * l];
                double[] sin = values[2 * l + 1];
                for (int i = 0; i < n; i++) {
                    x[i] -= a * cos[i] + b * sin[i];
                    slope[i] += turn * (b * cos[i] - a * sin[i]);
                }
            }
            Drift.remove(x, n);
            for (int i = 0; i < n; i++) {
                int s = (int) ((long) i * slices / n);
                above[s] += weight[c] * slope[i] * x[i];
                below[s] += weight[c] * slope[i] * slope[i];
            }
        }
        List<SharpenedTrack.Wish> wishes = new ArrayList<>();
        for (int s = 0; s < slices; s++) {
            int middle = first + (int) ((s + 0.5) * n / slices);
            if (below[s] > 0) {
                wishes.add(new SharpenedTrack.Wish(recording.time().at(middle), above[s] / below[s], 1 / below[s]));
            }
        }
        return wishes.toArray(SharpenedTrack.Wish[]::new);
    }

    /** Mean square of what the fit leaves of a channel. */
    private double residualVariance(int channel) {
        int unknowns = 2 * lines.size();
        double squares = 0;
        double samples = 0;
        for (int b = 0; b < blocks.length; b++) {
            double fitted = 0;
            for (int r = 0; r < unknowns; r++) {
                double product = blocks[b].at(unknowns + channel, r);
                double own = 0;
                for (int c = 0; c < unknowns; c++) {
                    own += blocks[b].at(r, c) * solution[channel][c];
                }
                fitted += solution[channel][r] * (2 * product - own);
            }
            squares += blocks[b].at(unknowns + channel, unknowns + channel) - fitted;
            samples += blockLengthS[b] * recording.time().rateHz();
        }
        return squares / samples;
    }

    /**
     * What the fit leaves of a channel, block by block with each block's level and slope taken out.
     *
     * @param wide the recording fitted, or the same at a higher rate
     * @param ofWide its channels, in the order of those fitted
     * @param channel which of them
     * @param dwell the dwell fitted
     */
    Series residual(Recording wide, List<Channel> ofWide, int channel, Dwell dwell) {
        int count = firstSample.length - 1;
        int[] first = blockStarts(wide, dwell, count);
        float[] residual = new float[first[count] - first[0]];
        List<Channel> one = List.of(ofWide.get(channel));
        IntStream.range(0, count).parallel().forEach(b -> {
            int n = first[b + 1] - first[b];
            if (n < 1) {
                return;
            }
            double[][] values = columns(wide, one, track, lines, first[b], n);
            double[] x = values[2 * lines.size()];
            for (int k = 0; k < 2 * lines.size(); k++) {
                double factor = solution[channel][k];
                double[] column = values[k];
                for (int i = 0; i < n; i++) {
                    x[i] -= factor * column[i];
                }
            }
            Drift.remove(x, n);
            for (int i = 0; i < n; i++) {
                residual[first[b] - first[0] + i] = (float) x[i];
            }
        });
        return Series.ofFloats(residual, residual.length);
    }

    private static int[] blockStarts(Recording recording, Dwell dwell, int count) {
        int[] first = new int[count + 1];
        for (int b = 0; b <= count; b++) {
            first[b] = Clock.indexAt(recording.time(), dwell.fromS() + b * dwell.durationS() / count);
        }
        return first;
    }

    /** Level and slope of a block. */
    private static final class Drift {
        private Drift() {}

        static void remove(double[] x, int n) {
            double mean = 0;
            double moment = 0;
            double norm = 0;
            double middle = (n - 1) / 2.0;
            for (int i = 0; i < n; i++) {
                mean += x[i] / n;
                moment += x[i] * (i - middle);
                norm += (i - middle) * (i - middle);
            }
            double slope = norm > 0 ? moment / norm : 0;
            for (int i = 0; i < n; i++) {
                x[i] -= mean + slope * (i - middle);
            }
        }
    }
}
