package evenblade.tell.chart;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The shapes that marks have, so that they can be separated without colour. */
enum Glyph {
    TRIANGLE {
        @Override
        Shape at(double x, double y, double radius) {
            return polygon(x, y + radius, x - radius, y - 0.8 * radius, x + radius, y - 0.8 * radius);
        }
    },
    SQUARE {
        @Override
        Shape at(double x, double y, double radius) {
            double half = 0.85 * radius;
            return new Rectangle2D.Double(x - half, y - half, 2 * half, 2 * half);
        }
    },
    DIAMOND {
        @Override
        Shape at(double x, double y, double radius) {
            double r = 1.2 * radius;
            return polygon(x, y - r, x + r, y, x, y + r, x - r, y);
        }
    },
    CROSS {
        @Override
        Shape at(double x, double y, double radius) {
            double r = radius;
            double t = 0.3 * radius;
            return polygon(
                    x - t, y - r, x + t, y - r, x + t, y - t, x + r, y - t, x + r, y + t, x + t, y + t, x + t, y + r,
                    x - t, y + r, x - t, y + t, x - r, y + t, x - r, y - t, x - t, y - t);
        }
    },
    CIRCLE {
        @Override
        Shape at(double x, double y, double radius) {
            return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
        }
    };

    /** The outline with its middle at that point. */
    abstract Shape at(double x, double y, double radius);

    private static Shape polygon(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        path.closePath();
        return path;
    }
}
