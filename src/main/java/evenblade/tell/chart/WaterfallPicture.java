package evenblade.tell.chart;

import evenblade.input.recording.Series;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Level over time and frequency, with the order lines laid over it along the speed track. */
public final class WaterfallPicture implements Picture {
    /** Levels weaker than this many decibels under the strongest share its end of the ramp. */
    private static final double MOST_SPAN_DB = 70;

    private static final double LEAST_SPAN_DB = 20; // ours: less makes noise look like lines

    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param startS middle of the first frame
     * @param stepS from frame to frame
     * @param frames how many, at least 1
     * @param binHz from frequency to frequency; the first is 0 Hz
     * @param bins how many, at least 2
     * @param levelDb frame after frame, each with all its bins from 0 Hz up
     * @param levelUnit what the levels are, for instance {@code dB re 1 m/s² peak}
     * @param marks whose lines are laid over; only name, kind, order and detection count
     * @param trackTimeS rising times of the speed track
     * @param trackPropellerHz propeller speed at each
     * @param upToHz top of the picture
     */
    public record Data(
            Caption caption,
            double startS,
            double stepS,
            int frames,
            double binHz,
            int bins,
            Series levelDb,
            String levelUnit,
            List<OrderMark> marks,
            Series trackTimeS,
            Series trackPropellerHz,
            double upToHz) {
        public Data {
            marks = List.copyOf(marks);
            if (frames < 1 || bins < 2 || levelDb.size() != frames * bins) {
                throw new IllegalArgumentException(
                        levelDb.size() + " levels don't fill " + frames + " frames of " + bins + " bins");
            }
        }
    }

    private final Data data;
    private final Axis level;
    private final Zoom zoom;

    public WaterfallPicture(Data data) {
        this(data, levelAxis(data), whole(data));
    }

    private WaterfallPicture(Data data, Axis level, Zoom zoom) {
        this.data = data;
        this.level = level;
        this.zoom = zoom;
    }

    private static Zoom whole(Data data) {
        return new Zoom(
                new Zoom.Range(data.startS() - data.stepS() / 2, data.startS() + (data.frames() - 0.5) * data.stepS()),
                Optional.of(new Zoom.Range(0, data.upToHz())));
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
        return new WaterfallPicture(data, level, other);
    }

    /** What is shown of this one from finer levels, which as in {@link Data} begin at 0 Hz, in the same colours. */
    public WaterfallPicture finer(int frames, double startS, double stepS, double binHz, int bins, Series levelDb) {
        return new WaterfallPicture(
                new Data(
                        data.caption(),
                        startS,
                        stepS,
                        frames,
                        binHz,
                        bins,
                        levelDb,
                        data.levelUnit(),
                        data.marks(),
                        data.trackTimeS(),
                        data.trackPropellerHz(),
                        data.upToHz()),
                level,
                zoom);
    }

    /** From frequency to frequency. */
    public double binHz() {
        return data.binHz();
    }

    @Override
    public Optional<Spot> again(Spot spot) {
        return Optional.of(spot(spot.x(), spot.y()));
    }

