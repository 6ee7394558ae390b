package evenblade.tell.chart;

import evenblade.input.recording.Series;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import evenblade.tell.document.FigureFormat;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Engine speed (left) and propeller speed (right) against time, with the dwells shaded and named. */
public final class SpeedPicture implements Picture {
    private static final int MOST_ROWS = 3; // more hide the curve
    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param timeS rising, seconds into the recording
     * @param propellerHz speed at each of these times
     * @param ratio engine revolutions per propeller revolution
     * @param dwells to shade, in order of time; may be empty
     */
    public record Data(Caption caption, Series timeS, Series propellerHz, double ratio, List<Dwell> dwells) {
        public Data {
            dwells = List.copyOf(dwells);
            if (timeS.size() != propellerHz.size() || timeS.size() < 2) {
                throw new IllegalArgumentException("a speed curve of " + timeS.size() + " times and "
                        + propellerHz.size() + " speeds can't be drawn; at least two of each are needed");
            }
        }

        /** Reads a track at so many even steps, 2 or more. */
        public static Data of(Caption caption, SpeedTrack track, double ratio, List<Dwell> dwells, int steps) {
            double[] time = new double[steps];
            double[] speed = new double[steps];
            for (int i = 0; i < steps; i++) {
                time[i] = track.fromS() + i * (track.toS() - track.fromS()) / (steps - 1);
                speed[i] = track.propellerHzAt(time[i]);
            }
            return new Data(caption, Series.of(time), Series.of(speed), ratio, dwells);
        }
    }

    private final Data data;
    private final Zoom zoom;

    public SpeedPicture(Data data) {
        this(data, whole(data));
    }

    private SpeedPicture(Data data, Zoom zoom) {
        this.data = data;
        this.zoom = zoom;
    }

    private static Zoom whole(Data data) {
        return Zoom.across(data.timeS().at(0), data.timeS().at(data.timeS().size() - 1));
    }

    @Override
    public Optional<Zoom> zoom() {
        return Optional.of(zoom);
    }

    @Override
    public Optional<Zoom> whole() {
        return Optional.of(whole(data));
    }

    @Override
    public Picture zoomedTo(Zoom other) {
        return new SpeedPicture(data, other);
    }

    private Spot spot(double timeS) {
        double hz = data.propellerHz().at(new Curve(data.timeS(), data.propellerHz()).nearest(timeS));
        double propellerRpm = 60 * hz;
        double engineRpm = data.ratio() * propellerRpm;
        String dwell = "";
        for (int i = 0; i < data.dwells().size(); i++) {
            Dwell each = data.dwells().get(i);
            dwell = timeS >= each.fromS() && timeS <= each.toS() ? "dwell " + (i + 1) : dwell;
        }
        return new Spot(
                0,
                timeS,
                engineRpm,
                dwell,
                List.of(
                        Spot.Reading.of(Spot.What.TIME, timeS),
                        Spot.Reading.of(Spot.What.ENGINE_RPM, engineRpm),
                        Spot.Reading.of(Spot.What.PROPELLER_RPM, propellerRpm)));
    }

