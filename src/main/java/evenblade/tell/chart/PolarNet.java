package evenblade.tell.chart;

import evenblade.tell.document.FigureFormat;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Rings and rays with arrows from their middle; 0° on the right, angles against the clock.
 *
 * @param pen draws
 * @param cx the middle
 * @param cy the middle
 * @param radius of the outer ring in pixels
 * @param full what the outer ring stands for
 */
record PolarNet(Pen pen, double cx, double cy, double radius, double full) {
    /** An arrow's tip. */
    record Tip(String name, double amplitude, double phaseDeg) {}

    /** A net that holds the largest amplitude; left of the middle, so that the names beside it have room. */
    static PolarNet in(Rectangle2D area, Pen pen, double largest) {
        double radius = area.getHeight() / 2 - pen.em(2);
        return new PolarNet(
                pen,
                Math.min(area.getCenterX(), area.getX() + radius + pen.em(4)),
                area.getCenterY(),
                radius,
                largest > 0 ? Axis.roundUp(largest) : 1);
    }

    double x(Tip tip) {
        return cx + radius * tip.amplitude() / full * cos(tip.phaseDeg());
    }

    double y(Tip tip) {
        return cy - radius * tip.amplitude() / full * sin(tip.phaseDeg());
    }

    void paint() {
        int rings = rings(full);
        for (int ring = 1; ring <= rings; ring++) {
            double r = radius * ring / rings;
            pen.draw(new Ellipse2D.Double(cx - r, cy - r, 2 * r, 2 * r), pen.colour(Ink.GRID), pen.stroke(0.07));
        }
        for (int deg = 0; deg < 360; deg += 30) {
            pen.line(cx, cy, cx + radius * cos(deg), cy - radius * sin(deg), pen.colour(Ink.GRID), pen.stroke(0.07));
        }
    }

    /** Written over arrows and leaders, each on a patch of paper. */
    void paintNumbers() {
        int rings = rings(full);
        for (int ring = 1; ring <= rings; ring++) {
            double r = radius * ring / rings;
            number(Axis.tick(full * ring / rings), cx + r * cos(105), cy - r * sin(105), Ink.QUIET_TEXT);
        }
        for (int deg = 0; deg < 360; deg += 30) {
            double out = radius + pen.em(1.1);
            number(deg + "°", cx + (out + pen.em(0.4)) * cos(deg), cy - out * sin(deg), Ink.TEXT);
        }
    }

    private void number(String text, double x, double y, Ink ink) {
        double width = pen.width(text, TextStyle.SMALL) + pen.em(0.3);
        pen.fill(new Rectangle2D.Double(x - width / 2, y - pen.em(0.45), width, pen.em(0.9)), pen.colour(Ink.PAPER));
        pen.textAcross(text, x, y, TextStyle.SMALL, pen.colour(ink), Pen.Align.MIDDLE);
    }

    /** As many rings as give them round numbers: 3 for 1.5, 3 and 6, 5 for 2.5 and 5, else 4. */
    private static int rings(double full) {
        double first = full / Math.pow(10, Math.floor(Math.log10(full) + 1e-9));
        if (Math.abs(first - 1.5) < 1e-6 || Math.abs(first - 3) < 1e-6 || Math.abs(first - 6) < 1e-6) {
            return 3;
        }
        return Math.abs(first - 2.5) < 1e-6 || Math.abs(first - 5) < 1e-6 ? 5 : 4;
    }

    /** A circle round a tip, its radius in the amplitude's unit. */
    void circle(Tip tip, double of, Dash dash) {
        double r = radius / full * of;
        pen.draw(
                new Ellipse2D.Double(x(tip) - r, y(tip) - r, 2 * r, 2 * r),
                pen.colour(Ink.QUIET_TEXT),
                pen.stroke(0.09, dash));
    }

    void arrow(Tip tip, Ink ink, Dash dash) {
        double x = x(tip);
        double y = y(tip);
        pen.line(cx, cy, x, y, pen.colour(ink), pen.stroke(0.16, dash));
        Path2D head = new Path2D.Double();
        double size = pen.em(0.8);
        head.moveTo(x, y);
        for (int side = -1; side <= 1; side += 2) {
            double angle = tip.phaseDeg() + 180 + side * 22;
            head.lineTo(x + size * cos(angle), y - size * sin(angle));
        }
        head.closePath();
        pen.fill(head, pen.colour(ink));
    }

    /** Names stand in a column on the right, joined to their tips. */
    void paintNames(List<Tip> tips, Rectangle2D area) {
        List<StackedLabels.Label> labels = new ArrayList<>();
        tips.forEach(tip -> labels.add(new StackedLabels.Label(y(tip), 0)));
        List<Optional<Double>> places = StackedLabels.layOut(
                labels, area.getY() + pen.em(1), area.getMaxY() - pen.em(1), pen.lineHeight(TextStyle.SMALL));
        for (int i = 0; i < tips.size(); i++) {
            Tip tip = tips.get(i);
            places.get(i).ifPresent(y -> paintName(tip, y));
        }
    }

    private void paintName(Tip tip, double y) {
        double column = cx + radius + pen.em(3.4);
        pen.line(x(tip), y(tip), column - pen.em(0.4), y, pen.pale(Ink.QUIET_TEXT), pen.stroke(0.06, Dash.DOTS));
        String text = tip.name() + ": " + FigureFormat.plain(tip.amplitude()) + " at "
                + FigureFormat.fixed(tip.phaseDeg(), 0) + "°";
        pen.textAcross(text, column, y, TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
    }

    private static double cos(double deg) {
        return Math.cos(Math.toRadians(deg));
    }

    private static double sin(double deg) {
        return Math.sin(Math.toRadians(deg));
    }
}
