package evenblade.measure.speed;

import java.util.Arrays;
import java.util.BitSet;
import java.util.stream.IntStream;

/**
 * How much of a line there is at each frequency of a stretch, along a path of speed: the mean over frames and channels of
 * {@link WhitenedSpectrogram#evidence}, with frequencies taken along with the speed. A line in step with the path stays
 * sharp, one that stands still blurs as far as the speed moves. The mean of a logarithm: a line counts by lasting, not
 * by one loud moment.
 *
 * <p>Frequencies are those at the mean speed of the stretch, on a grid of equal ratios {@link #STEP} apart.
 */
final class WhitenedLines {
    /** Natural logarithm of the step from one grid place to the next: a quarter of a resolution at 500 Hz. */
    static final double STEP = 4e-4;
    /** Standard deviation of the evidence of one frame in white noise, from a seeded simulation of it. */
    private static final double NOISE_DEVIATION = 0.55;
    /** Overlapped Hann frames: independent ones per frame length. */
    private static final double INDEPENDENT_PER_LENGTH = 1.9;
    /** Standard deviations of noise from which on a line stands: some ten thousand places are looked at. */
    private static final double STANDING_DEVIATIONS = 4.2;
    /** A line stands from this mean evidence on, however long the stretch: about twice the floor. */
    private static final double LEAST_STANDING = 0.7;
    /** Mean evidence of a line that counts in full: 18 dB over the floor in a frame. */
    private static final double FULL = 4.2;
    /** Parts that the grid is worked on in: a few for each processor; ours. */
    private static final int SLICES = 8;

    private final WhitenedSpectrogram frames;
    private final double meanHz;
    private final double firstLn;
    private final float[] evidence;
    private final double standing;
    /** Places whose evidence was taken out. */
    private final BitSet taken = new BitSet();

    WhitenedLines(WhitenedSpectrogram frames, double meanHz, double firstLn, float[] evidence, double standing) {
        this.frames = frames;
        this.meanHz = meanHz;
        this.firstLn = firstLn;
        this.evidence = evidence;
        this.standing = standing;
    }

    /**
     * @param frames short spectra of the recording
     * @param first first frame of the stretch
     * @param hz propeller speed in each frame of the stretch
     */
    static WhitenedLines along(WhitenedSpectrogram frames, int first, double[] hz) {
        double mean = Arrays.stream(hz).average().orElseThrow();
        double from = Math.log(frames.lowestHz());
        int places = (int) Math.ceil((Math.log(frames.highestHz()) - from) / STEP);
        float[] sum = new float[places];
        int[] count = new int[places];
        double[] grid = new double[places];
        for (int i = 0; i < places; i++) {
            grid[i] = Math.exp(from + i * STEP);
        }
        // Side by side, each with places of its own: so sums don't depend on how many work.
        IntStream.range(0, SLICES).parallel().forEach(slice -> {
            WhitenedSpectrogram.Places own =
                    new WhitenedSpectrogram.Places(places * slice / SLICES, places * (slice + 1) / SLICES);
            for (int f = 0; f < hz.length; f++) {
                WhitenedSpectrogram.Places seen = frames.inRange(grid, own, hz[f] / mean);
                for (int c = 0; c < frames.channels(); c++) {
                    frames.addEvidence(c, first + f, grid, seen, hz[f] / mean, 1, sum);
                }
                for (int i = seen.from(); i < seen.to(); i++) {
                    count[i] += frames.channels();
                }
            }
        });
        for (int i = 0; i < places; i++) {
            sum[i] = count[i] == 0 ? 0 : sum[i] / count[i];
        }
        double seconds = frames.lengthS() + (hz.length - 1) * frames.hopS();
        double independent = Math.max(1, frames.channels() * INDEPENDENT_PER_LENGTH * seconds / frames.lengthS() - 0.9);
        double standing = Math.max(LEAST_STANDING, STANDING_DEVIATIONS * NOISE_DEVIATION / Math.sqrt(independent));
        return new WhitenedLines(frames, mean, from, sum, standing);
    }

    /** Mean propeller speed of the path in this stretch. */
    double meanHz() {
        return meanHz;
    }

