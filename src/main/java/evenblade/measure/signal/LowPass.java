package evenblade.measure.signal;

/**
 * Symmetric low-pass filters by the windowed-sinc method with a Kaiser window.
 *
 * <p>Kaiser 1974, "Nonrecursive digital filter design using the I0-sinh window function", Proc. IEEE
 * Int. Symp. Circuits and Systems, p. 20 (formulas as restated in Oppenheim and Schafer,
 * "Discrete-Time Signal Processing", section 7.5; from memory).
 */
final class LowPass {
    /** Aim of the design in dB; 6 dB more than promised, so that several stages together keep the promise. */
    static final double STOP_BAND_DB = 86;

    private LowPass() {}

    /**
     * Taps to one side of the middle that are needed.
     *
     * @param transition width from pass band to stop band as a share of the sample rate, over 0
     */
    static int halfLength(double transition) {
        // Kaiser's estimate of the order.
        double order = (STOP_BAND_DB - 7.95) / (2.285 * 2 * Math.PI * transition);
        return Math.max(1, (int) Math.ceil(order / 2));
    }

    /**
     * The filter that leaves one of {@code factor} samples: cut off at half the rate that remains, so
     * that every {@code factor}-th tap beside the middle is exactly zero. Its gain at 0 Hz is 1.
     *
     * @param factor 2 or more
     * @param half taps to one side of the middle
     * @return {@code 2 half + 1} taps, symmetric
     */
    static double[] taps(int factor, int half) {
        // Kaiser, for more than 50 dB.
        double beta = 0.1102 * (STOP_BAND_DB - 8.7);
        double[] taps = new double[2 * half + 1];
        double sum = 0;
        for (int k = -half; k <= half; k++) {
            double u = k / (half + 1.0);
            double window = besselI0(beta * Math.sqrt(1 - u * u)) / besselI0(beta);
            double tap = k == 0 ? 1 : k % factor == 0 ? 0 : sinc((double) k / factor) * window;
            taps[k + half] = tap;
            sum += tap;
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] /= sum;
        }
        return taps;
    }

    /** sin(πx)/(πx). */
    static double sinc(double x) {
        double angle = Math.PI * x;
        // Nearer to zero the quotient is 1 to the last digit.
        return Math.abs(angle) < 1e-9 ? 1 : Math.sin(angle) / angle;
    }

    /** Modified Bessel function of the first kind, order 0, by its power series. */
    static double besselI0(double x) {
        double term = 1;
        double sum = 1;
        // Smaller terms no longer change the sum of doubles.
        for (int k = 1; term > sum * 1e-17; k++) {
            double factor = x / (2 * k);
            term *= factor * factor;
            sum += term;
        }
        return sum;
    }
}
