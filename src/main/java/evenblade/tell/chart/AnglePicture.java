package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.tell.document.FigureFormat;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The mean of one propeller revolution with its band of standard error, after a correction and, where given, before.
 *
 * @param caption what it was drawn from
 * @param blades the propeller's blades
 * @param fromMark whether 0° is the mark on the propeller; otherwise it is anywhere
 * @param unit of the channel
 * @param before the earlier run, where there is one to compare with
 * @param after the run, or the later one
 */
public record AnglePicture(
        Caption caption, int blades, boolean fromMark, SignalUnit unit, Optional<Revolution> before, Revolution after)
        implements Picture {
    /**
     * A mean revolution.
     *
     * @param name the run
     * @param mean at even angles from 0° on, over one whole revolution
     * @param standardError of each mean
     */
    public record Revolution(String name, Series mean, Series standardError) {
        public Revolution {
            if (mean.size() < 2 || mean.size() != standardError.size()) {
                throw new IllegalArgumentException("a revolution of " + mean.size() + " means and "
                        + standardError.size() + " errors can't be drawn");
            }
        }
    }

    @Override
    public String title() {
        return "One turn of the propeller";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        before().ifPresent(b -> entries.add(KeyEntry.line("before: " + b.name(), Ink.BEFORE, Dash.LONG)));
        String after = before().isPresent() ? "after: " : "";
        entries.add(KeyEntry.line(after + after().name(), Ink.AFTER, Dash.SOLID));
        entries.add(new KeyEntry("± one standard error", (pen, x, y) -> {
            double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
            pen.fill(new Rectangle2D.Double(x - half, y - pen.em(0.3), 2 * half, pen.em(0.6)), pen.pale(Ink.AFTER));
        }));
        entries.add(KeyEntry.line("a blade further on", Ink.QUIET_TEXT, Dash.DOTS));
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double reach =
                Math.max(reach(after()), before().map(AnglePicture::reach).orElse(0.0));
        double end = reach > 0 ? Axis.roundUp(reach) : 1;
        String from = fromMark() ? "angle after the mark (°)" : "angle, from an arbitrary start (°)";
        AxesFrame frame = new AxesFrame(
                Axis.linear(from, 0, 360), Axis.linear(AmplitudeScale.momentTitle(unit()), -end, end), pen.theme());
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - pen.em(1.2), area.getHeight()));
        before().ifPresent(b -> paintBand(pen, plane, b, pen.pale(Ink.BEFORE)));
        paintBand(pen, plane, after(), pen.pale(Ink.AFTER));
        frame.paint(pen.surface());
        for (int blade = 1; blade < blades(); blade++) {
            double x = plane.x(360.0 * blade / blades());
            pen.line(
                    x,
                    plane.box().getY(),
                    x,
                    plane.box().getMaxY(),
                    pen.colour(Ink.QUIET_TEXT),
                    pen.stroke(0.08, Dash.DOTS));
        }
        pen.line(
                plane.box().getX(),
                plane.y(0),
                plane.box().getMaxX(),
                plane.y(0),
                pen.colour(Ink.QUIET_TEXT),
                pen.stroke(0.06));
        before().ifPresent(b -> paintMean(pen, plane, b, Ink.BEFORE, Dash.LONG));
        paintMean(pen, plane, after(), Ink.AFTER, Dash.SOLID);
        return LaidOut.of(plane, (xPx, yPx) -> Optional.of(spot(plane.valueAtX(xPx))));
    }

    private Spot spot(double degrees) {
        int point = point(after(), degrees);
        List<Spot.Reading> readings = new ArrayList<>();
        readings.add(
                Spot.Reading.of(Spot.What.ANGLE, 360.0 * point / after().mean().size()));
        readings.add(reading(after(), point, ""));
        before().ifPresent(b -> readings.add(reading(b, point(b, degrees), b.name())));
        return new Spot(0, readings.get(0).value(), after().mean().at(point), "", readings);
    }

    private static int point(Revolution turn, double degrees) {
        int size = turn.mean().size();
        return Math.floorMod(Math.round(degrees / 360 * size), size);
    }

    private Spot.Reading reading(Revolution turn, int point, String of) {
        double half = FigureFormat.NINETY_FIVE * turn.standardError().at(point);
        return new Spot.Reading(Spot.What.AMPLITUDE, turn.mean().at(point), half, unit().display(), of);
    }

    private static double reach(Revolution revolution) {
        double reach = 0;
        for (int i = 0; i < revolution.mean().size(); i++) {
            reach = Math.max(
                    reach,
                    Math.abs(revolution.mean().at(i))
                            + revolution.standardError().at(i));
        }
        return reach;
    }

    private static void paintBand(Pen pen, Plane plane, Revolution revolution, Color colour) {
        int size = revolution.mean().size();
        Path2D band = new Path2D.Double();
        for (int i = 0; i <= size; i++) {
            double upper =
                    revolution.mean().at(i % size) + revolution.standardError().at(i % size);
            double x = plane.x(360.0 * i / size);
            if (i == 0) {
                band.moveTo(x, plane.y(upper));
            } else {
                band.lineTo(x, plane.y(upper));
            }
        }
        for (int i = size; i >= 0; i--) {
            double lower =
                    revolution.mean().at(i % size) - revolution.standardError().at(i % size);
            band.lineTo(plane.x(360.0 * i / size), plane.y(lower));
        }
        band.closePath();
        pen.fill(band, colour);
    }

    private static void paintMean(Pen pen, Plane plane, Revolution revolution, Ink ink, Dash dash) {
        int size = revolution.mean().size();
        Path2D path = new Path2D.Double();
        path.moveTo(plane.x(0), plane.y(revolution.mean().at(0)));
        for (int i = 1; i <= size; i++) {
            path.lineTo(plane.x(360.0 * i / size), plane.y(revolution.mean().at(i % size)));
        }
        pen.draw(path, pen.colour(ink), pen.stroke(0.14, dash));
    }
}
