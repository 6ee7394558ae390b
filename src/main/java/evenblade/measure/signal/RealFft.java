package evenblade.measure.signal;

import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Discrete Fourier transform of a real signal, of any length: X[k] = Σ x[n] e^(−2πi kn/N) for k = 0 to
 * N/2, without any scaling.
 *
 * <p>The only class that knows how JTransforms packs its result. It keeps its working array, so one
 * instance serves one thread.
 */
public final class RealFft {
    private final int length;
    private final DoubleFFT_1D transform;
    private final double[] work;

    /**
     * @param length N, 1 or more; powers of two are fastest by far, then products of 2, 3 and 5
     */
    public RealFft(int length) {
        if (length < 1) {
            throw new IllegalArgumentException("a transform needs at least 1 value, not " + length);
        }
        this.length = length;
        this.transform = new DoubleFFT_1D(length);
        this.work = new double[length];
    }

    /** Number of frequencies, N/2 + 1 (rounded down): from 0 Hz to half the sample rate. */
    public int bins() {
        return length / 2 + 1;
    }

    /**
     * Transforms the first N values; the array stays as it is. The result is read with {@link #real},
     * {@link #imaginary}, {@link #power} until the next call.
     */
    public void transform(double[] signal) {
        System.arraycopy(signal, 0, work, 0, length);
        if (length > 1) {
            transform.realForward(work);
        }
    }

    /** Real part of X[k]. */
    public double real(int k) {
        return k > 0 && 2 * k == length ? work[1] : work[2 * k];
    }

    /** Imaginary part of X[k]. */
    public double imaginary(int k) {
        if (k == 0 || 2 * k == length) {
            return 0;
        }
        return 2 * k + 1 == length ? work[1] : work[2 * k + 1];
    }

    /** |X[k]|². */
    public double power(int k) {
        double re = real(k);
        double im = imaginary(k);
        return re * re + im * im;
    }

    /** Writes |X[k]|² for all {@link #bins} frequencies into the start of {@code into}. */
    public void powerInto(double[] into) {
        int last = bins() - 1;
        into[0] = work[0] * work[0];
        for (int k = 1; k < last; k++) {
            into[k] = work[2 * k] * work[2 * k] + work[2 * k + 1] * work[2 * k + 1];
        }
        if (last > 0) {
            into[last] = power(last);
        }
    }
}
