package evenblade.tell.chart;

import java.util.Locale;

/** Numbers as people read them in a picture. */
final class Figures {
    private Figures() {}

    /** Three figures that count, no exponent between 0.001 and 99999: {@code 0.0123}, {@code 12.3}, {@code 4800}. */
    static String plain(double value) {
        double size = Math.abs(value);
        if (size == 0) {
            return "0";
        }
        if (size < 1e-3 || size >= 1e5) {
            return String.format(Locale.ROOT, "%.2e", value);
        }
        int decimals = (int) Math.max(0, 2 - Math.floor(Math.log10(size)));
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** The value to the last place that its error leaves meaningful: {@code 1.234 ± 0.012}. */
    static String withError(double value, double error) {
        if (!(error > 0) || !Double.isFinite(error)) {
            return plain(value);
        }
        if (Math.max(Math.abs(value), error) < 1e-3 || Math.max(Math.abs(value), error) >= 1e5) {
            return String.format(Locale.ROOT, "%.2e ± %.1e", value, error);
        }
        int decimals = (int) Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(error))));
        return String.format(Locale.ROOT, "%." + decimals + "f ± %." + decimals + "f", value, error);
    }

    /** With two decimals and its sign, for deviations. */
    static String signed(double value) {
        return String.format(Locale.ROOT, "%+.2f", value).replace('-', '−');
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
        return java.math.BigDecimal.valueOf(value)
                .round(new java.math.MathContext(6))
                .stripTrailingZeros()
                .toPlainString();
    }
}
