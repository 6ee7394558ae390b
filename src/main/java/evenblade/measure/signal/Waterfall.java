package evenblade.measure.signal;

import evenblade.input.recording.Series;

/**
 * Amplitude over time and frequency, for a picture: never more slices and bins than asked for, however
 * long the recording.
 *
 * <p>Each slice is the averaged amplitude spectrum (Hann, half overlapped, mean removed) of its part of
 * the recording, so nothing between slices is left out.
 */
public final class Waterfall {
    private final double[] timesS;
    private final double binHz;
    private final float[][] amplitudes;

    private Waterfall(double[] timesS, double binHz, float[][] amplitudes) {
        this.timesS = timesS;
        this.binHz = binHz;
        this.amplitudes = amplitudes;
    }

    /**
     * @param samples evenly taken, the first at 0 s
     * @param rateHz samples per second
     * @param upToHz highest frequency wanted; at most half the rate is given
     * @param maxSlices 1 or more; 400 fills a screen
     * @param maxBins 2 or more; 600 fills a screen
     */
    public static Waterfall of(Series samples, double rateHz, double upToHz, int maxSlices, int maxBins) {
        if (samples.size() < 2 || !(rateHz > 0) || !(upToHz > 0) || maxSlices < 1 || maxBins < 2) {
            throw new IllegalArgumentException("no waterfall of " + samples.size() + " samples at " + rateHz
                    + " Hz up to " + upToHz + " Hz with " + maxSlices + " slices and " + maxBins + " bins");
        }
        double top = Math.min(upToHz, rateHz / 2);
        int longest = (int) Math.min(samples.size(), (maxBins - 1) * rateHz / top);
        int length = Integer.highestOneBit(Math.max(2, longest));
        int hop = Math.max(Math.max(1, length / 4), (samples.size() + maxSlices - 1) / maxSlices);
        int slices = (samples.size() - length) / hop + 1;
        // A hair for the rounding of doubles.
        int bins = Math.min(length / 2, (int) (top * length / rateHz * (1 + 1e-12))) + 1;
        Periodogram periodogram = new Periodogram(length);
        double[] timesS = new double[slices];
        float[][] amplitudes = new float[slices][bins];
        for (int slice = 0; slice < slices; slice++) {
            periodogram.clear();
            int start = slice * hop;
            int from = start;
            int last = start;
            while (from + length <= samples.size() && (from == start || from + length / 2 < start + hop)) {
                periodogram.add(samples, from);
                last = from;
                from += length / 2;
            }
            timesS[slice] = ((start + last) / 2.0 + (length - 1) / 2.0) / rateHz;
            double[] amplitude = periodogram.amplitude();
            for (int k = 0; k < bins; k++) {
                amplitudes[slice][k] = (float) amplitude[k];
            }
        }
        return new Waterfall(timesS, rateHz / length, amplitudes);
    }

    /** Number of slices, 1 or more. */
    public int slices() {
        return timesS.length;
    }

    /** Number of frequencies, from 0 Hz on. */
    public int bins() {
        return amplitudes[0].length;
    }

    /** Middle of a slice, in seconds from the first sample. */
    public double timeS(int slice) {
        return timesS[slice];
    }

    /** Frequency of a bin. */
    public double frequencyHz(int bin) {
        return bin * binHz;
    }

    /** Peak value of a sine at that time and frequency, in the unit of the samples. */
    public double amplitude(int slice, int bin) {
        return amplitudes[slice][bin];
    }
}
