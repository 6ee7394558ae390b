package evenblade.input.intake;

import evenblade.base.numeric.RobustLine;
import evenblade.base.problem.BadInput;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/**
 * Rebuilds the times of rows that were stamped when a burst of them arrived: where the signal goes on without a break
 * from burst to burst, the sampling was even, and a robust line through the stamps of the last rows of the bursts,
 * which waited least, tells when each row was sampled. Where it doesn't go on, the sensor sampled in bursts and the
 * stamps are right as they are.
 */
final class BurstClock {
    /** Steps below this share of the mean one lie within a burst ... */
    private static final double WITHIN = 0.5;
    /** ... and those above this between two. */
    private static final double BETWEEN = 1.5;
    /** Rows come in bursts where the steps between them fill this share of the time. */
    private static final double FILLED = 0.6;

    private static final int LEAST_BURSTS = 8; // fewer don't fix a line; ours
    /** Further off the line than so many bursts, rows are missing. */
    private static final double MOST_OFF = 2.5;

    private BurstClock() {}

    /**
     * The times of an even clock behind the bursts, from 0; empty where rows don't come in bursts, or were sampled so.
     *
     * @param seconds stamps that don't fall
     * @param numbers of the samples, rising
     * @param rows for each stamp, the row it belongs to
     * @param signal of the same rows
     * @param place what to complain about
     * @param lineOf the line of the file of each row
     * @throws BadInput where nothing tells when the rows were sampled
     */
    static Optional<RobustLine> behind(
            double[] seconds,
            double[] numbers,
            int[] rows,
            SignalSeam signal,
            BadInput.Place place,
            IntUnaryOperator lineOf) {
        int last = seconds.length - 1;
        double mean = (seconds[last] - seconds[0]) / (numbers[last] - numbers[0]);
        int within = 0;
        int between = 0;
        double filled = 0;
        double longest = 0;
        int[] firsts = new int[seconds.length];
        for (int i = 1; i <= last; i++) {
            double step = seconds[i] - seconds[i - 1];
            within += step < WITHIN * mean ? 1 : 0;
            if (step > BETWEEN * mean) {
                firsts[between++] = i;
                filled += step;
                longest = Math.max(longest, step);
            }
        }
        if (between < LEAST_BURSTS || 2 * within < last || filled < FILLED * (seconds[last] - seconds[0])) {
            return Optional.empty();
        }
        int[] seams = Arrays.stream(firsts, 0, between).map(i -> rows[i]).toArray();
        SignalSeam.Verdict verdict = signal.between(seams);
        boolean timesWithin = seconds[firsts[1] - 1] > seconds[firsts[0]];
        if (verdict == SignalSeam.Verdict.BROKEN && timesWithin) {
            return Optional.empty();
        }
        String size = String.format(Locale.ROOT, "rows in bursts of about %.0f", (double) seconds.length / between);
        if (verdict != SignalSeam.Verdict.CONTINUES) {
            throw place.line(lineOf.applyAsInt(seams[0]))
                    .found(
                            size + ", and nothing in them that tells when each was sampled",
                            "a time of its own for each row");
        }
        double[] x = Arrays.stream(firsts, 0, between)
                .mapToDouble(i -> numbers[i - 1])
                .toArray();
        double[] y = Arrays.stream(firsts, 0, between)
                .mapToDouble(i -> seconds[i - 1])
                .toArray();
        RobustLine line = RobustLine.fit(x, y);
        for (int i = 0; i <= last; i++) {
            if (Math.abs(seconds[i] - line.at(numbers[i])) > MOST_OFF * longest) {
                throw place.line(lineOf.applyAsInt(rows[i]))
                        .found(size + " of which some are missing", "all rows, or a time of its own for each");
            }
        }
        return Optional.of(line);
    }
}
