package evenblade.measure.speed;

import evenblade.base.numeric.Selection;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.measure.signal.EvenGrid;
import evenblade.measure.signal.RealFft;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Short overlapped spectra of one or more channels, each divided by its own local noise floor, so
 * that noise alone has an exponential distribution of mean 1 in every bin.
 *
 * <p>Frames are {@link #lengthS} long with a periodic Hann window, three quarters overlapped (less in
 * very long recordings), zero-padded by at least {@value #LEAST_PADDING}. The floor is the 35 % quantile of the power
 * over 24 Hz stretches, scaled to the mean of an exponential distribution, and runs straight in
 * logarithm between them: a low quantile holds even where lines fill half of a stretch.
 */
final class WhitenedSpectrogram {
    private static final double FLOOR_STRETCH_HZ = 24; // ours
    private static final double FLOOR_QUANTILE = 0.35; // ours: below the half, since lines fill part of the stretch
    /** Power of noise is exponential: its quantile over its mean. */
    private static final double QUANTILE_OF_EXPONENTIAL = -Math.log(1 - FLOOR_QUANTILE);

    private static final double LEAST_PADDING = 1.6; // ours: a peak between two bins loses little
    private static final int MOST_FRAMES = 600; // ours: bounds time and memory for hours of sound
    private static final double KNEE = Math.log(1 + 1000.0); // ours: 30 dB over the floor a line is certain
    private static final double BEYOND_KNEE = 0.25; // ours: more strength adds little
    /** Mean of ℓ(p)·p/p_max in white noise, from a simulation of three million bins (seeded, this class). */
    private static final double NOISE_MEAN = 0.4285;

    private final double lengthS;
    private final double hopS;
    private final double startS;
    private final double binHz;
    private final int bins;
    private final int frames;
    /** One array of bins per frame and channel. */
    private final float[][][] power;
    /** Its bins as evidence of a line, see {@link #evidence}. */
    private final float[][][] evidence;
    /** Rate at which frequencies fold; infinite where a filter has kept everything above out. */
    private final double foldingHz;
    /** Mean floor per channel and bin, one-sided density in unit²/Hz. */
    private final double[][] floorDensity;

    private WhitenedSpectrogram(
            double lengthS,
            double hopS,
            double startS,
            double binHz,
            int bins,
            int frames,
            float[][][] power,
            float[][][] evidence,
            double foldingHz,
            double[][] floorDensity) {
        this.lengthS = lengthS;
        this.hopS = hopS;
        this.startS = startS;
        this.binHz = binHz;
        this.bins = bins;
        this.frames = frames;
        this.power = power;
        this.evidence = evidence;
        this.foldingHz = foldingHz;
        this.floorDensity = floorDensity;
    }

    /**
     * @param recording at the rate for analysis
     * @param channels those to use, at least one
     * @param upToHz highest frequency wanted
     */
    static WhitenedSpectrogram of(Recording recording, List<Channel> channels, double upToHz) {
        double duration = recording.time().durationS();
        return of(recording, channels, upToHz, Math.max(0.4, Math.min(1.5, duration / 4)));
    }

    /** With frames of a given length. */
    static WhitenedSpectrogram of(Recording recording, List<Channel> channels, double upToHz, double lengthS) {
        double rate = recording.time().rateHz();
        int length = (int) Math.round(lengthS * rate);
        int padded = Integer.highestOneBit(Math.max(64, (int) (LEAST_PADDING * length) - 1)) << 1;
        double binHz = rate / padded;
        int bins = Math.min(padded / 2, (int) Math.ceil(upToHz / binHz) + 3);

        int samples = recording.time().even()
                ? recording.time().size()
                : (int) Math.floor((recording.time().at(recording.time().size() - 1)
                                        - recording.time().at(0))
                                * rate)
                        + 1;
        int hop = Math.max(length / 4, (int) Math.ceil((samples - length) / (double) MOST_FRAMES));
        int frames = Math.max(1, (samples - length) / hop + 1);
        double[] window = new double[length];
        double windowPower = 0;
        for (int i = 0; i < length; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / length);
            windowPower += window[i] * window[i];
        }
        float[][][] power = new float[channels.size()][frames][];
        float[][][] evidence = new float[channels.size()][frames][];
        int reach = Math.max(1, (int) Math.round(rate / length / binHz));
        double[][] density = new double[channels.size()][bins];
        double toDensity = 2 / (rate * windowPower);
        for (int c = 0; c < channels.size(); c++) {
            Series values = recording.time().even()
                    ? channels.get(c).values()
                    : EvenGrid.of(recording.time(), channels.get(c).values(), EvenGrid.Interpolation.LINEAR)
                            .values();
            float[][] into = power[c];
            float[][] evidenceInto = evidence[c];
            double[] sum = density[c];
            int parts = Math.min(frames, 2);
            IntStream.range(0, parts).parallel().forEach(part -> {
                RealFft fft = new RealFft(padded);
                double[] block = new double[padded];
                double[] spectrum = new double[padded / 2 + 1];
                Floor floor = new Floor(bins, binHz);
                double[] partSum = new double[bins];
                for (int f = part * frames / parts; f < (part + 1) * frames / parts; f++) {
                    values.copyTo(f * hop, block, Math.min(length, values.size() - f * hop));
                    removeLine(block, length);
                    multiply(block, window);
                    Arrays.fill(block, length, padded, 0);
                    fft.transform(block);
                    fft.powerInto(spectrum);
                    into[f] = floor.whiten(spectrum, partSum);
                    evidenceInto[f] = peaks(into[f], reach);
                }
                synchronized (sum) {
                    for (int b = 0; b < bins; b++) {
                        sum[b] += partSum[b] * toDensity / frames;
                    }
                }
            });
        }
        boolean reduced = rate < 0.99 * recording.source().sampleRateHz();
        double foldingHz = reduced ? Double.POSITIVE_INFINITY : rate;
        return new WhitenedSpectrogram(
                length / rate,
                hop / rate,
                recording.time().at(0),
                binHz,
                bins,
                frames,
                power,
                evidence,
                foldingHz,
                density);
    }

    /** Turns power over the floor into evidence; see {@link #evidence}. */
    private static float[] peaks(float[] white, int reach) {
        float[] evidence = new float[white.length];
        for (int b = 0; b < white.length; b++) {
            float most = white[b];
            int end = Math.min(white.length - 1, b + reach);
            for (int i = Math.max(0, b - reach); i <= end; i++) {
                if (white[i] > most) {
                    most = white[i];
                }
            }
            double value = Math.log(1.0 + white[b]);
            double bent = value <= KNEE ? value : KNEE + BEYOND_KNEE * (value - KNEE);
            evidence[b] = (float) (bent * white[b] / Math.max(most, 1e-30f) - NOISE_MEAN);
        }
        return evidence;
    }

    private static void multiply(double[] block, double[] window) {
        for (int i = 0; i < window.length; i++) {
            block[i] *= window[i];
        }
    }

    private static void removeLine(double[] block, int length) {
        double mean = 0;
        double slope = 0;
        double middle = (length - 1) / 2.0;
        double norm = 0;
        for (int i = 0; i < length; i++) {
            mean += block[i];
            slope += block[i] * (i - middle);
            norm += (i - middle) * (i - middle);
        }
        mean /= length;
        slope /= norm;
        for (int i = 0; i < length; i++) {
            block[i] -= mean + slope * (i - middle);
        }
    }

    /** The local noise floor of one spectrum. */
    private static final class Floor {
        private final int bins;
        private final int half;
        private final int knots;
        private final double[] nearby;
        private final double[] level;

        Floor(int bins, double binHz) {
            this.bins = bins;
            this.half = Math.max(8, (int) Math.round(FLOOR_STRETCH_HZ / 2 / binHz));
            this.knots = Math.max(2, (int) Math.ceil(bins / (double) half) + 1);
            this.nearby = new double[2 * half];
            this.level = new double[knots];
        }

        float[] whiten(double[] spectrum, double[] sum) {
            for (int k = 0; k < knots; k++) {
                int from = Math.max(1, Math.min(k * half - half, spectrum.length - 2 * half));
                int to = Math.min(spectrum.length, from + 2 * half);
                System.arraycopy(spectrum, from, nearby, 0, to - from);
                double quantile = Selection.ofRank(nearby, to - from, (int) (FLOOR_QUANTILE * (to - from)));
                level[k] = Math.max(quantile / QUANTILE_OF_EXPONENTIAL, 1e-300);
            }
            float[] white = new float[bins];
            for (int k = 0; k + 1 < knots; k++) {
                double at = level[k];
                double step = Math.pow(level[k + 1] / level[k], 1.0 / half);
                int end = Math.min(bins, (k + 1) * half);
                for (int b = k * half; b < end; b++) {
                    white[b] = (float) (spectrum[b] / at);
                    sum[b] += at;
                    at *= step;
                }
            }
            return white;
        }
    }

    int frames() {
        return frames;
    }

    int channels() {
        return power.length;
    }

    double lengthS() {
        return lengthS;
    }

    double hopS() {
        return hopS;
    }

    /** Middle of a frame, seconds. */
    double centreS(int frame) {
        return startS + frame * hopS + lengthS / 2;
    }

    /** Lowest frequency that the window keeps apart from zero, hertz. */
    double lowestHz() {
        return 3 / lengthS;
    }

    double highestHz() {
        return (bins - 2) * binHz;
    }

    /** Where a frequency appears: itself below half the sample rate, |f − round(f/fs)·fs| above. */
    double appearsAtHz(double frequencyHz) {
        return frequencyHz < foldingHz / 2
                ? frequencyHz
                : Math.abs(frequencyHz - Math.rint(frequencyHz / foldingHz) * foldingHz);
    }

    /** Whether a line can be seen at its own frequency. */
    boolean inRange(double frequencyHz) {
        return frequencyHz >= lowestHz() && frequencyHz <= highestHz();
    }

    /** Whether a line beyond the range may be seen folded down into it. */
    boolean folded(double frequencyHz) {
        return frequencyHz > highestHz() && frequencyHz < foldingHz && inRange(appearsAtHz(frequencyHz));
    }

    /** Power over the noise floor, straight between bins. */
    double overFloor(int channel, int frame, double frequencyHz) {
        double position = frequencyHz / binHz;
        int bin = (int) position;
        float[] row = power[channel][frame];
        double share = position - bin;
        return row[bin] + share * (row[bin + 1] - row[bin]);
    }

    /**
     * Evidence of a line at a frequency, straight between bins: ℓ(p)·p/p_max − ℓ₀ with p the power over
     * the floor and p_max the largest within one resolution to either side.
     *
     * <p>ℓ(p) is log(1 + p) up to 30 dB and has a quarter of that slope beyond, so that one strong line
     * can't outvote several fair ones. The factor p/p_max makes the flank of a strong line no evidence:
     * without it a comb is drawn to a place between two strong lines that don't belong together. ℓ₀ is
     * the mean in noise, so that a line which leaves the range costs nothing.
     */
    double evidence(int channel, int frame, double frequencyHz) {
        double position = frequencyHz / binHz;
        int bin = (int) position;
        float[] row = evidence[channel][frame];
        double share = position - bin;
        return row[bin] + share * (row[bin + 1] - row[bin]);
    }

    /** The logarithm of power over the floor that a line's evidence comes from, unbent: what lines are compared by. */
    static double level(double evidence) {
        double value = evidence + NOISE_MEAN;
        return value <= KNEE ? value : KNEE + (value - KNEE) / BEYOND_KNEE;
    }

    /**
     * Places of a grid.
     *
     * @param from first of them
     * @param to behind the last one
     */
    record Places(int from, int to) {}

    /**
     * Those of a grid's frequencies that lie in range when multiplied by {@code scale}.
     *
     * @param gridHz rising
     * @param of only these are looked at
     */
    Places inRange(double[] gridHz, Places of, double scale) {
        int from = of.from();
        while (from < of.to() && gridHz[from] * scale < lowestHz()) {
            from++;
        }
        int to = of.to();
        while (to > from && gridHz[to - 1] * scale > highestHz()) {
            to--;
        }
        return new Places(from, to);
    }

    /**
     * Adds one frame's evidence at frequencies of a grid times {@code scale}, so many times.
     *
     * @param places which, all {@link #inRange in range}
     * @param sum added to, one per grid place
     */
    void addEvidence(int channel, int frame, double[] gridHz, Places places, double scale, double weight, float[] sum) {
        float[] row = evidence[channel][frame];
        double toBin = scale / binHz;
        int to = places.to();
        for (int i = places.from(); i < to; i++) {
            double position = gridHz[i] * toBin;
            int bin = (int) position;
            float low = row[bin];
            sum[i] += (float) (weight * (low + (position - bin) * (row[bin + 1] - low)));
        }
    }

    /** Noise floor averaged over the recording, one-sided density in unit²/Hz. */
    double floorDensity(int channel, double frequencyHz) {
        int bin = Math.min(bins - 1, (int) Math.round(frequencyHz / binHz));
        return floorDensity[channel][bin];
    }
}
