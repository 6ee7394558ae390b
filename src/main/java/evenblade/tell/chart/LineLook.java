package evenblade.tell.chart;

import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.util.List;

/** How one of several lines of the propeller looks: all in its colour, told apart by mark and dash. */
enum LineLook {
    FIRST(Glyph.CIRCLE, Dash.SOLID),
    SECOND(Glyph.SQUARE, Dash.LONG),
    THIRD(Glyph.DIAMOND, Dash.LONG_SHORT),
    FOURTH(Glyph.TRIANGLE, Dash.DOTS);

    static final Ink INK = Ink.PROPELLER;

    private final Glyph glyph;
    private final Dash dash;

    LineLook(Glyph glyph, Dash dash) {
        this.glyph = glyph;
        this.dash = dash;
    }

    /** The look of the n-th line, from 0; after four they begin again. */
    static LineLook of(int index) {
        return values()[index % values().length];
    }

    KeyEntry key(String words) {
        return new KeyEntry(words, (pen, x, y) -> {
            double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
            pen.line(x - half, y, x + half, y, pen.colour(INK), pen.stroke(0.13, dash));
            pen.glyph(glyph, x, y, 0.34, pen.colour(INK), true);
        });
    }

    /**
     * Draws a line through its points with their error bars.
     *
     * @param points across, in the plane's unit, with what stands there
     */
    void paint(Pen pen, Plane plane, List<PlacedEstimate> points) {
        Color colour = pen.colour(INK);
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
        double low = plane.yInside(estimate.ciLow());
        if (estimate.ciHigh() > plane.yAxis().max()) {
            BarRoom.paint(pen, x, low, plane.box().getY());
        } else {
            pen.errorBar(x, low, x, plane.yInside(estimate.ciHigh()), pen.colour(Ink.QUIET_TEXT));
        }
        pen.glyph(glyph, x, plane.yInside(estimate.value()), 0.38, pen.colour(INK), estimate.there());
    }
}
