package evenblade.tell.chart;

import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/**
 * The hub seen from behind the propeller: direction of rotation, hub positions, places for weights, and where each weight
 * goes. Angles of the data are counted against the rotation from hub position 1, which is drawn at the top.
 *
 * @param caption what it was drawn from
 * @param clockwise sense of rotation seen from behind
 * @param rotationKnown whether that was entered
 * @param countedWithRotation whether the user counts angles with the rotation; the numbers round the hub do as well
 * @param positions hub positions with their blades
 * @param places where weights may go
 * @param weights that are on, and that are to be put on
 */
public record HubWeightsPicture(
        Caption caption,
        boolean clockwise,
        boolean rotationKnown,
        boolean countedWithRotation,
        List<Spot> positions,
        List<Spot> places,
        List<Weight> weights)
        implements Picture {
    /** Something at an angle on the hub. */
    public record Spot(String name, double againstRotationDeg) {}

    /**
     * A weight.
     *
     * @param words mass, and the place where there is one
     * @param againstRotationDeg its angle
     * @param onNow whether it is on the hub now; else it is to be put on
     */
    public record Weight(String words, double againstRotationDeg, boolean onNow) {}

    private static final double HUB = 0.42; // shares of the picture's radius, by eye
    private static final double PLACES = 0.60; // by eye
    private static final double BLADES = 0.92; // by eye

    public HubWeightsPicture {
        positions = List.copyOf(positions);
        places = List.copyOf(places);
        weights = List.copyOf(weights);
    }

    @Override
    public String title() {
        return "Where the weights go, seen from behind the propeller";
    }

    @Override
    public List<KeyEntry> key() {
        boolean instead = weights().stream().anyMatch(Weight::onNow);
        String putOn = instead ? "put on, in place of all that is on now" : "put on";
        List<KeyEntry> entries = new ArrayList<>();
        if (!weights().isEmpty()) {
            entries.add(KeyEntry.glyph(putOn, Glyph.DIAMOND, Ink.LIMIT, true));
            entries.add(KeyEntry.glyph("on the hub now", Glyph.SQUARE, Ink.TEXT, false));
        }
        if (!places().isEmpty()) {
            entries.add(KeyEntry.glyph("place for a weight", Glyph.CIRCLE, Ink.QUIET_TEXT, false));
        }
        entries.add(KeyEntry.note((rotationKnown() ? "the arrow" : "rotation wasn't entered: the arrow, clockwise,")
                + " is the direction of rotation; angles count from hub position 1, "
                + (countedWithRotation() ? "with" : "against") + " it"));
        entries.add(KeyEntry.note("the mark may be anywhere on the propeller, as long as it stays there"));
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double radius = area.getHeight() / 2 - pen.em(1.6);
        double cx = Math.min(area.getCenterX(), area.getX() + radius + pen.em(6));
        double cy = area.getCenterY();
        for (Spot position : positions()) {
            paintBlade(pen, cx, cy, radius, position);
        }
        double hub = HUB * radius;
        pen.fill(new Ellipse2D.Double(cx - hub, cy - hub, 2 * hub, 2 * hub), pen.colour(Ink.PAPER));
        pen.draw(new Ellipse2D.Double(cx - hub, cy - hub, 2 * hub, 2 * hub), pen.colour(Ink.TEXT), pen.stroke(0.12));
        paintRotation(pen, cx, cy, 0.26 * radius);
        for (int deg = 0; deg < 360; deg += 30) {
            double against = countedWithRotation() ? -deg : deg;
            text(pen, deg + "°", cx, cy, radius, against, 1.0, Ink.QUIET_TEXT);
        }
        for (Spot place : places()) {
            pen.glyph(
                    Glyph.CIRCLE,
                    x(cx, PLACES * radius, place.againstRotationDeg()),
                    y(cy, PLACES * radius, place.againstRotationDeg()),
                    0.7,
                    pen.colour(Ink.QUIET_TEXT),
                    false);
            text(pen, place.name(), cx, cy, radius, place.againstRotationDeg(), 0.5, Ink.QUIET_TEXT);
        }
        paintWeights(pen, area, cx, cy, radius);
        return LaidOut.NONE;
    }

    private void paintBlade(Pen pen, double cx, double cy, double radius, Spot position) {
        double deg = position.againstRotationDeg();
        pen.line(
                x(cx, 0.3 * radius, deg),
                y(cy, 0.3 * radius, deg),
                x(cx, BLADES * radius, deg),
                y(cy, BLADES * radius, deg),
                pen.pale(Ink.PROPELLER),
                pen.stroke(1.6));
        text(pen, position.name(), cx, cy, radius, deg, 0.8, Ink.TEXT);
    }

    private void paintWeights(Pen pen, Rectangle2D area, double cx, double cy, double radius) {
        double column = cx + radius + pen.em(3);
        double row = area.getY() + pen.em(2);
        for (Weight weight : weights()) {
            double x = x(cx, PLACES * radius, weight.againstRotationDeg());
            double y = y(cy, PLACES * radius, weight.againstRotationDeg());
            var colour = pen.colour(weight.onNow() ? Ink.TEXT : Ink.LIMIT);
            pen.glyph(weight.onNow() ? Glyph.SQUARE : Glyph.DIAMOND, x, y, 0.55, colour, !weight.onNow());
            pen.line(x, y, column - pen.em(0.4), row, pen.pale(Ink.QUIET_TEXT), pen.stroke(0.06, Dash.DOTS));
            pen.textAcross(
                    (weight.onNow() ? "on now: " : "put on: ") + weight.words(),
                    column,
                    row,
                    TextStyle.SMALL,
                    colour,
                    Pen.Align.LEFT);
            row += pen.lineHeight(TextStyle.SMALL) + pen.em(0.3);
        }
    }

    /** Three quarters of a turn with a head, in the direction of rotation. */
    private void paintRotation(Pen pen, double cx, double cy, double r) {
        double sense = clockwise() ? -1 : 1;
        double end = 90 + sense * 270;
        pen.draw(
                new Arc2D.Double(cx - r, cy - r, 2 * r, 2 * r, 90, sense * 270, Arc2D.OPEN),
                pen.colour(Ink.TEXT),
                pen.stroke(0.15));
        double x = cx + r * Math.cos(Math.toRadians(end));
        double y = cy - r * Math.sin(Math.toRadians(end));
        double ahead = end + sense * 90;
        Path2D head = new Path2D.Double();
        double size = pen.em(0.9);
        head.moveTo(x + size * Math.cos(Math.toRadians(ahead)), y - size * Math.sin(Math.toRadians(ahead)));
        head.lineTo(x + 0.5 * size * Math.cos(Math.toRadians(end)), y - 0.5 * size * Math.sin(Math.toRadians(end)));
        head.lineTo(x - 0.5 * size * Math.cos(Math.toRadians(end)), y + 0.5 * size * Math.sin(Math.toRadians(end)));
        head.closePath();
        pen.fill(head, pen.colour(Ink.TEXT));
    }

    private void text(Pen pen, String words, double cx, double cy, double radius, double deg, double share, Ink ink) {
        pen.textAcross(
                words,
                x(cx, share * radius, deg),
                y(cy, share * radius, deg),
                TextStyle.SMALL,
                pen.colour(ink),
                Pen.Align.MIDDLE);
    }

    /** Seen from behind, a clockwise propeller has angles against its rotation running against the clock. */
    private double screenRad(double againstRotationDeg) {
        return Math.toRadians(90 + (clockwise() ? againstRotationDeg : -againstRotationDeg));
    }

    private double x(double cx, double r, double againstRotationDeg) {
        return cx + r * Math.cos(screenRad(againstRotationDeg));
    }

    private double y(double cy, double r, double againstRotationDeg) {
        return cy - r * Math.sin(screenRad(againstRotationDeg));
    }
}
