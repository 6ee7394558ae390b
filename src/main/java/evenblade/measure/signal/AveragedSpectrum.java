package evenblade.measure.signal;

import evenblade.input.recording.Series;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Averaged spectrum of overlapped stretches of an evenly sampled signal, each without its mean and under
 * Hann's window: mean of |X|² over the stretches. Welch 1967, "The use of fast Fourier transform for the estimation of power spectra",
 * IEEE Trans. Audio Electroacoustics AU-15(2):70.
 *
 * <p>For looking, not for measuring: where the speed wanders, a line spreads over several bins and
 * reads low.
 *
 * @param segmentLength samples per stretch, 1 or more; a shorter signal is taken as one stretch
 * @param overlap samples that neighbouring stretches share, 0 to {@code segmentLength} − 1
 * @param scaling of the result
 */
public record AveragedSpectrum(int segmentLength, int overlap, Spectrum.Scaling scaling) {

    private static final int LONGEST_USUAL_SEGMENT = 1 << 24; // keeps the transform within memory
    /** From so many stretches on they are shared out between processors. */
    private static final int WORTH_SHARING = 16;

    private static final int PARTS = 2; // fixed, so that sums are the same on every machine
    /** From so many lengths of a stretch on they need not overlap. */
    private static final int PLENTY = 60;

    public AveragedSpectrum {
        if (segmentLength < 1 || overlap < 0 || overlap >= segmentLength) {
            throw new IllegalArgumentException("segments of " + segmentLength + " that overlap by " + overlap
                    + ": the overlap must be at least 0 and less than the segment");
        }
    }

    /**
     * Half overlapped: the usual choice.
     *
     * @param secondsPerSegment wanted length of a stretch; the power of two next to it is taken
     */
    public static AveragedSpectrum hann(double secondsPerSegment, double rateHz, Spectrum.Scaling scaling) {
        double wanted = Math.min(secondsPerSegment * rateHz, LONGEST_USUAL_SEGMENT);
        int length = Math.max(2, Integer.highestOneBit((int) (wanted * Math.sqrt(2))));
        return new AveragedSpectrum(length, length / 2, scaling);
    }

    /**
     * For a signal of known length: where there are plenty of stretches they stand side by
     * side, at half the cost and hardly less certain.
     *
     * @param samples in the signal
     */
    public static AveragedSpectrum hann(
            double secondsPerSegment, double rateHz, Spectrum.Scaling scaling, int samples) {
        AveragedSpectrum usual = hann(secondsPerSegment, rateHz, scaling);
        return samples < PLENTY * usual.segmentLength
                ? usual
                : new AveragedSpectrum(usual.segmentLength, 0, usual.scaling);
    }

    /**
     * Degrees of freedom that every stretch of a Hann average of noise is worth: two side by side, about
     * 1.9 half overlapped (Welch 1967).
     */
    public double dofPerSegment() {
        return overlap == 0 ? 2 : 1.9; // Welch, as above
    }

    /** The spectrum of samples taken {@code rateHz} times a second; at least one sample. */
    public Spectrum of(double[] samples, double rateHz) {
        return of(Series.of(samples), rateHz);
    }

    /** The spectrum of samples taken {@code rateHz} times a second; at least one sample. */
    public Spectrum of(Series samples, double rateHz) {
        Periodogram periodogram = added(samples, rateHz);
        return spectrum(
                scaling == Spectrum.Scaling.AMPLITUDE ? periodogram.amplitude() : periodogram.density(rateHz),
                scaling,
                periodogram,
                samples,
                rateHz);
    }

    /** The highest amplitude that each frequency had in any stretch, whatever the scaling. */
    public Spectrum loudest(Series samples, double rateHz) {
        Periodogram periodogram = added(samples, rateHz);
        return spectrum(periodogram.loudest(), Spectrum.Scaling.AMPLITUDE, periodogram, samples, rateHz);
    }

    private Periodogram added(Series samples, double rateHz) {
        if (samples.size() == 0 || !(rateHz > 0)) {
            throw new IllegalArgumentException("no spectrum of " + samples.size() + " samples at " + rateHz + " Hz");
        }
        int length = Math.min(segmentLength, samples.size());
        int step = segmentLength - overlap;
        int stretches = (samples.size() - length) / step + 1;
        int parts = stretches < WORTH_SHARING ? 1 : PARTS;
        return IntStream.range(0, parts)
                .parallel()
                .mapToObj(part -> {
                    Periodogram some = new Periodogram(length);
                    for (int s = part * stretches / parts; s < (part + 1) * stretches / parts; s++) {
                        some.add(samples, s * step);
                    }
                    return some;
                })
                .reduce((one, other) -> one.and(other))
                .orElseThrow();
    }

    private Spectrum spectrum(
            double[] values, Spectrum.Scaling scaled, Periodogram periodogram, Series samples, double rateHz) {
        int length = Math.min(segmentLength, samples.size());
        double[] hz = new double[periodogram.bins()];
        Arrays.setAll(hz, k -> k * rateHz / length);
        return new Spectrum(
                Series.of(hz),
                Series.of(values),
                scaled,
                rateHz / length,
                periodogram.noiseBandwidthBins() * rateHz / length,
                periodogram.segments());
    }
}
