package evenblade.tell.chart;

import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Once-per-turn shaking against track over the runs of a job, with the fitted tie where there is one.
 *
 * @param caption what it was drawn from
 * @param trackTitle of the size of the track vector, with its unit
 * @param axisTitle of the amplitude, with its unit
 * @param runs in order of time, at least one
 * @param fit where there were enough runs for one
 */
public record TrackTiePicture(Caption caption, String trackTitle, String axisTitle, List<Run> runs, Optional<Fit> fit)
        implements Picture {
    /**
     * One run.
     *
     * @param name short
     * @param track size of the track vector in its axis's unit
     * @param amplitude of propeller 1× in the axis's unit
     */
    public record Run(String name, double track, PlottedEstimate amplitude) {}

    /**
     * The fitted tie at rising track, from 0 on.
     *
     * @param middle the fit
     * @param low lower end of its 95 % interval
     * @param high upper end
     */
    public record Fit(Curve middle, Curve low, Curve high) {}

    /** How far the axis reaches beyond the farthest run. */
    private static final double ROOM_FOR_NAMES = 1.3;

    public TrackTiePicture {
        runs = List.copyOf(runs);
        if (runs.isEmpty()) {
            throw new IllegalArgumentException("no runs to draw");
        }
    }

    @Override
    public String title() {
        return "Propeller 1× against track";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(KeyEntry.glyph("run", Glyph.CIRCLE, Ink.PROPELLER, true));
        entries.add(KeyEntry.interval());
        if (fit().isPresent()) {
            entries.add(KeyEntry.line("fit, with its 95 % band", Ink.CRANK, Dash.LONG));
        } else {
            entries.add(KeyEntry.note("too few runs for a fit"));
        }
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double farthest = runs().stream().mapToDouble(Run::track).max().orElseThrow();
        double largest = Math.max(
                runs().stream().mapToDouble(r -> r.amplitude().ciHigh()).max().orElseThrow(),
                fit().map(f -> f.high().largest()).orElse(0.0));
        AxesFrame frame = new AxesFrame(
                Axis.fromZero(trackTitle(), ROOM_FOR_NAMES * farthest),
                Axis.fromZero(axisTitle(), largest),
                pen.theme());
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - pen.em(0.8), area.getHeight()));
        pen.within(plane.box(), () -> fit().ifPresent(f -> paintBand(pen, plane, f)));
        frame.paint(pen.surface());
        pen.within(plane.box(), () -> fit().ifPresent(
                        f -> pen.draw(path(plane, f.middle()), pen.colour(Ink.CRANK), pen.stroke(0.14, Dash.LONG))));
        for (Run run : runs()) {
            LineLook.FIRST.paintPoint(pen, plane, new PlacedEstimate(run.track(), run.amplitude()));
        }
        paintNames(pen, plane);
        return LaidOut.NONE;
    }

    /** Each name right of its run; one that would lie on another moves up or down. */
    private void paintNames(Pen pen, Plane plane) {
        List<StackedLabels.Label> labels = runs().stream()
                .map(r -> new StackedLabels.Label(plane.yInside(r.amplitude().value()), 0))
                .toList();
        List<Optional<Double>> places = StackedLabels.layOut(
                labels, plane.box().getY(), plane.box().getMaxY(), pen.lineHeight(TextStyle.SMALL));
        for (int i = 0; i < runs().size(); i++) {
            Run run = runs().get(i);
            double x = plane.x(run.track());
            double width = pen.em(1) + pen.width(run.name(), TextStyle.SMALL);
            boolean left = x + width > plane.box().getMaxX();
            places.get(i)
                    .ifPresent(y -> pen.textAcross(
                            run.name(),
                            left ? x - pen.em(0.8) : x + pen.em(0.8),
                            y,
                            TextStyle.SMALL,
                            pen.colour(Ink.TEXT),
                            left ? Pen.Align.RIGHT : Pen.Align.LEFT));
        }
    }

    private static void paintBand(Pen pen, Plane plane, Fit fit) {
        Path2D band = path(plane, fit.high());
        for (int i = fit.low().x().size() - 1; i >= 0; i--) {
            band.lineTo(plane.x(fit.low().x().at(i)), plane.y(fit.low().y().at(i)));
        }
        band.closePath();
        pen.fill(band, pen.colour(Ink.SHADE));
    }

    private static Path2D path(Plane plane, Curve curve) {
        Path2D path = new Path2D.Double();
        path.moveTo(plane.x(curve.x().at(0)), plane.y(curve.y().at(0)));
        for (int i = 1; i < curve.x().size(); i++) {
            path.lineTo(plane.x(curve.x().at(i)), plane.y(curve.y().at(i)));
        }
        return path;
    }
}
