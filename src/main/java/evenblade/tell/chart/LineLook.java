package evenblade.tell.chart;

import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.util.List;

/** How one line of several looks: colour, mark and dash all differ from line to line. */
enum LineLook {
    FIRST(Ink.PROPELLER, Glyph.CIRCLE, Dash.SOLID),
    SECOND(Ink.CRANK, Glyph.SQUARE, Dash.LONG),
    THIRD(Ink.BOTH, Glyph.DIAMOND, Dash.LONG_SHORT),
    FOURTH(Ink.OTHER, Glyph.TRIANGLE, Dash.DOTS);

    private final Ink ink;
    private final Glyph glyph;
    private final Dash dash;

    LineLook(Ink ink, Glyph glyph, Dash dash) {
        this.ink = ink;
        this.glyph = glyph;
        this.dash = dash;
    }

    /** The look of the n-th line, from 0; after four they begin again. */
    static LineLook of(int index) {
        return values()[index % values().length];
    }

    Ink ink() {
        return ink;
    }

    KeyEntry key(String words) {
        return new KeyEntry(words, (pen, x, y) -> {
            double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
            pen.line(x - half, y, x + half, y, pen.colour(ink), pen.stroke(0.13, dash));
            pen.glyph(glyph, x, y, 0.34, pen.colour(ink), true);
        });
    }

    /**
     * Draws a line through its points with their error bars.
     *
     * @param points across, in the plane's unit, with what stands there
     */
    void paint(Pen pen, Plane plane, List<PlacedEstimate> points) {
        Color colour = pen.colour(ink);
        Path2D path = new Path2D.Double();
        for (int i = 0; i < points.size(); i++) {
            double x = plane.x(points.get(i).x());
            double y = plane.yInside(points.get(i).estimate().value());
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        pen.draw(path, colour, pen.stroke(0.13, dash));
        points.forEach(p -> paintPoint(pen, plane, p));
    }

    void paintPoint(Pen pen, Plane plane, PlacedEstimate point) {
        double x = plane.x(point.x());
        PlottedEstimate estimate = point.estimate();
        pen.errorBar(
                x, plane.yInside(estimate.ciLow()), x, plane.yInside(estimate.ciHigh()), pen.colour(Ink.QUIET_TEXT));
        pen.glyph(glyph, x, plane.yInside(estimate.value()), 0.38, pen.colour(ink), estimate.there());
    }
}
