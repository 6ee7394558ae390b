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

    double largest() {
        double largest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < y.size(); i++) {
            largest = Math.max(largest, y.at(i));
        }
        return largest;
    }
}
