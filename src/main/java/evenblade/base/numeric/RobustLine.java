package evenblade.base.numeric;

import java.util.Arrays;

/**
 * A straight line y = intercept + slope·x through points of which some lie far off.
 *
 * @param slope change of y per x
 * @param intercept y at x = 0
 * @param scale spread of the points about the line, as 1.4826 times the median absolute deviation,
 *     which is the standard deviation where the scatter is normal
 */
public record RobustLine(double slope, double intercept, double scale) {
    /** Huber's constant: 95 % efficient where the scatter is normal. */
    private static final double TUNING = 1.345;

    /** 1/Φ⁻¹(3/4): the median deviation of normal noise as a standard deviation. */
    private static final double NORMAL_PER_MAD = 1.4826;

    private static final int START_POINTS = 301; // ours: 45,150 slopes, enough for a median and soon sorted
    /** Enough to know the scatter by; a median over all points would cost more than the fit. */
    private static final int SCALE_POINTS = 20_001;

    private static final int MOST_ROUNDS = 25; // ours: a bound, so that it always ends
    private static final double SETTLED = 1e-12; // near a double's precision

    /**
     * Fits by Huber's M-estimator: least squares reweighted by min(1, k·s/|residual|), started from the
     * median of the slopes between evenly picked points (Theil 1950, Sen 1968).
     *
     * <p>Breaks down where a quarter or more of the points follow another line.
     *
     * @param x not all equal
     * @param y as many
     * @throws IllegalArgumentException where there are fewer than two points or lengths differ
     */
    public static RobustLine fit(double[] x, double[] y) {
        if (x.length != y.length || x.length < 2) {
            throw new IllegalArgumentException(
                    x.length + " x for " + y.length + " y values, expected as many of each and at least 2");
        }
        double slope = startingSlope(x, y);
        double[] residuals = new double[Math.min(x.length, SCALE_POINTS)];
        for (int i = 0; i < residuals.length; i++) {
            int point = pick(i, residuals.length, x.length);
            residuals[i] = y[point] - slope * x[point];
        }
        double intercept = median(residuals);
        double scale = scale(x, y, slope, intercept, residuals);
        for (int round = 0; round < MOST_ROUNDS && scale > 0; round++) {
            double before = slope;
            double limit = TUNING * scale;
            double w = 0;
            double wx = 0;
            double wy = 0;
            for (int i = 0; i < x.length; i++) {
                double weight = weight(y[i] - intercept - slope * x[i], limit);
                w += weight;
                wx += weight * x[i];
                wy += weight * y[i];
            }
            double meanX = wx / w;
            double meanY = wy / w;
            double xx = 0;
            double xy = 0;
            for (int i = 0; i < x.length; i++) {
                double weight = weight(y[i] - intercept - slope * x[i], limit);
                xx += weight * (x[i] - meanX) * (x[i] - meanX);
                xy += weight * (x[i] - meanX) * (y[i] - meanY);
            }
            slope = xy / xx;
            intercept = meanY - slope * meanX;
            scale = scale(x, y, slope, intercept, residuals);
            if (Math.abs(slope - before) <= SETTLED * Math.abs(slope)) {
                break;
            }
        }
        return new RobustLine(slope, intercept, scale);
    }

    /** The line's y at an x. */
    public double at(double x) {
        return intercept + slope * x;
    }

    private static double weight(double residual, double limit) {
        double size = Math.abs(residual);
        return size <= limit ? 1 : limit / size;
    }

    private static double startingSlope(double[] x, double[] y) {
        int points = Math.min(x.length, START_POINTS);
        int[] picked = new int[points];
        for (int i = 0; i < points; i++) {
            picked[i] = pick(i, points, x.length);
        }
        double[] slopes = new double[points * (points - 1) / 2];
        int count = 0;
        for (int i = 0; i < points; i++) {
            for (int j = i + 1; j < points; j++) {
                double run = x[picked[j]] - x[picked[i]];
                if (run != 0) {
                    slopes[count++] = (y[picked[j]] - y[picked[i]]) / run;
                }
            }
        }
        if (count == 0) {
            throw new IllegalArgumentException("all x are equal, expected at least two different ones");
        }
        return median(Arrays.copyOf(slopes, count));
    }

    private static double scale(double[] x, double[] y, double slope, double intercept, double[] scratch) {
        for (int i = 0; i < scratch.length; i++) {
            int point = pick(i, scratch.length, x.length);
            scratch[i] = Math.abs(y[point] - intercept - slope * x[point]);
        }
        return NORMAL_PER_MAD * median(scratch);
    }

    /** The {@code i}th of {@code picks} points spread evenly over {@code points}, both ends among them. */
    private static int pick(int i, int picks, int points) {
        return (int) ((long) i * (points - 1) / (picks - 1));
    }

    /** The median; the array is sorted by it. */
    private static double median(double[] values) {
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
