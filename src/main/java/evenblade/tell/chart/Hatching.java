package evenblade.tell.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Fills of bars that can be separated without colour: plain, slanted lines, crossed lines. */
final class Hatching {
    private Hatching() {}

    static void fill(Pen pen, Rectangle2D box, Color colour, MarkKind kind) {
        if (box.getWidth() <= 0) {
            return;
        }
        switch (kind) {
            case PROPELLER -> pen.fill(box, colour);
            case CRANK -> slanted(pen, box, colour, true, false);
            case BOTH -> slanted(pen, box, colour, true, true);
            case OTHER, STEADY -> slanted(pen, box, colour, false, true);
        }
        pen.draw(box, colour, pen.stroke(0.1));
    }

    /** Slanted lines within an outline. */
    static void rising(Pen pen, Rectangle2D box, Color colour) {
        slanted(pen, box, colour, true, false);
        pen.draw(box, colour, pen.stroke(0.1));
    }

    private static void slanted(Pen pen, Rectangle2D box, Color colour, boolean rising, boolean falling) {
        Shape saved = pen.surface().getClip();
        pen.surface().clip(box);
        double h = box.getHeight();
        double step = pen.em(0.45);
        for (double x = box.getX() - h; x < box.getMaxX(); x += step) {
            if (rising) {
                pen.draw(new Line2D.Double(x, box.getMaxY(), x + h, box.getY()), colour, pen.stroke(0.14));
            }
            if (falling) {
                pen.draw(new Line2D.Double(x, box.getY(), x + h, box.getMaxY()), colour, pen.stroke(0.14));
            }
        }
        pen.surface().setClip(saved);
    }
}
