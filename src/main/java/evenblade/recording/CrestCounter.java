package evenblade.recording;

import java.util.Arrays;

/**
 * Counts how samples lie just below the highest value seen, while that value is still growing: two
 * histograms of the uppermost strip, one of all samples and one of samples in runs.
 */
final class CrestCounter {
    /** δ as a share of the span: 0.1 % of half of it. */
    private static final double DELTA_OF_SPAN = 0.0005;

    private static final int BINS_PER_DELTA = 8;
    private static final int BINS = 256;
    /** Bins kept below the highest value when the strip is laid; the rest is room to grow into. */
    private static final int BINS_BELOW = 64;
    /** The strip is laid anew when δ has grown by this. */
    private static final double GROWTH = 1.25;
    /** Of samples within 4δ of a smooth extreme at most about half lie within δ; of a flat one, all. */
    private static final double FLAT = 0.75;

    private final int sign;
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

    /**
     * @param sign 1 to watch the top of the samples, -1 to watch their bottom
     */
    CrestCounter(int sign, double quantum, int run) {
        this.sign = sign;
        this.quantum = quantum;
        this.run = run;
        this.pending = new int[run];
    }

    /** Makes room for samples up to {@code highest} of a signal that spans {@code span}. */
    void prepare(double highest, double span) {
        this.highest = highest;
        this.delta = Math.max(DELTA_OF_SPAN * span, quantum);
        double wanted = delta / BINS_PER_DELTA;
        if (wanted <= 0) {
            return;
        }
        if (width == 0 || wanted > GROWTH * width || highest >= base + (BINS - 1) * width) {
            layStrip(Math.max(wanted, width));
        }
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

    void add(float[] x, int from, int stride, int end) {
        if (width == 0) {
            return;
        }
        float threshold = (float) (highest - 4 * delta);
        double runThreshold = highest - delta;
        double perBin = 1 / width;
        int length = runLength;
        for (int i = from; i < end; i += stride) {
            float v = sign * x[i];
            if (v < threshold) {
                length = 0;
                continue;
            }
            int bin = Math.max(0, Math.min(BINS - 1, (int) ((v - base) * perBin)));
            all[bin]++;
            if (v < runThreshold) {
                length = 0;
                continue;
            }
            length = Math.min(length + 1, run + 1);
            if (length > run) {
                inRuns[bin]++;
            } else {
                pending[length - 1] = bin;
                if (length == run) {
                    for (int earlier : pending) {
                        inRuns[earlier]++;
                    }
                }
            }
        }
        runLength = length;
    }

    /** The estimated number of clipped samples. */
    long clipped() {
        if (width == 0) {
            return 0;
        }
        long flat = countAbove(inRuns, highest - delta);
        long near = countAbove(all, highest - 4 * delta);
        return flat > FLAT * near ? Math.max(0, 2 * flat - near) : 0;
    }

    private long countAbove(long[] bins, double level) {
        int first = Math.max(0, (int) Math.round((level - base) / width));
        return first >= BINS ? 0 : Arrays.stream(bins, first, BINS).sum();
    }
}
