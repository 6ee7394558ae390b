package evenblade.input.recording;

import java.util.Arrays;

/**
 * Counts how samples lie just below the highest value seen, while that value is still growing: two
 * histograms of the uppermost strip, one of all samples and one of samples in runs.
 */
final class CrestCounter {
    /** δ as a share of the span: 0.1 % of half of it. */
    private static final double DELTA_OF_SPAN = 0.0005;

    private static final int BINS_PER_DELTA = 8; // ours: a pile a quarter as wide as the step can be seen
    private static final int BINS = 256; // ours: 32 steps, the crests below them are of no interest
    /** Bins kept below the highest value when the strip is laid; the rest is room to grow into. */
    private static final int BINS_BELOW = 64;
    /** The strip is laid anew when δ has grown by this. */
    private static final double GROWTH = 1.25;
    /** Of samples within 4δ of a smooth extreme at most about half lie within δ; of a flat one, all. */
    private static final double FLAT = 0.75;
    /** Noise on a clipped peak breaks its flat top into pieces; this share must still lie in runs ... */
    private static final double LEAST_IN_RUNS = 0.1;

    /**
     * ... or so many samples must lie within δ and some below, within 4δ: at low rates a clipped peak is a
     * single sample. (A clean sine whose period is a whole number of samples has none below.)
     */
    private static final long PILE = 30;

    private static final long BELOW_PILE = 3; // ours: fewer may be chance

    private final double quantum;
    private final int run;
    private final int[] pending;
    private long[] all = new long[BINS];
    private long[] inRuns = new long[BINS];
    private double base;
    private double width;
    private double highest = Double.NEGATIVE_INFINITY;
    private double delta;
    private int runLength;
    private long runIndex = -2;

    CrestCounter(double quantum, int run) {
        this.quantum = quantum;
        this.run = run;
        this.pending = new int[run];
    }

    /** Makes room for samples up to {@code highest} of a signal that spans {@code span}. */
    void grow(double highest, double span) {
        this.highest = highest;
        this.delta = Math.max(DELTA_OF_SPAN * span, quantum);
        double wanted = delta / BINS_PER_DELTA;
        if (wanted > 0 && (wanted > GROWTH * width || highest >= base + (BINS - 1) * width)) {
            layStrip(Math.max(wanted, width));
        }
    }

    /** Samples below this need not be looked at. */
    double level() {
        return highest - 4 * delta;
    }

    private void layStrip(double newWidth) {
        double newBase = highest - BINS_BELOW * newWidth;
        long[] movedAll = new long[BINS];
        long[] movedRuns = new long[BINS];
        if (width > 0) {
            for (int i = 0; i < BINS; i++) {
                int to = (int) Math.floor((base + (i + 0.5) * width - newBase) / newWidth);
                if (to >= 0 && to < BINS) {
                    movedAll[to] += all[i];
                    movedRuns[to] += inRuns[i];
                }
            }
        }
        all = movedAll;
        inRuns = movedRuns;
        base = newBase;
        width = newWidth;
        runLength = 0;
    }

    /**
     * Counts a sample if it is near the highest.
     *
     * @param index of the sample, by which neighbours are known
     */
    void look(double value, long index) {
        if (width == 0 || value < highest - 4 * delta) {
            return;
        }
        int bin = Math.max(0, Math.min(BINS - 1, (int) ((value - base) / width)));
        all[bin]++;
        if (value < highest - delta) {
            return;
        }
        runLength = index == runIndex + 1 ? Math.min(runLength + 1, run + 1) : 1;
        runIndex = index;
        if (runLength > run) {
            inRuns[bin]++;
            return;
        }
        pending[runLength - 1] = bin;
        if (runLength == run) {
            for (int earlier : pending) {
                inRuns[earlier]++;
            }
        }
    }

    /** The estimated number of clipped samples. */
    long clipped() {
        if (width == 0) {
            return 0;
        }
        long flat = countAbove(all, highest - delta);
        long near = countAbove(all, highest - 4 * delta);
        long runs = countAbove(inRuns, highest - delta);
        boolean together = runs > LEAST_IN_RUNS * flat || flat >= PILE && near - flat >= BELOW_PILE;
        return flat > FLAT * near && together ? Math.max(0, 2 * flat - near) : 0;
    }

    private long countAbove(long[] bins, double level) {
        int first = Math.max(0, (int) Math.round((level - base) / width));
        return first >= BINS ? 0 : Arrays.stream(bins, first, BINS).sum();
    }
}
