package evenblade.measure.signal;

import evenblade.input.recording.Series;
import java.util.Arrays;

/**
 * Adds up |X|² of stretches of one length, each without its mean and under Hann's window in its periodic
 * form, w[n] = ½ − ½ cos(2πn/N); reusable after {@link #clear}, for one thread. Harris 1978, "On the use of
 * windows for harmonic analysis with the discrete Fourier transform", Proc. IEEE 66(1):51.
 */
final class Periodogram {
    private final int length;
    private final double[] window;
    private final RealFft fft;
    private final double[] stretch;
    private final double[] power;
    private final double[] sum;
    private final double[] most;
    private int segments;

    Periodogram(int length) {
        this.length = length;
        this.window = hann(length);
        this.fft = new RealFft(length);
        this.stretch = new double[length];
        this.power = new double[fft.bins()];
        this.sum = new double[fft.bins()];
        this.most = new double[fft.bins()];
    }

    private static double[] hann(int length) {
        double[] window = new double[length];
        Arrays.setAll(window, n -> length == 1 ? 1 : 0.5 - 0.5 * Math.cos(2 * Math.PI * n / length));
        return window;
    }

    int bins() {
        return fft.bins();
    }

    int segments() {
        return segments;
    }

    void clear() {
        Arrays.fill(sum, 0);
        Arrays.fill(most, 0);
        segments = 0;
    }

    /** Adds the stretch that starts at {@code from}. */
    void add(Series samples, int from) {
        samples.copyTo(from, stretch, length);
        weigh(stretch, mean(stretch), window);
        fft.transform(stretch);
        fft.powerInto(power);
        add(power, sum);
        raise(power, most);
        segments++;
    }

    /** This with what another of the same kind has added up. */
    Periodogram and(Periodogram other) {
        add(other.sum, sum);
        raise(other.most, most);
        segments += other.segments;
        return this;
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static void weigh(double[] values, double mean, double[] window) {
        for (int i = 0; i < values.length; i++) {
            values[i] = (values[i] - mean) * window[i];
        }
    }

    private static void add(double[] values, double[] to) {
        for (int k = 0; k < to.length; k++) {
            to[k] += values[k];
        }
    }

    private static void raise(double[] values, double[] to) {
        for (int k = 0; k < to.length; k++) {
            to[k] = Math.max(to[k], values[k]);
        }
    }

    /** Peak value of a sine in each bin. */
    double[] amplitude() {
        return amplitude(sum, segments);
    }

    /** Peak value of a sine in the stretch in which each bin was highest. */
    double[] loudest() {
        return amplitude(most, 1);
    }

    private double[] amplitude(double[] power, int stretches) {
        double gain = windowSum();
        double[] amplitude = new double[power.length];
        for (int k = 0; k < amplitude.length; k++) {
            amplitude[k] = (stands(k) ? 1 : 2) * Math.sqrt(power[k] / stretches) / gain;
        }
        return amplitude;
    }

    /** Power per hertz in each bin. */
    double[] density(double rateHz) {
        double scale = 1 / (rateHz * windowSquares() * segments);
        double[] density = new double[sum.length];
        for (int k = 0; k < density.length; k++) {
            density[k] = (stands(k) ? 1 : 2) * sum[k] * scale;
        }
        return density;
    }

    double noiseBandwidthBins() {
        return length * windowSquares() / (windowSum() * windowSum());
    }

    /** True at 0 Hz and half the sample rate, which have no twin at a negative frequency. */
    private boolean stands(int k) {
        return k == 0 || 2 * k == length;
    }

    private double windowSum() {
        double total = 0;
        for (double w : window) {
            total += w;
        }
        return total;
    }

    private double windowSquares() {
        double total = 0;
        for (double w : window) {
            total += w * w;
        }
        return total;
    }
}
