package evenblade.input.intake;

import evenblade.base.numeric.PositiveDefinite;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Tells whether a signal goes on without a break from one row to the next, whatever the stamps say.
 *
 * <p>A linear prediction of each sample from the {@value #ORDER} before it (least squares over the rows around;
 * Makhoul 1975, from memory) leaves only the noise where samples follow evenly, and leaves much more where rows are
 * missing. What is 'much more' in this very signal is seen by leaving rows out on purpose.
 *
 * <p><b>When it is wrong.</b> Where noise drowns every line, rows left out can't be seen: the answer is
 * {@link Verdict#UNTOLD} then. Rows missing for a whole number of periods of all lines look like none.
 */
final class SignalSeam {
    enum Verdict {
        /** No row is missing here. */
        CONTINUES,
        /** Rows are missing here. */
        BROKEN,
        /** This signal doesn't tell. */
        UNTOLD
    }

    /** Twice what twelve lines need, which is two each: the more samples share in it, the less noise it carries. */
    private static final int ORDER = 48;
    /** Samples behind a lone seam that are held against their prediction. */
    private static final int LOOKED_AT = 32;
    /** Rows on each side that the prediction is learnt from. */
    private static final int AROUND = 1500;
    /** Rows left out on purpose: from 3 to 159 in turn, in steps that share no divisor with their number. */
    private static final int FEWEST_OUT = 3;

    private static final int NUMBERS_OUT = 157; // a prime, so that the steps reach every distance
    private static final int STEP_OUT = 37; // has no divisor in common with it
    private static final int TRIALS = 400; // ours: a share of 0.25 % can be seen
    /** A seam at which the signal does no worse than so many steady rows is none ... */
    private static final double STEADY = 0.95;
    /** ... and one at which it does this many times worse is a break. */
    private static final double MARGIN = 1.6;
    /** Where more rows left out on purpose go unseen than this, the signal can't vouch that none is missing. */
    private static final double MOST_UNSEEN = 0.2;
    /** Between bursts: misses so much larger than within are a break, and so much are none. */
    private static final double BROKEN_TIMES = 4;

    private static final double EVEN_TIMES = 1.6; // ours
    /** A signal of which this share can't be predicted tells nothing. */
    private static final double MOST_UNPREDICTED = 0.3;

    private static final double MEDIAN_OF_CHI_SQUARE = 0.4549; // of one degree of freedom
    /** Channels that are looked at; more tell nothing new. */
    private static final int MOST_CHANNELS = 3;

    private final List<double[]> values;
    private final int size;

    private SignalSeam(List<double[]> values) {
        this.values = values;
        this.size = values.get(0).length;
    }

    /** Of columns in the order of the file, all as long, at least one. */
    static SignalSeam of(List<double[]> columns) {
        List<double[]> moving = columns.stream()
                .filter(each -> Arrays.stream(each).anyMatch(value -> value != each[0]))
                .limit(MOST_CHANNELS)
                .toList();
        return new SignalSeam(moving.isEmpty() ? columns.subList(0, 1) : moving);
    }

    /** Whether the signal goes on from row − 1 to row. */
    Verdict at(int row) {
        int from = Math.max(0, row - AROUND);
        int to = Math.min(size, row + AROUND);
        if (row - ORDER < from || row + LOOKED_AT > to || to - from < 8 * ORDER) {
            return Verdict.UNTOLD;
        }
        boolean[] touched = touched(row, from, to);
        int[] trials = trials(from, to, touched);
        double[] steady = new double[trials.length];
        double[] cut = new double[trials.length];
        double here = 0;
        boolean told = false;
        for (double[] x : values) {
            Optional<double[]> learnt = prediction(x, from, to, touched);
            double noise = learnt.map(a -> usualMiss(x, a, from, to, touched)).orElse(0.0);
            if (!(noise > 0)) {
                continue;
            }
            told = true;
            double[] a = learnt.get();
            here += miss(x, a, row, 0) / noise;
            for (int i = 0; i < trials.length; i++) {
                int out = FEWEST_OUT + i * STEP_OUT % NUMBERS_OUT;
                steady[i] += miss(x, a, trials[i], 0) / noise;
                cut[i] += miss(x, a, trials[i], out) / noise;
            }
        }
        if (!told || trials.length < TRIALS / 2) {
            return Verdict.UNTOLD;
        }
        double limit = quantile(steady, STEADY);
        if (here > limit) {
            return here > MARGIN * limit ? Verdict.BROKEN : Verdict.UNTOLD;
        }
        long unseen = Arrays.stream(cut).filter(each -> each <= limit).count();
        return unseen > MOST_UNSEEN * cut.length ? Verdict.UNTOLD : Verdict.CONTINUES;
    }

    /** Whether the signal goes on from burst to burst, given the first row of each but the first. */
    Verdict between(int[] firsts) {
        int middle = firsts[firsts.length / 2];
        int from = Math.max(0, middle - 2 * AROUND);
        int to = Math.min(size, middle + 2 * AROUND);
        boolean[] first = new boolean[to - from];
        Arrays.stream(firsts).filter(row -> row >= from && row < to).forEach(row -> first[row - from] = true);
        boolean[] none = new boolean[to - from];
        boolean[] others = new boolean[to - from];
        for (int i = 0; i < others.length; i++) {
            others[i] = !first[i];
        }
        double ratio = 0;
        int told = 0;
        for (double[] x : values) {
            Optional<double[]> learnt = prediction(x, from, to, none);
            if (learnt.isEmpty()) {
                continue;
            }
            double[] a = learnt.get();
            double within = usualMiss(x, a, from, to, first);
            double across = usualMiss(x, a, from, to, others);
            double[] part = Arrays.copyOfRange(x, from, to);
            double mean = Arrays.stream(part).average().orElse(0);
            double variance = Arrays.stream(part)
                    .map(v -> (v - mean) * (v - mean))
                    .average()
                    .orElse(0);
            if (within > 0 && within < MOST_UNPREDICTED * MEDIAN_OF_CHI_SQUARE * variance) {
                told++;
                ratio += across / within;
            }
        }
        ratio /= Math.max(1, told);
        if (told == 0) {
            return Verdict.UNTOLD;
        }
        return ratio < EVEN_TIMES ? Verdict.CONTINUES : ratio > BROKEN_TIMES ? Verdict.BROKEN : Verdict.UNTOLD;
    }

    /** Rows whose prediction, or that of the rows looked at behind them, reaches across a seam. */
    private static boolean[] touched(int seam, int from, int to) {
        boolean[] touched = new boolean[to - from];
        Arrays.fill(touched, Math.max(0, seam - LOOKED_AT + 1 - from), Math.min(to, seam + ORDER) - from, true);
        return touched;
    }

    private static int[] trials(int from, int to, boolean[] touched) {
        int[] rows = new int[TRIALS];
        int count = 0;
        double every = (to - from - ORDER - LOOKED_AT) / (double) TRIALS;
        for (int i = 0; i < TRIALS; i++) {
            int row = from + ORDER + (int) (i * every);
            boolean room = row + LOOKED_AT + FEWEST_OUT + NUMBERS_OUT <= to;
            if (room && !touched[row - from]) {
                rows[count++] = row;
            }
        }
        return Arrays.copyOf(rows, count);
    }

    /** Coefficients of the past samples, the latest first, then a constant. */
    private static Optional<double[]> prediction(double[] x, int from, int to, boolean[] touched) {
        int n = ORDER + 1;
        double mean = Arrays.stream(x, from, to).average().orElse(0);
        double[][] normal = new double[n][n];
        double[] right = new double[n];
        double[] past = new double[n];
        int rows = 0;
        for (int row = from + ORDER; row < to; row++) {
            if (touched[row - from]) {
                continue;
            }
            for (int j = 0; j < ORDER; j++) {
                past[j] = x[row - 1 - j] - mean;
            }
            past[ORDER] = 1;
            rows++;
            for (int j = 0; j < n; j++) {
                right[j] += past[j] * (x[row] - mean);
                for (int k = 0; k <= j; k++) {
                    normal[j][k] += past[j] * past[k];
                }
            }
        }
        if (rows < 4 * n) {
            return Optional.empty();
        }
        double trace = 0;
        for (int j = 0; j < ORDER; j++) {
            trace += normal[j][j];
        }
        for (int j = 0; j < n; j++) {
            // A hair of ridge keeps a signal of few pure tones from having no inverse.
            normal[j][j] += 1e-9 * trace / ORDER;
            for (int k = 0; k < j; k++) {
                normal[k][j] = normal[j][k];
            }
        }
        return PositiveDefinite.inverse(normal).map(inverse -> {
            double[] a = new double[n + 1];
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    a[j] += inverse[j][k] * right[k];
                }
            }
            a[n] = mean;
            return a;
        });
    }

    private static double error(double[] x, double[] a, int row, int seam, int out) {
        double mean = a[ORDER + 1];
        double predicted = a[ORDER];
        for (int j = 0; j < ORDER; j++) {
            int past = row - 1 - j;
            predicted += a[j] * (x[past >= seam ? past + out : past] - mean);
        }
        return x[row + out] - mean - predicted;
    }

    /** Mean square by which the samples behind a seam miss their prediction, with so many rows left out there. */
    private static double miss(double[] x, double[] a, int seam, int out) {
        double squares = 0;
        for (int k = 0; k < LOOKED_AT; k++) {
            double error = error(x, a, seam + k, seam, out);
            squares += error * error;
        }
        return squares / LOOKED_AT;
    }

    /** Middle square by which samples that aren't touched miss their prediction. */
    private static double usualMiss(double[] x, double[] a, int from, int to, boolean[] touched) {
        double[] squares = new double[to - from];
        int count = 0;
        for (int row = from + ORDER; row < to; row++) {
            if (!touched[row - from]) {
                double error = error(x, a, row, row, 0);
                squares[count++] = error * error;
            }
        }
        return count == 0 ? 0 : quantile(Arrays.copyOf(squares, count), 0.5);
    }

    private static double quantile(double[] values, double share) {
        Arrays.sort(values);
        return values[(int) Math.min(values.length - 1, share * values.length)];
    }
}
