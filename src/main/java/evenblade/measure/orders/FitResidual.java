package evenblade.measure.orders;

import evenblade.input.recording.Series;
import evenblade.input.recording.SeriesBuilder;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What given amplitudes of the lines leave of a dwell's samples, level and slope of each block taken
 * out, and its sums of products with every column, C_b'r_b.
 */
final class FitResidual {
    private static final double SLICE_S = 0.1; // some turns of a propeller

    /** What is wanted beside the sums. */
    enum Asked {
        SUMS,
        WISHES,
        RESIDUAL
    }

    private final DwellBlocks blocks;
    /** By channel, block and unknown. */
    private final double[][][] gradient;
    /** Sum of squares by channel and block. */
    private final double[][] squares;

    /** By channel and block. */
    private final float[][][] residual;
    /** By block, channel and slice: Σ slope × residual, Σ slope². */
    private final double[][][] wished;

    private final double[][][] sensed;

    private FitResidual(DwellBlocks blocks, Asked asked) {
        int channels = blocks.channels();
        this.blocks = blocks;
        this.gradient = new double[channels][blocks.blocks()][];
        this.squares = new double[channels][blocks.blocks()];
        this.residual = new float[asked == Asked.RESIDUAL ? channels : 0][blocks.blocks()][];
        this.wished = new double[asked == Asked.WISHES ? blocks.blocks() : 0][channels][];
        this.sensed = new double[wished.length][channels][];
    }

    static FitResidual of(DwellBlocks blocks, SpeedTrack track, double[][] solution, Asked asked) {
        return of(blocks, track, solution, asked, (block, count, columns) -> {});
    }

    /** Does some more work on every block once it has been held against the columns. */
    static FitResidual of(
            DwellBlocks blocks, SpeedTrack track, double[][] solution, Asked asked, DwellBlocks.Work more) {
        FitResidual left = new FitResidual(blocks, asked);
        left.fill(track, solution, more);
        return left;
    }

    private void fill(SpeedTrack track, double[][] solution, DwellBlocks.Work more) {
        int unknowns = blocks.unknowns();
        blocks.forEach(track, (block, count, columns) -> {
            for (int c = 0; c < solution.length; c++) {
                double[] x = columns[unknowns + c];
                takeOut(columns, solution[c], x, count);
                removeDrift(x, count);
                gradient[c][block] = Products.of(x, columns, unknowns, count);
                squares[c][block] = product(x, x, 0, count);
                if (residual.length > 0) {
                    residual[c][block] = single(x, count);
                }
                if (wished.length > 0) {
                    wish(block, c, x, slope(columns, solution[c], count, track.ofCrank() == track), count);
                }
            }
            more.on(block, count, columns);
        });
    }

    private static float[] single(double[] x, int count) {
        float[] single = new float[count];
        for (int i = 0; i < count; i++) {
            single[i] = (float) x[i];
        }
        return single;
    }

    private static void takeOut(double[][] columns, double[] solution, double[] x, int count) {
        for (int k = 0; k < solution.length; k += 2) {
            if (solution[k] != 0 || solution[k + 1] != 0) {
                takeOut(columns[k], columns[k + 1], solution[k], solution[k + 1], x, count);
            }
        }
    }

    private static void takeOut(double[] cos, double[] sin, double a, double b, double[] x, int count) {
        for (int i = 0; i < count; i++) {
            x[i] -= a * cos[i] + b * sin[i];
        }
    }

    /**
     * Change of the lines' sum per revolution.
     *
     * @param ofCrank whether the crank's lines are among them
     */
    private double[] slope(double[][] columns, double[] solution, int count, boolean ofCrank) {
        double[] slope = new double[count];
        for (int k = 0; k < solution.length; k += 2) {
            FittedLine line = blocks.lines().get(k / 2);
            double turn = line.ofCrank() && !ofCrank ? 0 : 2 * Math.PI * line.order();
            takeOut(columns[k], columns[k + 1], -turn * solution[k + 1], turn * solution[k], slope, count);
        }
        return slope;
    }

    private void wish(int block, int channel, double[] x, double[] slope, int count) {
        int slices = slices(count);
        double[] above = new double[slices];
        double[] below = new double[slices];
        for (int s = 0; s < slices; s++) {
            int from = (int) ((long) s * count / slices);
            int to = (int) ((s + 1L) * count / slices);
            above[s] = product(slope, x, from, to);
            below[s] = product(slope, slope, from, to);
        }
        wished[block][channel] = above;
        sensed[block][channel] = below;
    }

    private static double product(double[] x, double[] y, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }

    private int slices(int count) {
        return (int) Math.max(1, Math.round(count / blocks.rateHz() / SLICE_S));
    }

    private static void removeDrift(double[] x, int count) {
        double sum = 0;
        double moment = 0;
        double middle = (count - 1) / 2.0;
        for (int i = 0; i < count; i++) {
            sum += x[i];
            moment += x[i] * (i - middle);
        }
        double mean = sum / count;
        // The squares of count places round their middle add up to count·(count² − 1)/12.
        double slope = count > 1 ? 12 * moment / (count * (count * (double) count - 1)) : 0;
        for (int i = 0; i < count; i++) {
            x[i] -= mean + slope * (i - middle);
        }
    }

    /** C'r over the whole dwell. */
    double[] sum(int channel) {
        double[] sum = new double[blocks.unknowns()];
        for (double[] ofBlock : gradient[channel]) {
            for (int k = 0; k < sum.length; k++) {
                sum[k] += ofBlock[k];
            }
        }
        return sum;
    }

    /**
     * C'r of every block, for a solution one step further on: the blocks' shares of the sum, which that
     * step has brought to nothing, are taken out.
     */
    double[][] gradient(int channel) {
        double[] sum = sum(channel);
        double[][] left = new double[blocks.blocks()][];
        for (int b = 0; b < left.length; b++) {
            double share = blocks.count(b) / (double) blocks.samples();
            left[b] = gradient[channel][b].clone();
            for (int k = 0; k < sum.length; k++) {
                left[b][k] -= share * sum[k];
            }
        }
        return left;
    }

    /** Mean square. */
    double variance(int channel) {
        return Arrays.stream(squares[channel]).sum() / blocks.samples();
    }

    Series residual(int channel) {
        SeriesBuilder series = new SeriesBuilder();
        for (float[] ofBlock : residual[channel]) {
            series.append(ofBlock, 0, ofBlock.length);
        }
        return series.build(1);
    }

    /** What the residuals ask the track to be moved by, slice by slice, all channels and lines together. */
    List<SharpenedTrack.TrackCorrection> wishes() {
        List<SharpenedTrack.TrackCorrection> wishes = new ArrayList<>();
        double[] weight = new double[gradient.length];
        // A residual of exact zeros has no variance.
        Arrays.setAll(weight, c -> 1 / Math.max(variance(c), 1e-300));
        for (int b = 0; b < wished.length; b++) {
            int slices = slices(blocks.count(b));
            for (int s = 0; s < slices; s++) {
                double above = 0;
                double below = 0;
                for (int c = 0; c < gradient.length; c++) {
                    above += weight[c] * wished[b][c][s];
                    below += weight[c] * sensed[b][c][s];
                }
                if (below > 0) {
                    int middle = blocks.first(b) + (int) ((s + 0.5) * blocks.count(b) / slices);
                    wishes.add(new SharpenedTrack.TrackCorrection(blocks.timeS(middle), above / below, 1 / below));
                }
            }
        }
        return wishes;
    }
}
