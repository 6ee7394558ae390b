package evenblade.tell.chart;

import java.awt.Font;

/** The few kinds of text in a picture. */
enum TextStyle {
    TITLE(1.3, Font.BOLD),
    BODY(1.0, Font.PLAIN),
    STRONG(1.0, Font.BOLD),
    SMALL(0.9, Font.PLAIN);

    private final double size;
    private final int face;

    TextStyle(double size, int face) {
        this.size = size;
        this.face = face;
    }

    Font font(ChartTheme theme) {
        return new Font(Font.SANS_SERIF, face, 1).deriveFont((float) (size * theme.textPx()));
    }

    /** Distance from one base line to the next, in pixels. */
    double lineHeight(ChartTheme theme) {
        return 1.25 * size * theme.textPx();
    }
}
