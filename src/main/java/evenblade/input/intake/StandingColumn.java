package evenblade.input.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Finds a column of a table that stood still while others shook: a broken wire or a part of a sensor that hung. Its
 * figures would read low without a sign of it. Where everything stands still, the machine did.
 *
 * @param row the first that repeats, among the rows in order of time
 * @param rows how many repeat
 */
record StandingColumn(int row, int rows) {
    private static final double LEAST_S = 1; // ours
    /** Others must shake meanwhile with this share of what they do throughout. */
    private static final double OTHERS_SHAKE = 0.5;
    /** A mark or switch has hardly more values than these, and stands still by nature. */
    private static final int FEW_VALUES = 4;

    /**
     * The longest such stretch of a column.
     *
     * @param columns all columns of values in order of time
     * @param which of them
     */
    static Optional<StandingColumn> in(List<double[]> columns, int which, double rateHz) {
        double[] x = columns.get(which);
        int from = 0;
        int longest = 0;
        int at = 0;
        for (int i = 1; i <= x.length; i++) {
            if (i == x.length || x[i] != x[from]) {
                if (i - from > longest) {
                    longest = i - from;
                    at = from;
                }
                from = i;
            }
        }
        if (longest < LEAST_S * rateHz || longest == x.length || fewValues(x)) {
            return Optional.empty();
        }
        int first = at;
        int last = at + longest;
        boolean othersShake = IntStream.range(0, columns.size())
                .filter(other -> other != which)
                .mapToObj(columns::get)
                .anyMatch(other -> rms(other, first, last) > OTHERS_SHAKE * rms(other, 0, other.length)
                        && rms(other, first, last) > 0);
        return othersShake ? Optional.of(new StandingColumn(first, longest)) : Optional.empty();
    }

    private static boolean fewValues(double[] x) {
        return Arrays.stream(x).distinct().limit(FEW_VALUES + 1).count() <= FEW_VALUES;
    }

    private static double rms(double[] x, int from, int to) {
        double mean = Arrays.stream(x, from, to).average().orElse(0);
        return Math.sqrt(Arrays.stream(x, from, to)
                .map(v -> (v - mean) * (v - mean))
                .average()
                .orElse(0));
    }
}
