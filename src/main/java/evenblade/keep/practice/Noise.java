package evenblade.keep.practice;

import java.util.Random;

/**
 * Noise of a sensor and its surroundings: white, and a part that grows towards low frequencies.
 *
 * @param whiteRms standard deviation of independent Gaussian samples
 * @param lowRms standard deviation of the part whose power falls about as 1/f
 */
public record Noise(double whiteRms, double lowRms) {
    public static final Noise NONE = new Noise(0, 0);

    /** Corners of the first-order processes whose sum falls about as 1/f, one per octave and a half. */
    private static final double LOWEST_CORNER_HZ = 0.5;

    /** Half a decade from one process to the next gives an even slope; ours. */
    private static final double CORNER_STEP = 3;

    private static final int PROCESSES = 7; // covers three decades

    public static Noise white(double rms) {
        return new Noise(rms, 0);
    }

    /** Adds noise to samples taken at the given rate; same seed, same noise. */
    void addTo(double[] samples, double rateHz, long seed) {
        Random random = new Random(seed);
        if (whiteRms > 0) {
            for (int i = 0; i < samples.length; i++) {
                samples[i] += whiteRms * random.nextGaussian();
            }
        }
        if (lowRms > 0) {
            addLow(samples, rateHz, random);
        }
    }

    private void addLow(double[] samples, double rateHz, Random random) {
        double each = lowRms / Math.sqrt(PROCESSES);
        for (int p = 0; p < PROCESSES; p++) {
            double cornerHz = LOWEST_CORNER_HZ * Math.pow(CORNER_STEP, p);
            double keep = Math.exp(-2 * Math.PI * cornerHz / rateHz);
            double fresh = each * Math.sqrt(1 - keep * keep);
            double state = each * random.nextGaussian();
            for (int i = 0; i < samples.length; i++) {
                samples[i] += state;
                state = keep * state + fresh * random.nextGaussian();
            }
        }
    }
}
