package evenblade.tell.chart;

import java.awt.geom.Rectangle2D;

/**
 * Where values lie on the drawing surface.
 *
 * @param xAxis across
 * @param yAxis upwards
 * @param box the plotting area in pixels
 */
record Plane(Axis xAxis, Axis yAxis, Rectangle2D box) {
    double x(double value) {
        return box.getX() + xAxis.share(value) * box.getWidth();
    }

    double y(double value) {
        return box.getMaxY() - yAxis.share(value) * box.getHeight();
    }

    /** The value that lies at a pixel of the lying axis, which is linear. */
    double valueAtX(double px) {
        return xAxis.min() + (px - box.getX()) / box.getWidth() * (xAxis.max() - xAxis.min());
    }

    /** The value that lies at a pixel of the upright axis, where that is linear. */
    double valueAtY(double px) {
        return yAxis.min() + (box.getMaxY() - px) / box.getHeight() * (yAxis.max() - yAxis.min());
    }

    /** As {@link #x} but never outside the box. */
    double xInside(double value) {
        return Math.min(box.getMaxX(), Math.max(box.getX(), x(value)));
    }

    /** As {@link #y} but never outside the box. */
    double yInside(double value) {
        return Math.min(box.getMaxY(), Math.max(box.getY(), y(value)));
    }
}
