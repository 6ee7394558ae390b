package evenblade.signal;

import evenblade.recording.Series;
import java.util.Arrays;

/** Adds up |X|² of windowed stretches of one length; reusable after {@link #clear}, for one thread. */
final class Periodogram {
    private final int length;
    private final double[] window;
    private final AveragedSpectrum.Detrend detrend;
    private final RealFft fft;
    private final double[] stretch;
    private final double[] power;
    private final double[] sum;
    private int segments;

    Periodogram(int length, Window window, AveragedSpectrum.Detrend detrend) {
        this.length = length;
        this.window = window.values(length, Window.Form.PERIODIC);
        this.detrend = detrend;
        this.fft = new RealFft(length);
        this.stretch = new double[length];
        this.power = new double[fft.bins()];
        this.sum = new double[fft.bins()];
    }

    int bins() {
        return fft.bins();
    }

    int segments() {
        return segments;
    }

    void clear() {
        Arrays.fill(sum, 0);
        segments = 0;
    }

    /** Adds the stretch that starts at {@code from}. */
    void add(Series samples, int from) {
        samples.copyTo(from, stretch, length);
        double mean = 0;
        if (detrend == AveragedSpectrum.Detrend.CONSTANT) {
            for (double value : stretch) {
                mean += value;
            }
            mean /= length;
        }
        for (int i = 0; i < length; i++) {
            stretch[i] = (stretch[i] - mean) * window[i];
        }
        fft.transform(stretch);
        fft.powerInto(power);
        for (int k = 0; k < sum.length; k++) {
            sum[k] += power[k];
        }
        segments++;
    }

    /** Peak value of a sine in each bin. */
    double[] amplitude() {
        double gain = windowSum();
        double[] amplitude = new double[sum.length];
        for (int k = 0; k < amplitude.length; k++) {
            amplitude[k] = (stands(k) ? 1 : 2) * Math.sqrt(sum[k] / segments) / gain;
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
