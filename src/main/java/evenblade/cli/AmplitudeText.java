package evenblade.cli;

import java.util.Locale;

/** Figures with no more digits than their error leaves meaning. */
final class AmplitudeText {
    private static final int MOST_DECIMALS = 9;

    private AmplitudeText() {}

    /** Decimals that show two figures of the error. */
    static int decimals(double error) {
        if (!(error > 0) || Double.isInfinite(error)) {
            return 3;
        }
        int lead = (int) Math.floor(Math.log10(error));
        return Math.max(0, Math.min(MOST_DECIMALS, 1 - lead));
    }

    static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** Four figures, without a power of ten unless it is very small. */
    static String plain(double value) {
        return fixed(value, decimals(Math.abs(value) / 100));
    }

    /** The text with blanks for the decimals it has less than {@code most}, so that points line up. */
    static String aligned(String figure, int most) {
        int point = figure.indexOf('.');
        int after = point < 0 ? -1 : figure.length() - point - 1;
        return figure + " ".repeat(Math.max(0, most - after));
    }
}
