package evenblade.tell.chart;

import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Where everything of a picture lies once it is drawn, for whoever points at it; in pixels of the drawing. */
public final class LaidOut {
    /** For pictures in which nothing is to be pointed at. */
    static final LaidOut NONE = new LaidOut(List.of());

    /** Finds what lies at, or near, a place in a plot. */
    interface Finder {
        Optional<Spot> near(double xPx, double yPx);
    }

    /**
     * One plot.
     *
     * @param plane where values lie in it
     * @param finder what there is to point at
     */
    record Part(Plane plane, Finder finder) {}

    private final List<Part> parts;

    private LaidOut(List<Part> parts) {
        this.parts = List.copyOf(parts);
    }

    static LaidOut of(Plane plane, Finder finder) {
        return new LaidOut(List.of(new Part(plane, finder)));
    }

    static LaidOut of(List<Part> parts) {
        return new LaidOut(parts);
    }

    /** A plot of which only given places can be pointed at: the nearest of them is found. */
    static Part fixed(Plane plane, List<Spot> spots) {
        return new Part(plane, (x, y) -> spots.stream()
                .min(Comparator.comparingDouble(s -> Math.hypot(plane.xInside(s.x()) - x, plane.yInside(s.y()) - y))));
    }

    /** What lies at a place or next to it; empty outside the plots. */
    public Optional<Spot> at(double xPx, double yPx) {
        return parts.stream()
                .filter(part -> part.plane().box().contains(xPx, yPx))
                .findFirst()
                .flatMap(part -> part.finder().near(xPx, yPx));
    }

    /** Where a spot lies; empty where it isn't in what is shown. */
    public Optional<Point2D> place(Spot spot) {
        if (spot.part() >= parts.size()) {
            return Optional.empty();
        }
        Plane plane = parts.get(spot.part()).plane();
        double x = plane.x(spot.x());
        boolean shown = x >= plane.box().getMinX() - 1 && x <= plane.box().getMaxX() + 1;
        return shown ? Optional.of(new Point2D.Double(x, plane.yInside(spot.y()))) : Optional.empty();
    }

    /** The first plot; empty where there is none. */
    public Optional<Rectangle2D> plot() {
        return parts.stream().findFirst().map(part -> part.plane().box());
    }

    /**
     * Draws cursors, numbered from 1.
     *
     * @param spots in order
     */
    void paint(Pen pen, List<Spot> spots) {
        for (int i = 0; i < spots.size(); i++) {
            Spot spot = spots.get(i);
            String number = String.valueOf(i + 1);
            Dash dash = i == 0 ? Dash.SOLID : Dash.LONG;
            place(spot).ifPresent(at -> {
                Rectangle2D box = parts.get(spot.part()).plane().box();
                double x = at.getX();
                pen.line(x, box.getMinY(), x, box.getMaxY(), pen.colour(Ink.LIMIT), pen.stroke(0.1, dash));
                pen.draw(Glyph.CIRCLE.at(x, at.getY(), pen.em(0.45)), pen.colour(Ink.LIMIT), pen.stroke(0.15));
                double side = x + pen.em(1.4) > box.getMaxX() ? -1 : 1;
                double y = box.getMinY() + pen.em(0.7);
                pen.fill(
                        new Rectangle2D.Double(
                                x + side * pen.em(0.75) - pen.em(0.45), y - pen.em(0.6), pen.em(0.9), pen.em(1.2)),
                        pen.colour(Ink.PAPER));
                pen.textAcross(
                        number, x + side * pen.em(0.75), y, TextStyle.STRONG, pen.colour(Ink.LIMIT), Pen.Align.MIDDLE);
            });
        }
    }

    /** Draws cursors over a picture that is on a surface already. */
    public void paint(java.awt.Graphics2D surface, ChartTheme theme, List<Spot> spots) {
        paint(new Pen(surface, theme), spots);
    }

    /** What is said of cursors: one line for each, and one for the difference of two. */
    public static List<String> words(List<Spot> spots) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < spots.size(); i++) {
            lines.add((i + 1) + ": " + String.join("  ·  ", spots.get(i).words()));
        }
        if (spots.size() == 2) {
            lines.add("1 to 2: " + String.join("  ·  ", spots.get(0).differenceTo(spots.get(1))));
        }
        return lines;
    }
}
