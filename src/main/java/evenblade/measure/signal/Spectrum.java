package evenblade.measure.signal;

import evenblade.input.recording.Series;

/**
 * A one-sided spectrum, for looking.
 *
 * @param frequenciesHz rising
 * @param values one per frequency, 0 or more; in the signal's unit u where {@code scaling} is {@link
 *     Scaling#AMPLITUDE}, in u²/Hz where it is {@link Scaling#DENSITY}
 * @param scaling what the values are
 * @param binHz step between frequencies
 * @param noiseBandwidthHz width of the band of noise that one value takes in
 * @param segments number of stretches averaged
 */
public record Spectrum(
        Series frequenciesHz, Series values, Scaling scaling, double binHz, double noiseBandwidthHz, int segments) {

    /** How a spectrum is scaled. */
    public enum Scaling {
        /**
         * Peak value of a sine in the middle of a bin, 2|X| / Σw; at 0 Hz and at half the sample rate
         * |X| / Σw. Averaged as power.
         */
        AMPLITUDE,
        /** Power per hertz, 2|X|² / (rate Σw²); at 0 Hz and at half the sample rate half of that. */
        DENSITY
    }

    public Spectrum {
        if (frequenciesHz.size() != values.size()) {
            throw new IllegalArgumentException(values.size() + " values for " + frequenciesHz.size() + " frequencies");
        }
    }

    /** The value at the frequency next to {@code hz}. */
    public double at(double hz) {
        if (frequenciesHz.size() == 0) {
            throw new IllegalStateException("a spectrum without values has none near " + hz + " Hz");
        }
        long index = Math.round((hz - frequenciesHz.at(0)) / binHz);
        return values.at((int) Math.max(0, Math.min(frequenciesHz.size() - 1L, index)));
    }
}
