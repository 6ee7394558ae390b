package evenblade.tell.chart;

import java.awt.Color;
import java.awt.geom.Path2D;

/** The mark of a thing that isn't there: a stroke at the level it lies below, and an arrow head towards zero. */
final class BelowMark {
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
