package evenblade.tell.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.font.FontRenderContext;
import java.awt.font.TextLayout;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/**
 * Draws text, lines and marks of one theme on a surface. Text is drawn as outlines, so that a
 * picture takes the same room on screen, in a bitmap and in a drawing opened on a machine with
 * other fonts.
 */
final class Pen {
    /** Where a text lies from its point. */
    enum Align {
        LEFT(0),
        MIDDLE(0.5),
        RIGHT(1);

        private final double share;

        Align(double share) {
            this.share = share;
        }
    }

    private static final FontRenderContext EVEN = new FontRenderContext(null, true, true);

    private final Graphics2D surface;
    private final ChartTheme theme;

    Pen(Graphics2D surface, ChartTheme theme) {
        this.surface = surface;
        this.theme = theme;
        surface.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        surface.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    Graphics2D surface() {
        return surface;
    }

    ChartTheme theme() {
        return theme;
    }

    /** So many text heights, in pixels. */
    double em(double count) {
        return count * theme.textPx();
    }

    Color colour(Ink ink) {
        return theme.palette().of(ink);
    }

    Color pale(Ink ink) {
        return theme.palette().pale(ink);
    }

    static double width(String text, TextStyle style, ChartTheme theme) {
        return text.isEmpty() ? 0 : new TextLayout(text, style.font(theme), EVEN).getAdvance();
    }

    double width(String text, TextStyle style) {
        return width(text, style, theme);
    }

    double lineHeight(TextStyle style) {
        return style.lineHeight(theme);
    }

    /** Writes a line whose left end, middle or right end is at x and whose base line is at y. */
    void text(String text, double x, double y, TextStyle style, Color colour, Align align) {
        if (text.isEmpty()) {
            return;
        }
        TextLayout layout = new TextLayout(text, style.font(theme), EVEN);
        double left = x - align.share * layout.getAdvance();
        fill(layout.getOutline(AffineTransform.getTranslateInstance(left, y)), colour);
    }

    /** Writes a line whose height is centred on y. */
    void textAcross(String text, double x, double y, TextStyle style, Color colour, Align align) {
        text(text, x, y + 0.36 * style.font(theme).getSize2D(), style, colour, align);
    }

    /** Writes upwards along a vertical line, centred on the point. */
    void textUp(String text, double x, double y, TextStyle style, Color colour) {
        AffineTransform saved = surface.getTransform();
        surface.rotate(-Math.PI / 2, x, y);
        textAcross(text, x, y, style, colour, Align.MIDDLE);
        surface.setTransform(saved);
    }

    void fill(Shape shape, Color colour) {
        surface.setColor(colour);
        surface.fill(shape);
    }

    void draw(Shape shape, Color colour, BasicStroke stroke) {
        surface.setColor(colour);
        surface.setStroke(stroke);
        surface.draw(shape);
    }

    void line(double x1, double y1, double x2, double y2, Color colour, BasicStroke stroke) {
        draw(new Line2D.Double(x1, y1, x2, y2), colour, stroke);
    }

    /** An unbroken stroke of so many text heights. */
    BasicStroke stroke(double emWidth) {
        return Dash.SOLID.stroke(em(emWidth), theme);
    }

    BasicStroke stroke(double emWidth, Dash dash) {
        return dash.stroke(em(emWidth), theme);
    }

    /** A mark: filled where the thing is there, open where it isn't. */
    void glyph(Glyph glyph, double x, double y, double emRadius, Color colour, boolean filled) {
        Shape shape = glyph.at(x, y, em(emRadius));
        fill(shape, filled ? colour : colour(Ink.PAPER));
        draw(shape, colour, stroke(0.1));
    }

    /** An error bar upright or lying, with its two end strokes. */
    void errorBar(double x1, double y1, double x2, double y2, Color colour) {
        BasicStroke stroke = stroke(0.11);
        double cap = em(0.28);
        boolean upright = x1 == x2;
        line(x1, y1, x2, y2, colour, stroke);
        double dx = upright ? cap : 0;
        double dy = upright ? 0 : cap;
        line(x1 - dx, y1 - dy, x1 + dx, y1 + dy, colour, stroke);
        line(x2 - dx, y2 - dy, x2 + dx, y2 + dy, colour, stroke);
    }

    /** Draws with everything outside the box cut off. */
    void within(Rectangle2D box, Runnable drawing) {
        Shape saved = surface.getClip();
        surface.clip(box);
        drawing.run();
        surface.setClip(saved);
    }
}
