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

    /**
     * The spectrum of the signal's integral over time (acceleration to velocity, velocity to
     * displacement): amplitude / ω or density / ω², ω = 2πf.
     *
     * <p>Dividing by ω blows up whatever a sensor's drift left near 0 Hz, so everything below the cut
     * is left out of the result, not merely small.
     *
     * @param lowerCutHz lowest frequency kept, above 0
     * @throws IllegalArgumentException where the cut is not above 0
     */
    public Spectrum integrated(double lowerCutHz) {
        if (!(lowerCutHz > 0)) {
            throw new IllegalArgumentException(
                    "a spectrum can't be integrated down to " + lowerCutHz + " Hz: the lower cut must be above 0");
        }
        int first = 0;
        while (first < frequenciesHz.size() && frequenciesHz.at(first) < lowerCutHz) {
            first++;
        }
        double[] hz = new double[frequenciesHz.size() - first];
        double[] integral = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = frequenciesHz.at(first + i);
            double omega = 2 * Math.PI * hz[i];
            integral[i] = values.at(first + i) / (scaling == Scaling.AMPLITUDE ? omega : omega * omega);
        }
        return new Spectrum(Series.of(hz), Series.of(integral), scaling, binHz, noiseBandwidthHz, segments);
    }
}