    /** Mean evidence at a frequency, folded down where it lies beyond the range; none where it can't be seen. */
    double evidence(double frequencyHz) {
        double seenAt = frequencyHz;
        if (!frames.inRange(frequencyHz)) {
            if (!frames.folded(frequencyHz)) {
                return 0;
            }
            seenAt = frames.appearsAtHz(frequencyHz);
        }
        double place = (Math.log(seenAt) - firstLn) / STEP;
        int at = (int) place;
        if (at < 0 || at + 1 >= evidence.length) {
            return 0;
        }
        return evidence[at] + (place - at) * (evidence[at + 1] - evidence[at]);
    }

    /** Whether what lies at a frequency was taken out: nothing can be said of it. */
    boolean takenOut(double frequencyHz) {
        int at = (int) ((Math.log(frequencyHz) - firstLn) / STEP);
        return at >= 0 && taken.get(at);
    }

    /** The most evidence within {@code reachHz} of a frequency. */
    double mostEvidence(double frequencyHz, double reachHz) {
        double most = 0;
        for (double hz = frequencyHz - reachHz; hz <= frequencyHz + reachHz; hz *= 1 + STEP) {
            most = Math.max(most, evidence(hz));
        }
        return most;
    }

    boolean stands(double frequencyHz) {
        return evidence(frequencyHz) > standing;
    }

    /** 0 where no line stands, up to 1 for one that stands far out: no single line counts for more than one. */
    double credit(double frequencyHz) {
        return credit((float) evidence(frequencyHz));
    }

    /**
     * Adds a line's {@link #credit}, so many times, for each speed of a grid {@link #STEP} apart. Both grids have equal ratios,
     * so the line lies at the same share between two places of the spectrum for every speed.
     *
     * @param order of the line
     * @param slowestLn natural logarithm of the first speed in Hz
     * @param sum added to, one per speed
     */
    void addCredits(double order, double weight, double slowestLn, double[] sum) {
        double first = (slowestLn + Math.log(order) - firstLn) / STEP;
        int at = (int) Math.floor(first);
        double share = first - at;
        int from = Math.max(0, Math.min(sum.length, -at));
        int to = Math.max(from, Math.min(sum.length, evidence.length - 1 - at));
        for (int i = from; i < to; i++) {
            float low = evidence[at + i];
            sum[i] += weight * credit((float) (low + share * (evidence[at + i + 1] - low)));
        }
        for (int i = to; i < sum.length; i++) {
            sum[i] += weight * credit(order * Math.exp(slowestLn + i * STEP));
        }
    }

    /** Strength of a line, without an upper end. */
    double strength(double frequencyHz) {
        double mean = evidence(frequencyHz);
        return mean > standing ? mean / FULL : 0;
    }

    private double credit(float mean) {
        return mean > standing ? Math.min(1, mean / FULL) : 0;
    }

    /** The lines that stand out: places of local maxima, hertz, strongest first. */
    double[] peaksHz() {
        return java.util.stream.IntStream.range(1, evidence.length - 1)
                .filter(i -> evidence[i] > standing && isPeak(i))
                .boxed()
                .sorted((a, b) -> Float.compare(evidence[b], evidence[a]))
                .mapToDouble(i -> Math.exp(firstLn + i * STEP))
                .toArray();
    }

    private boolean isPeak(int at) {
        double hz = Math.exp(firstLn + at * STEP);
        int reach = (int) Math.ceil(0.8 / frames.lengthS() / hz / STEP);
        for (int i = Math.max(0, at - reach); i <= Math.min(evidence.length - 1, at + reach); i++) {
            if (evidence[i] > evidence[at] || evidence[i] == evidence[at] && i < at) {
                return false;
            }
        }
        return true;
    }

    /**
     * Without what lies near some frequencies.
     *
     * @param reachHz how far around each
     * @param reachShare and this share of it more
     */
    WhitenedLines without(double[] hz, double reachHz, double reachShare) {
        float[] kept = evidence.clone();
        WhitenedLines rest = new WhitenedLines(frames, meanHz, firstLn, kept, standing);
        rest.taken.or(taken);
        for (double line : hz) {
            double reach = reachHz + reachShare * line;
            int from = (int) Math.ceil((Math.log(Math.max(1e-9, line - reach)) - firstLn) / STEP);
            int to = (int) Math.floor((Math.log(line + reach) - firstLn) / STEP);
            for (int i = Math.max(0, from); i <= Math.min(kept.length - 1, to); i++) {
                kept[i] = 0;
                rest.taken.set(i);
            }
        }
        return rest;
    }

    double lowestHz() {
        return frames.lowestHz();
    }

    double highestHz() {
        return frames.highestHz();
    }

    double resolutionHz() {
        return 1 / frames.lengthS();
    }
}
