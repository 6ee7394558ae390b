package evenblade.measure.orders;

import evenblade.input.recording.Series;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * All lines of one dwell fitted together by least squares at the true sample times, block by block
 * for the scatter and over the whole dwell for the amplitude.
 *
 * <p>Each block's level and slope are fitted along; the sums of all blocks are solved at once, so lines
 * much closer than a block could split come apart. The fit goes in steps: what the lines found so far
 * leave is held against the columns, sample by sample, and the matrix of {@link NormalMatrix} turns
 * that into a better answer, until a step no longer matters.
 *
 * <p>What each block would change in the result, u_b = G⁻¹C_b'r_b, gives the scatter of the estimate
 * without assuming white noise: the covariance M/(M−1) Σ u_b u_b' (cluster-robust, Liang &amp; Zeger
 * 1986, Biometrika 73:13, with blocks as clusters).
 */
final class DwellFit {
    private static final int MOST_STEPS = 6; // ours: a bound, so that it always ends
    /** Scatter takes two blocks at least. */
    private static final int LEAST_BLOCKS = 2;

    private final DwellBlocks blocks;
    private final SpeedTrack track;
    private final NormalMatrix normal;
    /** Cosine and sine of each line in turn, by channel. */
    private final double[][] solution;
    /** What the solution was found from. */
    private final FitResidual leftover;

    private DwellFit(
            DwellBlocks blocks, SpeedTrack track, NormalMatrix normal, double[][] solution, FitResidual leftover) {
        this.blocks = blocks;
        this.track = track;
        this.normal = normal;
        this.solution = solution;
        this.leftover = leftover;
    }

    /** A first answer; empty where the samples of the dwell can't tell these lines apart. */
    static Optional<DwellFit> of(DwellBlocks blocks, SpeedTrack track) {
        if (blocks.blocks() < LEAST_BLOCKS) {
            return Optional.empty();
        }
        double[][] nothing = new double[blocks.channels()][blocks.unknowns()];
        NormalMatrix.Accumulator sums = new NormalMatrix.Accumulator(blocks);
        FitResidual all = FitResidual.of(blocks, track, nothing, FitResidual.Asked.SUMS, sums);
        return sums.matrix().map(normal -> new DwellFit(blocks, track, normal, nothing, all).moved(all));
    }

    /** One step better, with what was asked for told of what the lines so far leave. */
    private DwellFit stepped(FitResidual.Asked asked) {
        return moved(FitResidual.of(blocks, track, solution, asked));
    }

    private DwellFit moved(FitResidual left) {
        double[][] better = new double[solution.length][];
        for (int c = 0; c < solution.length; c++) {
            double[] sum = left.sum(c);
            better[c] = solution[c].clone();
            for (int k = 0; k < sum.length; k++) {
                better[c][k] += normal.solved(k, sum);
            }
        }
        return new DwellFit(blocks, track, normal, better, left);
    }

    /** One step better, with what the residuals ask the track to be moved by. */
    DwellFit lookedThrough() {
        return stepped(FitResidual.Asked.WISHES);
    }

    /** These lines on a track that is slightly other. */
    DwellFit on(SpeedTrack other) {
        return new DwellFit(blocks, other, normal, solution, leftover).stepped(FitResidual.Asked.SUMS);
    }

    /** The answer, from which another step would not matter, with what it leaves kept. */
    DwellFit settled() {
        DwellFit fit = this;
        for (int step = 0; step < MOST_STEPS; step++) {
            DwellFit next = fit.stepped(FitResidual.Asked.RESIDUAL);
            boolean still = next.movedFrom(fit) < 1;
            fit = next;
            if (still) {
                break;
            }
        }
        return fit;
    }

    /** Largest change of any coefficient, in standard errors under white noise. */
    private double movedFrom(DwellFit before) {
        double most = 0;
        for (int c = 0; c < solution.length; c++) {
            double variance = leftover.variance(c) / blocks.samples();
            for (int k = 0; k < solution[c].length; k++) {
                double moved = solution[c][k] - before.solution[c][k];
                // A residual of exact zeros has no variance.
                most = Math.max(most, moved * moved / Math.max(2 * variance, 1e-300));
            }
        }
        return Math.sqrt(most);
    }

    /** What the residuals ask the track to be moved by, where they were looked through for it. */
    List<SharpenedTrack.TrackCorrection> wishes() {
        return leftover.wishes();
    }

    /**
     * What the fit leaves of a channel, evenly from the dwell's first sample to its last, each block's
     * level and slope taken out; only of a settled fit.
     */
    Series residual(int channel) {
        return leftover.residual(channel);
    }

    int blocks() {
        return blocks.blocks();
    }

    /** Mean length of a block, seconds. */
    double blockS() {
        return blocks.samples() / blocks.rateHz() / blocks.blocks();
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
        double[][] gradient = leftover.gradient(channel);
        List<Scatter> all = new ArrayList<>();
        for (int line = 0; line < blocks.lines().size(); line++) {
            all.add(scatter(cosine(channel, line), sine(channel, line), line, gradient));
        }
        return all;
    }

    private Scatter scatter(double a, double b, int line, double[][] gradient) {
        // A line of exact zeros has no direction.
        double length = Math.max(Math.hypot(a, b), 1e-300);
        double along = 0;
        double across = 0;
        double away = 0;
        List<Double> squares = new ArrayList<>();
        for (int block = 0; block < gradient.length; block++) {
            double[] g = gradient[block];
            double ua = normal.solved(2 * line, g);
            double ub = normal.solved(2 * line + 1, g);
            double alongStep = (ua * a + ub * b) / length;
            double acrossStep = (ub * a - ua * b) / length;
            along += alongStep * alongStep;
            across += acrossStep * acrossStep;
            double[] own = normal.alone(block, blocks.count(block), line, g[2 * line], g[2 * line + 1]);
            away += own[0] * own[0] + own[1] * own[1];
            squares.add((a + own[0]) * (a + own[0]) + (b + own[1]) * (b + own[1]));
        }
        double m = gradient.length;
        return new Scatter(along * m / (m - 1), across * m / (m - 1), away / (m - 1), squares);
    }
}
