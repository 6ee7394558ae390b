package evenblade.tell.chart;

import java.awt.Color;
import java.awt.geom.Path2D;

/**
 * One thing that a picture's key explains.
 *
 * @param words what it is
 * @param sample draws it, centred on a point, not wider than {@link #SAMPLE_EM} text heights
 */
record KeyEntry(String words, Sample sample) {
    static final double SAMPLE_EM = 1.8; // by eye

    /** Draws a small example. */
    interface Sample {
        void draw(Pen pen, double x, double y);
    }

    static KeyEntry mark(MarkKind kind) {
        return new KeyEntry(kind.words(), (pen, x, y) -> {
            Color colour = pen.colour(kind.ink());
            double half = pen.em(0.45 * SAMPLE_EM);
            pen.line(x - half, y, x + half, y, colour, pen.stroke(0.1, kind.dash()));
            pen.glyph(kind.glyph(), x, y, 0.34, colour, true);
        });
    }

    static KeyEntry glyph(String words, Glyph glyph, Ink ink, boolean filled) {
        return new KeyEntry(words, (pen, x, y) -> pen.glyph(glyph, x, y, 0.34, pen.colour(ink), filled));
    }

    static KeyEntry line(String words, Ink ink, Dash dash) {
        return new KeyEntry(words, (pen, x, y) -> {
            double half = pen.em(0.45 * SAMPLE_EM);
            pen.line(x - half, y, x + half, y, pen.colour(ink), pen.stroke(0.15, dash));
        });
    }

    static KeyEntry interval() {
        return new KeyEntry(
                "95 % interval",
                (pen, x, y) -> {
                    double half = pen.em(0.4 * SAMPLE_EM);
                    pen.errorBar(x - half, y, x + half, y, pen.colour(Ink.TEXT));
                });
    }

    static KeyEntry below() {
        return new KeyEntry(
                "not detected: somewhere below this",
                (pen, x, y) -> BelowMark.paint(pen, x + pen.em(0.3), y, pen.colour(Ink.QUIET_TEXT)));
    }

    static KeyEntry note(String words) {
        return new KeyEntry(words, (pen, x, y) -> {});
    }

    /** The mark of a thing that isn't there: a stroke at the level it lies below, and an arrow head towards zero. */
    static final class BelowMark {
        private BelowMark() {}

        static void paint(Pen pen, double x, double y, Color colour) {
            double r = pen.em(0.32);
            pen.line(x, y - r, x, y + r, colour, pen.stroke(0.12));
            Path2D head = new Path2D.Double();
            head.moveTo(x - 2 * r, y);
            head.lineTo(x - 0.6 * r, y - 0.7 * r);
            head.lineTo(x - 0.6 * r, y + 0.7 * r);
            head.closePath();
            pen.draw(head, colour, pen.stroke(0.1));
        }
    }
}
