package evenblade.bench;

import java.util.Arrays;
import java.util.Random;

/**
 * How often chance lets one odd blade be named right at all. B readings with the same normal error σ, of which one is off;
 * told are their deviations from the mean. Of all rules that treat blades and signs alike and name one of equal blades
 * with chance α, the one that names the largest |deviation| past a limit names the odd one right most often
 * (Paulson 1952, Kudô 1956; from memory). σ is taken as known: the best case.
 */
public final class BladeNameLimit {
    private static final int DRAWS = 40_000; // a share of 0.7 to 0.002
    private static final long SEED = 5; // any

    private final double[][] noise;
    private final double limit;

    private BladeNameLimit(double[][] noise, double limit) {
        this.noise = noise;
        this.limit = limit;
    }

    public static BladeNameLimit of(int blades, double alpha) {
        Random random = new Random(SEED);
        // So that a deviation from the mean has the standard error 1.
        double each = Math.sqrt(blades / (blades - 1.0));
        double[][] noise = new double[DRAWS][blades];
        double[] largest = new double[DRAWS];
        for (int d = 0; d < DRAWS; d++) {
            double mean = 0;
            for (int b = 0; b < blades; b++) {
                noise[d][b] = each * random.nextGaussian();
                mean += noise[d][b] / blades;
            }
            for (int b = 0; b < blades; b++) {
                noise[d][b] -= mean;
                largest[d] = Math.max(largest[d], Math.abs(noise[d][b]));
            }
        }
        Arrays.sort(largest);
        return new BladeNameLimit(noise, largest[(int) ((1 - alpha) * DRAWS)]);
    }

    /** Standard errors that the largest must pass. */
    public double limit() {
        return limit;
    }

    /** Share named right where a blade stands so many of its standard errors out. */
    public double namedRight(double out) {
        int right = 0;
        for (double[] one : noise) {
            double first = Math.abs(one[0] + out);
            double others = 0;
            for (int b = 1; b < one.length; b++) {
                others = Math.max(others, Math.abs(one[b] - out / (one.length - 1)));
            }
            right += first > limit && first > others ? 1 : 0;
        }
        return right / (double) noise.length;
    }
}
