package evenblade.tell.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/**
 * One axis: its title with the unit, and its range.
 *
 * @param title with the unit, for instance {@code frequency (Hz)}
 * @param min lower end
 * @param max upper end, above min
 * @param logarithmic whether decades are equally long; then min is above 0
 */
record Axis(String title, double min, double max, boolean logarithmic) {
    Axis {
        if (!(max > min) || logarithmic && !(min > 0)) {
            throw new IllegalArgumentException("axis '" + title + "' can't run from " + min + " to " + max);
        }
    }

    static Axis linear(String title, double min, double max) {
        return new Axis(title, min, max, false);
    }

    /** From 0 to a round number at or above the largest value; to 1 where that isn't above 0. */
    static Axis fromZero(String title, double largest) {
        return linear(title, 0, largest > 0 ? roundUp(largest) : 1);
    }

    /** Covers both values with a twentieth to spare at each end; a single value gets a range of its own. */
    static Axis around(String title, double smallest, double largest) {
        double room = largest > smallest ? 0.05 * (largest - smallest) : Math.max(1e-9, 0.01 * Math.abs(largest));
        return linear(title, smallest - room, largest + room);
    }

    /** Whole decades from the one that holds the smallest to the one that holds the largest, at most so many. */
    static Axis decades(String title, double smallest, double largest, int most) {
        double top = Math.ceil(Math.log10(largest) - 1e-9);
        double bottom = Math.max(top - most, Math.floor(Math.log10(smallest) + 1e-9));
        return new Axis(title, Math.pow(10, Math.min(bottom, top - 1)), Math.pow(10, top), true);
    }

    /** Share of the way from min to max, not held to 0…1. */
    double share(double value) {
        return logarithmic
                ? Math.log(Math.max(value, Double.MIN_NORMAL) / min) / Math.log(max / min)
                : (value - min) / (max - min);
    }

    /** The smallest of 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten that isn't below the value. */
    static double roundUp(double value) {
        double decade = Math.pow(10, Math.floor(Math.log10(value)));
        for (double step : new double[] {1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8}) {
            if (step * decade >= value * (1 - 1e-12)) {
                return step * decade;
            }
        }
        return 10 * decade;
    }

    /** As written beside an axis: no more decimals than the number has. */
    static String tick(double value) {
        if (value == 0) {
            return "0";
        }
        double size = Math.abs(value);
        if (size < 1e-4 || size >= 1e6) {
            return String.format(Locale.ROOT, "%.0e", value);
        }
        return BigDecimal.valueOf(value)
                .round(new MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }
}
