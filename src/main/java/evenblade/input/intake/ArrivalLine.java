package evenblade.input.intake;

import evenblade.base.numeric.RobustLine;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/**
 * When the lines of a table were sampled, from the times at which they came in where they were recorded here: for a
 * sensor that samples evenly, a straight line through the earliest arrivals. A line can only come late, so in every
 * {@value #WINDOW_LINES} lines the one that waited least counts. Good to some milliseconds at a place and, over a
 * recording, to what the computer's clock is good to.
 */
final class ArrivalLine {
    /** A number and a time take a third of it: a file with longer lines is none of ours. */
    private static final int MOST_LINE_BYTES = 100;
    /** Lines among which the earliest is looked for. */
    private static final int WINDOW_LINES = 64;

    /** Fewer points pin no line; with so many, a late one among them is seen. */
    private static final int LEAST_WINDOWS = 8;
    /** Earliest arrivals further off the line than this share of the time, and never nearer than ... */
    private static final double MOST_OFF_SHARE = 0.002;
    /** ... this many seconds: rows are missing, or the sampling wasn't even. */
    private static final double LEAST_OFF_S = 0.05;

    private ArrivalLine() {}

    /**
     * The times of rows, from that of the first on; empty where the arrivals don't lie on a line or there are too few.
     *
     * @param arrivals file of line and arrival, one line each
     * @param rows how many
     * @param lineOf the line of the file of each row
     */
    static Optional<RobustLine> through(Path arrivals, int rows, IntUnaryOperator lineOf) {
        int lastLine = lineOf.applyAsInt(rows - 1);
        double[] arrived = read(arrivals, lastLine + 1);
        int windows = rows / WINDOW_LINES;
        if (windows < LEAST_WINDOWS) {
            return Optional.empty();
        }
        int firstLine = lineOf.applyAsInt(0);
        // What came last may be missing after a crash: the line goes on.
        while (lastLine > firstLine && Double.isNaN(arrived[lastLine])) {
            lastLine--;
        }
        double[] line = new double[windows];
        double[] at = new double[windows];
        int found = 0;
        double mean = (arrived[lastLine] - arrived[firstLine]) / (lastLine - firstLine);
        for (int w = 0; w < windows; w++) {
            double least = Double.POSITIVE_INFINITY;
            for (int row = w * WINDOW_LINES; row < (w + 1) * WINDOW_LINES; row++) {
                int number = lineOf.applyAsInt(row);
                double late = arrived[number] - mean * number;
                if (late < least) {
                    least = late;
                    line[found] = number;
                    at[found] = arrived[number];
                }
            }
            found += least < Double.POSITIVE_INFINITY ? 1 : 0;
        }
        if (found < LEAST_WINDOWS || !(mean > 0)) {
            return Optional.empty();
        }
        double[] x = Arrays.copyOf(line, found);
        double[] y = Arrays.copyOf(at, found);
        RobustLine fit = RobustLine.fit(x, y);
        double most = Math.max(LEAST_OFF_S, MOST_OFF_SHARE * (y[found - 1] - y[0]));
        for (int i = 0; i < found; i++) {
            if (Math.abs(y[i] - fit.at(x[i])) > most) {
                return Optional.empty();
            }
        }
        return fit.slope() > 0 ? Optional.of(fit) : Optional.empty();
    }

    /** The arrival of each line, by its number; not a number where none is written. */
    private static double[] read(Path arrivals, int size) {
        double[] arrived = new double[size];
        Arrays.fill(arrived, Double.NaN);
        if (arrivals.toFile().length() > MOST_LINE_BYTES * (size + 1L)) {
            return arrived;
        }
        try (BufferedReader lines = Files.newBufferedReader(arrivals, StandardCharsets.US_ASCII)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                int comma = line.indexOf(',');
                if (comma > 0 && Character.isDigit(line.charAt(0))) {
                    int number = Integer.parseInt(line.substring(0, comma));
                    if (number < size) {
                        arrived[number] = Double.parseDouble(line.substring(comma + 1));
                    }
                }
            }
        } catch (IOException | NumberFormatException e) {
            // Broken off or damaged: what was read until then still holds.
        }
        return arrived;
    }
}