    @Override
    public String title() {
        return data.marks().stream().noneMatch(m -> m.kind().order()) ? "Waterfall" : "Waterfall with the order lines";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public List<KeyEntry> key() {
        return MarkFlags.key(shown());
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        Zoom.Range shownHz = zoom.upward().orElseThrow();
        Axis x = Axis.linear("time (s)", zoom.across().from(), zoom.across().to());
        Axis y = Axis.linear("frequency (Hz)", shownHz.from(), shownHz.to());
        List<OrderMark> shown = shown();
        double names = shown.stream()
                .mapToDouble(m -> pen.width(m.name(), TextStyle.SMALL))
                .max()
                .orElse(0);
        double side = pen.em(2.4) + Math.min(names, 0.3 * area.getWidth());
        double bar = pen.em(6.2);
        AxesFrame frame = new AxesFrame(x, y, pen.theme());
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - side - bar, area.getHeight()));
        frame.paint(pen.surface());
        paintLevels(pen, plane);
        pen.within(plane.box(), () -> shown.forEach(m -> paintTrack(pen, plane, m)));
        paintNames(pen, plane, shown, side);
        paintRamp(
                pen,
                level,
                new Rectangle2D.Double(
                        area.getMaxX() - bar + pen.em(0.6),
                        plane.box().getY(),
                        pen.em(1.1),
                        plane.box().getHeight()));
        double reachHz = pen.em(0.6) / plane.box().getHeight() * shownHz.size();
        return LaidOut.of(plane, (xPx, yPx) -> {
            double timeS = plane.valueAtX(xPx);
            return Optional.of(spot(timeS, strongestHz(frameAt(timeS), plane.valueAtY(yPx), reachHz)));
        });
    }

    private void paintLevels(Pen pen, Plane plane) {
        int[] colours = ColourRamp.of(pen.theme().palette()).steps();
        int width = (int) Math.max(1, Math.round(plane.box().getWidth()));
        int height = (int) Math.max(1, Math.round(plane.box().getHeight()));
        int[] pixels = new int[width * height];
        Zoom.Range shownHz = zoom.upward().orElseThrow();
        int[] fromBin = new int[height];
        int[] toBin = new int[height];
        for (int row = 0; row < height; row++) {
            double lowHz = shownHz.to() - shownHz.size() * (row + 1.0) / height;
            double highHz = shownHz.to() - shownHz.size() * row / height;
            int middle = (int) Math.round((lowHz + highHz) / 2 / data.binHz());
            fromBin[row] = Math.min(data.bins() - 1, Math.min(middle, (int) Math.ceil(lowHz / data.binHz())));
            toBin[row] = Math.min(data.bins() - 1, Math.max(middle, (int) Math.ceil(highHz / data.binHz()) - 1));
        }
        int frameBefore = -1;
        int endBefore = -1;
        for (int column = 0; column < width; column++) {
            int fromFrame = frameAt(zoom.across().from() + zoom.across().size() * column / width);
            int toFrame = Math.max(
                    fromFrame + 1, frameAt(zoom.across().from() + zoom.across().size() * (column + 1.0) / width));
            // Where cells are larger than pixels, a column or a row is often the same as the one before.
            boolean again = fromFrame == frameBefore && toFrame == endBefore;
            for (int row = 0; row < height; row++) {
                int at = row * width + column;
                if (again) {
                    pixels[at] = pixels[at - 1];
                } else if (row > 0 && fromBin[row] == fromBin[row - 1] && toBin[row] == toBin[row - 1]) {
                    pixels[at] = pixels[at - width];
                } else {
                    double strongest = strongest(fromFrame, toFrame, fromBin[row], toBin[row]);
                    pixels[at] = colours[
                            (int) Math.round((colours.length - 1) * Math.max(0, Math.min(1, level.share(strongest))))];
                }
            }
            frameBefore = fromFrame;
            endBefore = toFrame;
        }
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, pixels, 0, width);
        pen.surface()
                .drawImage(
                        image,
                        (int) Math.round(plane.box().getX()),
                        (int) Math.round(plane.box().getY()),
                        null);
    }

    /** The frame that a moment belongs to. */
    private int frameAt(double timeS) {
        double frame = (timeS - data.startS()) / data.stepS() + 0.5;
        return (int) Math.max(0, Math.min(data.frames() - 1.0, Math.floor(frame)));
    }

    private int binAt(double hz) {
        return (int) Math.max(0, Math.min(data.bins() - 1.0, Math.round(hz / data.binHz())));
    }

    private double levelAt(int frame, int bin) {
        return data.levelDb().at(frame * data.bins() + bin);
    }

    /** The strongest frequency within reach of one. */
    private double strongestHz(int frame, double hz, double reachHz) {
        int best = binAt(hz);
        for (int bin = binAt(hz - reachHz); bin <= binAt(hz + reachHz); bin++) {
            best = levelAt(frame, bin) > levelAt(frame, best) ? bin : best;
        }
        return best * data.binHz();
    }

    private Spot spot(double timeS, double hz) {
        List<Spot.Reading> readings = new ArrayList<>();
        readings.add(Spot.Reading.of(Spot.What.TIME, timeS));
        readings.add(Spot.Reading.of(Spot.What.FREQUENCY, hz));
        propellerHzAt(timeS).ifPresent(turns -> {
            readings.add(Spot.Reading.of(Spot.What.PROPELLER_ORDER, hz / turns));
            readings.add(Spot.Reading.of(Spot.What.PROPELLER_RPM, 60 * turns));
        });
        readings.add(Spot.Reading.of(Spot.What.LEVEL, levelAt(frameAt(timeS), binAt(hz))));
        return new Spot(0, timeS, hz, "", readings);
    }

    /** Speed on the track; empty where none is known then. */
    private Optional<Double> propellerHzAt(double timeS) {
        Series times = data.trackTimeS();
        if (data.marks().isEmpty() || times.size() == 0 || timeS < times.at(0) || timeS > times.at(times.size() - 1)) {
            return Optional.empty();
        }
        double hz = data.trackPropellerHz().at(new Curve(times, data.trackPropellerHz()).nearest(timeS));
        return hz > 0 ? Optional.of(hz) : Optional.empty();
    }

    /** The strongest level in a patch, so that a narrow line isn't lost between pixels. */
    private double strongest(int fromFrame, int toFrame, int fromBin, int toBin) {
        double strongest = Double.NEGATIVE_INFINITY;
        for (int frame = fromFrame; frame < Math.min(toFrame, data.frames()); frame++) {
            for (int bin = fromBin; bin <= toBin; bin++) {
                strongest = Math.max(strongest, data.levelDb().at(frame * data.bins() + bin));
            }
        }
        return strongest;
    }

    /** From the level that half the patches in view lie under, or 70 dB down, to the strongest. */
    private static Axis levelAxis(Data data) {
        int inView = (int) Math.min(data.bins(), Math.floor(data.upToHz() / data.binHz()) + 1);
        double[] levels = new double[data.frames() * inView];
        for (int frame = 0; frame < data.frames(); frame++) {
            for (int bin = 0; bin < inView; bin++) {
                levels[frame * inView + bin] = data.levelDb().at(frame * data.bins() + bin);
            }
        }
        double[] finite = java.util.Arrays.stream(levels)
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        if (finite.length == 0) {
            return Axis.linear(data.levelUnit(), -LEAST_SPAN_DB, 0);
        }
        double top = 5 * Math.ceil(finite[finite.length - 1] / 5);
        double middle = finite[finite.length / 2];
        double bottom = 5 * Math.floor(Math.max(middle, top - MOST_SPAN_DB) / 5);
        return Axis.linear(data.levelUnit(), Math.min(bottom, top - LEAST_SPAN_DB), top);
    }

    private void paintTrack(Pen pen, Plane plane, OrderMark mark) {
        Path2D path = new Path2D.Double();
        int steps =
                (int) Math.max(2, Math.min(data.trackTimeS().size(), plane.box().getWidth()));
        for (int i = 0; i < steps; i++) {
            int at = (int) ((long) i * (data.trackTimeS().size() - 1) / (steps - 1));
            double x = plane.x(data.trackTimeS().at(at));
            double y = plane.y(mark.propellerOrder() * data.trackPropellerHz().at(at));
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        Dash dash = mark.kind().dash();
        Color halo = pen.colour(Ink.PAPER);
        if (mark.detected()) {
            pen.draw(path, halo, dash.sparseStroke(pen.em(0.3), pen.theme()));
        }
        pen.draw(path, colour(pen, mark), dash.sparseStroke(pen.em(mark.detected() ? 0.14 : 0.08), pen.theme()));
    }

    private void paintNames(Pen pen, Plane plane, List<OrderMark> shown, double side) {
        double height = 1.12 * pen.em(0.9);
        List<StackedLabels.Label> labels = new ArrayList<>();
        for (OrderMark mark : shown) {
            labels.add(new StackedLabels.Label(
                    plane.yInside(endHz(mark)), (mark.detected() ? 1e9 : 0) - mark.propellerOrder()));
        }
        List<Optional<Double>> places = StackedLabels.layOut(
                labels, plane.box().getY() - pen.em(0.5), plane.box().getMaxY() + pen.em(0.5), height);
        double edge = plane.box().getMaxX();
        double room = side - pen.em(2.4);
        for (int i = 0; i < shown.size(); i++) {
            OrderMark mark = shown.get(i);
            double from = plane.yInside(endHz(mark));
            places.get(i).ifPresent(y -> {
                Color colour = colour(pen, mark);
                pen.line(edge, from, edge + pen.em(0.9), y, colour, pen.stroke(0.08));
                pen.glyph(mark.kind().glyph(), edge + pen.em(1.2), y, 0.3, colour, mark.detected());
                pen.textAcross(
                        Caption.shortened(mark.name(), room, TextStyle.SMALL, pen.theme()),
                        edge + pen.em(1.8),
                        y,
                        TextStyle.SMALL,
                        pen.colour(mark.detected() ? Ink.TEXT : Ink.QUIET_TEXT),
                        Pen.Align.LEFT);
            });
        }
    }

    private void paintRamp(Pen pen, Axis level, Rectangle2D box) {
        ColourRamp ramp = ColourRamp.of(pen.theme().palette());
        int steps = 64;
        for (int i = 0; i < steps; i++) {
            double top = box.getMaxY() - (i + 1) * box.getHeight() / steps;
            pen.fill(
                    new Rectangle2D.Double(box.getX(), top, box.getWidth(), box.getHeight() / steps + 0.5),
                    ramp.at((i + 0.5) / steps));
        }
        pen.draw(box, pen.colour(Ink.QUIET_TEXT), pen.stroke(0.07));
        double span = level.max() - level.min();
        int step = span > 40 ? 10 : 5;
        for (double db = Math.ceil(level.min() / step) * step; db <= level.max() + 1e-9; db += step) {
            double y = box.getMaxY() - level.share(db) * box.getHeight();
            pen.line(box.getMaxX(), y, box.getMaxX() + pen.em(0.3), y, pen.colour(Ink.QUIET_TEXT), pen.stroke(0.07));
            pen.textAcross(
                    Axis.tick(db),
                    box.getMaxX() + pen.em(2.4),
                    y,
                    TextStyle.SMALL,
                    pen.colour(Ink.TEXT),
                    Pen.Align.RIGHT);
        }
        pen.textUp(level.title(), box.getMaxX() + pen.em(3.3), box.getCenterY(), TextStyle.BODY, pen.colour(Ink.TEXT));
    }

    private Color colour(Pen pen, OrderMark mark) {
        return mark.detected()
                ? pen.colour(mark.kind().ink())
                : pen.pale(mark.kind().ink());
    }

    /** Steady lines that no order explains follow no track: they are seen in the levels alone. */
    private List<OrderMark> shown() {
        return data.marks().stream()
                .filter(m -> m.kind().order()
                        && endHz(m) <= zoom.upward().orElseThrow().to()
                        && endHz(m) >= zoom.upward().orElseThrow().from())
                .toList();
    }

    /** Where its line leaves the picture on the right. */
    private double endHz(OrderMark mark) {
        int end = new Curve(data.trackTimeS(), data.trackPropellerHz())
                .nearest(zoom.across().to());
        return mark.propellerOrder() * data.trackPropellerHz().at(end);
    }
}
