package evenblade.rig;

/** Power of a signal below a frequency, by one Fourier transform of the whole (zeros appended to a power of two). */
final class Spectra {
    private Spectra() {}

    /** Mean square of what lies above 0 Hz and up to {@code upToHz}; the mean is taken away first. */
    static double powerBelow(double[] x, double rateHz, double upToHz) {
        int size = Integer.highestOneBit(Math.max(2, x.length - 1)) * 2;
        double[] re = new double[size];
        double[] im = new double[size];
        double mean = 0;
        for (double v : x) {
            mean += v / x.length;
        }
        for (int i = 0; i < x.length; i++) {
            re[i] = x[i] - mean;
        }
        transform(re, im);
        double sum = 0;
        for (int k = 1; k <= size / 2; k++) {
            if (k * rateHz / size > upToHz) {
                break;
            }
            double square = re[k] * re[k] + im[k] * im[k];
            sum += k == size / 2 ? square : 2 * square;
        }
        return sum / size / x.length; // Parseval: Σ|x|² = Σ|X|²/size
    }

    /** Radix-2 transform in place, exp(−j2πnk/N). */
    static void transform(double[] re, double[] im) {
        int n = re.length;
        for (int i = 1, j = 0; i < n; i++) {
            int bit = n >> 1;
            for (; (j & bit) != 0; bit >>= 1) {
                j ^= bit;
            }
            j ^= bit;
            if (i < j) {
                double t = re[i];
                re[i] = re[j];
                re[j] = t;
                t = im[i];
                im[i] = im[j];
                im[j] = t;
            }
        }
        for (int length = 2; length <= n; length <<= 1) {
            int half = length / 2;
            double[] cos = new double[half];
            double[] sin = new double[half];
            for (int k = 0; k < half; k++) {
                cos[k] = Math.cos(2 * Math.PI * k / length);
                sin[k] = -Math.sin(2 * Math.PI * k / length);
            }
            for (int start = 0; start < n; start += length) {
                for (int k = 0; k < half; k++) {
                    int a = start + k;
                    int b = a + half;
                    double r = re[b] * cos[k] - im[b] * sin[k];
                    double i = re[b] * sin[k] + im[b] * cos[k];
                    re[b] = re[a] - r;
                    im[b] = im[a] - i;
                    re[a] += r;
                    im[a] += i;
                }
            }
        }
    }
}
