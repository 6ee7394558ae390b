package evenblade.measure.signal;

/**
 * Sums of cosines that a piece of signal is multiplied with before its spectrum is taken:
 * w(z) = a0 − a1 cos z + a2 cos 2z − …, z from 0 to 2π over the piece.
 *
 * <p>Coefficients: Harris 1978, "On the use of windows for harmonic analysis with the discrete Fourier
 * transform", Proc. IEEE 66(1):51; the flat tops and {@link #NUTTALL_4C}: Heinzel, Rüdiger and
 * Schilling 2002, "Spectrum and spectral density estimation by the DFT", appendix.
 *
 * <p>The figures of merit are those of an endlessly finely sampled window, worked out from its
 * transform.
 */
public enum Window {
    RECTANGULAR(1),
    HANN(.5, .5),
    HAMMING(.54, .46),
    BLACKMAN_HARRIS_4(.35875, .48829, .14128, .01168),
    NUTTALL_4C(.3635819, .4891775, .1365995, .0106411),
    FLAT_TOP_SFT3F(.26526, .5, .23474),
    FLAT_TOP_HFT70(1, 1.90796, 1.07349, .18199),
    FLAT_TOP_HFT95(1, 1.9383379, 1.3045202, .4028270, .0350665),
    FLAT_TOP_HFT90D(1, 1.942604, 1.340318, .440811, .043097),
    FLAT_TOP_HFT116D(1, 1.9575375, 1.4780705, .6367431, .1228389, .0066288),
    FLAT_TOP_HFT144D(1, 1.96760033, 1.57983607, .81123644, .22583558, .02773848, .00090360);

    /** Where the last sample of a sampled window lies. */
    public enum Form {
        /** z = 2πn/N: the window's repetition is smooth. For spectra. */
        PERIODIC,
        /** z = 2πn/(N − 1): first and last value are equal. For filters. */
        SYMMETRIC
    }

    private static final double FURTHEST_SIDE_LOBE_BINS = 40;

    private final double[] coefficients;

    Window(double... coefficients) {
        this.coefficients = coefficients;
    }

    /** The window at {@code length} samples, 1 or more. */
    public double[] values(int length, Form form) {
        if (length < 1) {
            throw new IllegalArgumentException("a window needs at least 1 value, not " + length);
        }
        double[] values = new double[length];
        int steps = form == Form.PERIODIC ? length : Math.max(1, length - 1);
        for (int n = 0; n < length; n++) {
            values[n] = length == 1 ? peak() : at(2 * Math.PI * n / steps);
        }
        return values;
    }

    private double at(double z) {
        double sum = 0;
        for (int m = coefficients.length - 1; m >= 0; m--) {
            sum += (m % 2 == 0 ? 1 : -1) * coefficients[m] * Math.cos(m * z);
        }
        return sum;
    }

    private double peak() {
        return at(Math.PI);
    }

    /** Mean value, a0: what a constant, or half the amplitude of a sine in the middle of a bin, is multiplied with. */
    public double coherentGain() {
        return coefficients[0];
    }

    /** Noise bandwidth in bins (NENBW): mean square over square of mean, (a0² + Σ a_m²/2) / a0². */
    public double noiseBandwidthBins() {
        double square = coefficients[0] * coefficients[0];
        double sum = square;
        for (int m = 1; m < coefficients.length; m++) {
            sum += coefficients[m] * coefficients[m] / 2;
        }
        return sum / square;
    }

    /** Full width of the main lobe, in bins, where it has fallen by 3.000 dB (not by a factor of √2). */
    public double threeDecibelBandwidthBins() {
        double level = Math.pow(10, -3.0 / 20);
        double above = 0;
        double below = firstZeroBins();
        for (int i = 0; i < 60; i++) {
            double middle = (above + below) / 2;
            if (response(middle) > level) {
                above = middle;
            } else {
                below = middle;
            }
        }
        return above + below;
    }

    /** The largest error, in dB with its sign, of the amplitude of a sine up to half a bin off the middle of its bin. */
    public double maxErrorDb() {
        double worst = 0;
        for (int i = 0; i <= 5000; i++) {
            double error = decibel(response(i / 10000.0));
            if (Math.abs(error) > Math.abs(worst)) {
                worst = error;
            }
        }
        return worst;
    }

    /** Highest side lobe against the main lobe, in dB (PSLL); below 0. */
    public double peakSideLobeDb() {
        double highest = 0;
        for (double bins = firstZeroBins(); bins < FURTHEST_SIDE_LOBE_BINS; bins += 5e-3) {
            highest = Math.max(highest, Math.abs(response(bins)));
        }
        return decibel(highest);
    }

    /** Half the width of the main lobe between its zeros, in bins. */
    public double firstZeroBins() {
        double bins = 0;
        while (response(bins + 1e-3) > 0) {
            bins += 1e-3;
        }
        return bins + 1e-3;
    }

    /**
     * Transform of the window at a distance from the middle of a bin, over its value at the middle:
     * Σ a_m/2 (sinc(d − m) + sinc(d + m)) / a0.
     *
     * @param bins d
     */
    public double response(double bins) {
        double sum = coefficients[0] * LowPass.sinc(bins);
        for (int m = 1; m < coefficients.length; m++) {
            sum += coefficients[m] / 2 * (LowPass.sinc(bins - m) + LowPass.sinc(bins + m));
        }
        return sum / coefficients[0];
    }

    private static double decibel(double ratio) {
        return 20 * Math.log10(ratio);
    }
}
