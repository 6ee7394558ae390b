package evenblade.tell.chart;

import evenblade.input.recording.Series;

/**
 * Points joined by a line.
 *
 * @param x rising, at least one value
 * @param y as many values as x
 */
public record Curve(Series x, Series y) {
    public Curve {
        if (x.size() != y.size() || x.size() == 0) {
            throw new IllegalArgumentException(
                    "a curve of " + x.size() + " values across and " + y.size() + " upwards can't be drawn");
        }
    }

    /** Index of the value of x that lies next to one. */
    int nearest(double value) {
        int low = 0;
        int high = x.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (x.at(middle) <= value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Math.abs(x.at(high) - value) < Math.abs(x.at(low) - value) ? high : low;
    }

    double largest() {
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < y.size(); i++) {
            largest = Math.max(largest, y.at(i));
        }
        return largest;
    }
}