    @Override
    public String title() {
        return "Speed over the run";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(KeyEntry.line("speed", Ink.AFTER, Dash.SOLID));
        if (data.dwells().isEmpty()) {
            entries.add(KeyEntry.note("no dwell found"));
        } else {
            entries.add(new KeyEntry("dwell, with its mean", (pen, x, y) -> {
                double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
                pen.fill(
                        new Rectangle2D.Double(x - half, y - pen.em(0.4), 2 * half, pen.em(0.8)),
                        pen.colour(Ink.SHADE));
                pen.line(x - half, y, x + half, y, pen.colour(Ink.CRANK), pen.stroke(0.12, Dash.LONG));
            }));
        }
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double toRpm = 60 * data.ratio();
        Axis x = Axis.linear("time (s)", zoom.across().from(), zoom.across().to());
        double[][] curve = Thinning.between(
                data.timeS(), data.propellerHz(), x.min(), x.max(), (int) Math.max(100, area.getWidth()));
        double[] engineRpm =
                java.util.Arrays.stream(curve[1]).map(hz -> toRpm * hz).toArray();
        double slowest = java.util.Arrays.stream(engineRpm).min().orElse(0);
        double fastest = java.util.Arrays.stream(engineRpm).max().orElse(1);
        boolean direct = Math.abs(data.ratio() - 1) < 1e-9;
        Axis y = Axis.around(direct ? "engine and propeller speed (rpm)" : "engine speed (rpm)", slowest, fastest);
        AxesFrame frame = new AxesFrame(x, y, pen.theme());
        if (!direct) {
            frame.withRightScale(1 / data.ratio());
        }
        frame.curve("speed", curve[0], engineRpm, Ink.AFTER, pen.stroke(0.14));

        double rightTitle = direct ? pen.em(0.6) : pen.em(1.6);
        double width = area.getWidth() - rightTitle;
        double rowHeight = pen.lineHeight(TextStyle.SMALL);
        FlagRows.Layout first =
                rows(pen, frame.place(new Rectangle2D.Double(area.getX(), area.getY(), width, area.getHeight())));
        double rows = first.rows() * rowHeight + pen.em(0.3);
        Plane plane =
                frame.place(new Rectangle2D.Double(area.getX(), area.getY() + rows, width, area.getHeight() - rows));
        for (Dwell dwell : data.dwells()) {
            shade(pen, plane, dwell);
        }
        frame.paint(pen.surface());
        if (!direct) {
            pen.textUp(
                    "propeller speed (rpm)",
                    area.getMaxX() - pen.em(1.1),
                    plane.box().getCenterY(),
                    TextStyle.BODY,
                    pen.colour(Ink.TEXT));
        }
        FlagRows.Layout layout = rows(pen, plane);
        for (int i = 0; i < data.dwells().size(); i++) {
            Dwell dwell = data.dwells().get(i);
            double mean = plane.yInside(toRpm * dwell.propellerHz());
            pen.line(
                    plane.xInside(dwell.fromS()),
                    mean,
                    plane.xInside(dwell.toS()),
                    mean,
                    pen.colour(Ink.CRANK),
                    pen.stroke(0.12, Dash.LONG));
            String name = name(i);
            layout.places().get(i).ifPresent(place -> {
                double base = plane.box().getY() - pen.em(0.2) - place.row() * rowHeight;
                double staff = plane.xInside(dwell.fromS());
                pen.line(
                        staff,
                        base - pen.em(0.6),
                        staff,
                        plane.box().getY(),
                        pen.pale(Ink.QUIET_TEXT),
                        pen.stroke(0.07));
                double textLeft = place.left() + (place.leftward() ? 0 : pen.em(0.3));
                pen.fill(
                        new Rectangle2D.Double(
                                textLeft, base - pen.em(0.75), pen.width(name, TextStyle.SMALL), pen.em(0.95)),
                        pen.colour(Ink.PAPER));
                pen.text(name, textLeft, base - pen.em(0.05), TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
            });
        }
        return LaidOut.of(plane, (xPx, yPx) -> Optional.of(spot(plane.valueAtX(xPx))));
    }

    private FlagRows.Layout rows(Pen pen, Plane plane) {
        List<FlagRows.Flag> flags = new ArrayList<>();
        for (int i = 0; i < data.dwells().size(); i++) {
            Dwell dwell = data.dwells().get(i);
            double width = pen.em(0.3) + pen.width(name(i), TextStyle.SMALL);
            flags.add(new FlagRows.Flag(plane.xInside(dwell.fromS()), width, dwell.durationS()));
        }
        return FlagRows.layOut(flags, plane.box().getX(), plane.box().getMaxX(), pen.em(0.6), MOST_ROWS);
    }

    private void shade(Pen pen, Plane plane, Dwell dwell) {
        double left = plane.xInside(dwell.fromS());
        double right = plane.xInside(dwell.toS());
        pen.fill(
                new Rectangle2D.Double(
                        left, plane.box().getY(), right - left, plane.box().getHeight()),
                pen.colour(Ink.SHADE));
    }

    private String name(int index) {
        Dwell dwell = data.dwells().get(index);
        return "dwell " + (index + 1) + ": " + FigureFormat.rpm(dwell, dwell.standardErrorHz(), data.ratio())
                + " (95 %), " + FigureFormat.fixed(dwell.durationS(), 0) + " s";
    }
}
