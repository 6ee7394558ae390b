package evenblade.face.cli;

import evenblade.face.app.FigureText;

/** Figures with no more digits than their error leaves meaning. */
final class AmplitudeText {
    private AmplitudeText() {}

    /** Decimals that show two figures of the error. */
    static int decimals(double error) {
        return FigureText.decimals(error);
    }

    static String fixed(double value, int decimals) {
        return FigureText.fixed(value, decimals);
    }

    /** Four figures, without a power of ten unless it is very small. */
    static String plain(double value) {
        return FigureText.plain(value);
    }

    /** The text with blanks for the decimals it has less than {@code most}, so that points line up. */
    static String aligned(String figure, int most) {
        int point = figure.indexOf('.');
        int after = point < 0 ? -1 : figure.length() - point - 1;
        return figure + " ".repeat(Math.max(0, most - after));
    }
}
