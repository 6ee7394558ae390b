package evenblade.tell.chart;

import evenblade.tell.document.FigureFormat;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The 1× of each run as a vector: how strong, and at which angle after the mark. */
public final class PolarPicture extends Picture {
    /**
     * One run.
     *
     * @param name short
     * @param amplitude peak value
     * @param phaseDeg angle after the mark
     * @param radius of the 95 % circle round the tip, in the amplitude's unit
     */
    public record Vector(String name, double amplitude, double phaseDeg, double radius) {}

    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param unit written at the rings
     * @param vectors in order of time, at least one
     */
    public record Data(Caption caption, String unit, List<Vector> vectors) {
        public Data {
            vectors = List.copyOf(vectors);
            if (vectors.isEmpty()) {
                throw new IllegalArgumentException("no vectors to draw");
            }
        }
    }

    private final Data data;

    public PolarPicture(Data data) {
        this.data = data;
    }

    @Override
    public String title() {
        return "Propeller 1× as a vector";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    List<KeyEntry> key() {
        return List.of(
                KeyEntry.line("run", Ink.PROPELLER, Dash.SOLID),
                KeyEntry.line("last run", Ink.CRANK, Dash.LONG),
                KeyEntry.glyph("95 % circle", Glyph.CIRCLE, Ink.QUIET_TEXT, false),
                KeyEntry.note("0° is the mark; angles run against the clock; rings in " + data.unit()));
    }

    @Override
    void paintBody(Pen pen, Rectangle2D area) {
        double largest = data.vectors().stream()
                .mapToDouble(v -> v.amplitude() + v.radius())
                .max()
                .orElseThrow();
        double full = largest > 0 ? Axis.roundUp(largest) : 1;
        double radius = area.getHeight() / 2 - pen.em(2);
        // Left of the middle, so that the names beside it have room.
        double cx = Math.min(area.getCenterX(), area.getX() + radius + pen.em(4));
        double cy = area.getCenterY();
        paintNet(pen, cx, cy, radius, full);
        List<StackedLabels.Label> labels = new ArrayList<>();
        for (Vector vector : data.vectors()) {
            labels.add(new StackedLabels.Label(cy - radius * vector.amplitude() / full * sin(vector.phaseDeg()), 0));
        }
        List<Optional<Double>> places = StackedLabels.layOut(
                labels, area.getY() + pen.em(1), area.getMaxY() - pen.em(1), pen.lineHeight(TextStyle.SMALL));
        for (int i = 0; i < data.vectors().size(); i++) {
            boolean last = i == data.vectors().size() - 1 && i > 0;
            paintVector(pen, cx, cy, radius / full, data.vectors().get(i), last);
            int at = i;
            places.get(i)
                    .ifPresent(y ->
                            paintName(pen, cx, cy, radius, full, data.vectors().get(at), y));
        }
        paintNumbers(pen, cx, cy, radius, full);
    }

    private static void paintNet(Pen pen, double cx, double cy, double radius, double full) {
        int rings = rings(full);
        for (int ring = 1; ring <= rings; ring++) {
            double r = radius * ring / rings;
            pen.draw(new Ellipse2D.Double(cx - r, cy - r, 2 * r, 2 * r), pen.colour(Ink.GRID), pen.stroke(0.07));
        }
        for (int deg = 0; deg < 360; deg += 30) {
            pen.line(cx, cy, cx + radius * cos(deg), cy - radius * sin(deg), pen.colour(Ink.GRID), pen.stroke(0.07));
        }
    }

    /** Written over vectors and leaders, each on a patch of paper. */
    private static void paintNumbers(Pen pen, double cx, double cy, double radius, double full) {
        int rings = rings(full);
        for (int ring = 1; ring <= rings; ring++) {
            double r = radius * ring / rings;
            number(pen, Axis.tick(full * ring / rings), cx + r * cos(105), cy - r * sin(105), Ink.QUIET_TEXT);
        }
        for (int deg = 0; deg < 360; deg += 30) {
            double out = radius + pen.em(1.1);
            number(pen, deg + "°", cx + (out + pen.em(0.4)) * cos(deg), cy - out * sin(deg), Ink.TEXT);
        }
    }

    private static void number(Pen pen, String text, double x, double y, Ink ink) {
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

    private static void paintVector(Pen pen, double cx, double cy, double scale, Vector vector, boolean last) {
        double x = cx + scale * vector.amplitude() * cos(vector.phaseDeg());
        double y = cy - scale * vector.amplitude() * sin(vector.phaseDeg());
        var colour = pen.colour(last ? Ink.CRANK : Ink.PROPELLER);
        double r = scale * vector.radius();
        pen.draw(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r), pen.colour(Ink.QUIET_TEXT), pen.stroke(0.09));
        pen.line(cx, cy, x, y, colour, pen.stroke(0.16, last ? Dash.LONG : Dash.SOLID));
        Path2D head = new Path2D.Double();
        double size = pen.em(0.8);
        head.moveTo(x, y);
        for (int side = -1; side <= 1; side += 2) {
            double angle = vector.phaseDeg() + 180 + side * 22;
            head.lineTo(x + size * cos(angle), y - size * sin(angle));
        }
        head.closePath();
        pen.fill(head, colour);
    }

    /** Names stand in a column on the right, joined to their tips. */
    private static void paintName(Pen pen, double cx, double cy, double radius, double full, Vector vector, double y) {
        double tipX = cx + radius * vector.amplitude() / full * cos(vector.phaseDeg());
        double tipY = cy - radius * vector.amplitude() / full * sin(vector.phaseDeg());
        double column = cx + radius + pen.em(3.4);
        pen.line(tipX, tipY, column - pen.em(0.4), y, pen.pale(Ink.QUIET_TEXT), pen.stroke(0.06, Dash.DOTS));
        String text = String.format(
                Locale.ROOT,
                "%s: %s at %.0f°",
                vector.name(),
                FigureFormat.plain(vector.amplitude()),
                vector.phaseDeg());
        pen.textAcross(text, column, y, TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
    }

    private static double cos(double deg) {
        return Math.cos(Math.toRadians(deg));
    }

    private static double sin(double deg) {
        return Math.sin(Math.toRadians(deg));
    }
}
