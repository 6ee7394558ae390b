package evenblade.measure.speed;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The path of speed over time that collects the most evidence from the comb, by dynamic programming.
 *
 * <p>Evidence in a frame at speed f is the weighted sum of {@link WhitenedSpectrogram#evidence} over the lines
 * inside the range. This approximates the maximum-likelihood comb (Christensen &amp; Jakobsson,
 * Multi-Pitch Estimation, 2009; Nielsen et al., Signal Processing 135:188, 2017).
 *
 * <p>First over the whole range on a grid of 0.1 %, then within ± 0.6 % of that path on one of 0.02 %.
 * A change of speed costs evidence in proportion to its size, which lets ramps pass.
 */
final class PathSearch {
    private static final double COARSE_STEP = 1e-3; // ours
    private static final double FINE_STEP = 2e-4; // a fifth of it
    private static final int FINE_REACH = 30; // six coarse steps to either side
    /** Evidence that a change of speed by one part in a thousand costs. */
    private static final double COST_PER_THOUSANDTH = 0.15;

    private final WhitenedSpectrogram frames;
    private final Comb comb;
    private final SpeedPrior prior;

    PathSearch(WhitenedSpectrogram frames, Comb comb, SpeedPrior prior) {
        this.frames = frames;
        this.comb = comb;
        this.prior = prior;
    }

    /** Speeds along a path, one per frame used. */
    record Path(int[] frame, double[] hz) {
        /** The part from one place on, up to another. */
        Path part(int from, int to) {
            return new Path(Arrays.copyOfRange(frame, from, to), Arrays.copyOfRange(hz, from, to));
        }
    }

    /** Evidence for a speed in one frame. */
    double evidence(int frame, double hz) {
        double sum = 0;
        for (Comb.ExpectedLine tooth : comb.teeth()) {
            double frequency = tooth.order() * hz;
            if (!frames.inRange(frequency)) {
                continue;
            }
            for (int c = 0; c < frames.channels(); c++) {
                sum += tooth.weight() * frames.evidence(c, frame, frequency);
            }
        }
        return sum;
    }

    /** Evidence for each speed of a rising grid in one frame. */
    private float[] evidence(int frame, double[] gridHz) {
        float[] sum = new float[gridHz.length];
        WhitenedSpectrogram.Places all = new WhitenedSpectrogram.Places(0, gridHz.length);
        for (Comb.ExpectedLine tooth : comb.teeth()) {
            WhitenedSpectrogram.Places seen = frames.inRange(gridHz, all, tooth.order());
            for (int c = 0; c < frames.channels(); c++) {
                frames.addEvidence(c, frame, gridHz, seen, tooth.order(), tooth.weight(), sum);
            }
        }
        return sum;
    }

    /**
     * The most evidence that all frames together have for one speed that isn't this one.
     *
     * @param apart least distance in logarithm
     */
    double rival(double hz, double apart) {
        double most = 0;
        for (double other = prior.fromHz(); other < prior.toHz(); other *= 1 + COARSE_STEP) {
            if (Math.abs(Math.log(other / hz)) >= apart) {
                double sum = 0;
                for (int frame = 0; frame < frames.frames(); frame++) {
                    sum += evidence(frame, other);
                }
                most = Math.max(most, sum);
            }
        }
        return most;
    }

    /** Best path through the given frames, in order, with speeds between the two ends of the range. */
    Path best(int[] chosen, double fromHz, double toHz) {
        int steps = (int) Math.ceil(Math.log(toHz / fromHz) / COARSE_STEP) + 1;
        double[] coarse = coarsePath(chosen, fromHz, steps);
        return new Path(chosen, finePath(chosen, coarse, fromHz, toHz));
    }

    private double[] coarsePath(int[] chosen, double fromHz, int steps) {
        short[][] cameFrom = new short[chosen.length][steps];
        double[] value = new double[steps];
        double[] grid = new double[steps];
        double[] bonus = new double[steps];
        for (int j = 0; j < steps; j++) {
            grid[j] = fromHz * Math.exp(j * COARSE_STEP);
            bonus[j] = prior.bonus(grid[j]);
        }
        float[][] scores = new float[chosen.length][];
        IntStream.range(0, chosen.length).parallel().forEach(i -> scores[i] = evidence(chosen[i], grid));
        for (int i = 0; i < chosen.length; i++) {
            if (i > 0) {
                spread(value, cameFrom[i]);
            }
            for (int j = 0; j < steps; j++) {
                value[j] += scores[i][j] + bonus[j];
            }
        }
        int at = 0;
        for (int j = 1; j < steps; j++) {
            if (value[j] > value[at]) {
                at = j;
            }
        }
        double[] hz = new double[chosen.length];
        for (int i = chosen.length - 1; i >= 0; i--) {
            hz[i] = grid[at];
            if (i > 0) {
                at = cameFrom[i][at];
            }
        }
        return hz;
    }

    /** value[j] ← max over i of value[i] − cost·|i − j|, in two sweeps. */
    private static void spread(double[] value, short[] cameFrom) {
        for (int j = 0; j < value.length; j++) {
            cameFrom[j] = (short) j;
        }
        for (int j = 1; j < value.length; j++) {
            double reached = value[j - 1] - COST_PER_THOUSANDTH;
            if (reached > value[j]) {
                value[j] = reached;
                cameFrom[j] = cameFrom[j - 1];
            }
        }
        for (int j = value.length - 2; j >= 0; j--) {
            double reached = value[j + 1] - COST_PER_THOUSANDTH;
            if (reached > value[j]) {
                value[j] = reached;
                cameFrom[j] = cameFrom[j + 1];
            }
        }
    }

    private double[] finePath(int[] chosen, double[] coarse, double fromHz, double toHz) {
        int width = 2 * FINE_REACH + 1;
        byte[][] cameFrom = new byte[chosen.length][width];
        double[] value = new double[width];
        double[] next = new double[width];
        double cost = COST_PER_THOUSANDTH * FINE_STEP / COARSE_STEP;
        double[] around = new double[width];
        for (int j = 0; j < width; j++) {
            around[j] = Math.exp((j - FINE_REACH) * FINE_STEP);
        }
        float[][] scores = new float[chosen.length][];
        IntStream.range(0, chosen.length).parallel().forEach(i -> {
            double[] grid = new double[width];
            for (int j = 0; j < width; j++) {
                grid[j] = coarse[i] * around[j];
            }
            scores[i] = evidence(chosen[i], grid);
            for (int j = 0; j < width; j++) {
                if (grid[j] < fromHz || grid[j] > toHz) {
                    scores[i][j] = Float.NEGATIVE_INFINITY;
                }
            }
        });
        for (int i = 0; i < chosen.length; i++) {
            if (i > 0) {
                double shift = Math.log(coarse[i] / coarse[i - 1]) / FINE_STEP;
                for (int j = 0; j < width; j++) {
                    double best = Double.NEGATIVE_INFINITY;
                    int from = 0;
                    for (int k = 0; k < width; k++) {
                        double candidate = value[k] - cost * Math.abs(j + shift - k);
                        if (candidate > best) {
                            best = candidate;
                            from = k;
                        }
                    }
                    next[j] = best;
                    cameFrom[i][j] = (byte) from;
                }
                System.arraycopy(next, 0, value, 0, width);
            }
            for (int j = 0; j < width; j++) {
                value[j] += scores[i][j];
            }
        }
        int at = 0;
        for (int j = 1; j < width; j++) {
            if (value[j] > value[at]) {
                at = j;
            }
        }
        double[] hz = new double[chosen.length];
        for (int i = chosen.length - 1; i >= 0; i--) {
            hz[i] = coarse[i] * Math.exp((at - FINE_REACH) * FINE_STEP);
            if (i > 0) {
                at = cameFrom[i][at];
            }
        }
        return hz;
    }
}
