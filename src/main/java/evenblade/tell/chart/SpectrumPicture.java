package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.tell.chart.SpectrumCurve.Role;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Amplitude spectra with every order marked, or the steady lines where no order is known. The curves are for looking; the mark shapes stand at the
 * amplitudes that the order fit measured, which lie above the curve where the speed wandered.
 */
public final class SpectrumPicture implements Picture {
    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param curves at least one; a cursor reads the first
     * @param unit of the channel
     * @param marks lines to mark; those outside the range are left out
     * @param turning how fast the shafts turned; empty where that isn't known
     * @param upToHz right end of the picture
     * @param scale of the amplitude axis
     */
    public record Data(
            Caption caption,
            List<SpectrumCurve> curves,
            SignalUnit unit,
            List<OrderMark> marks,
            Optional<ShaftSpeeds> turning,
            double upToHz,
            AmplitudeScale scale) {
        public Data {
            curves = List.copyOf(curves);
            marks = List.copyOf(marks);
        }

        /** One averaged spectrum: frequencies that rise, and a peak value in that unit for each. */
        public Data(
                Caption caption,
                Series frequencyHz,
                Series amplitude,
                SignalUnit unit,
                List<OrderMark> marks,
                double upToHz,
                AmplitudeScale scale) {
            this(
                    caption,
                    List.of(new SpectrumCurve("averaged spectrum", new Curve(frequencyHz, amplitude), Role.MEASURED)),
                    unit,
                    marks,
                    Optional.empty(),
                    upToHz,
                    scale);
        }

        /** With the speed of the shafts. */
        public Data turning(Optional<ShaftSpeeds> known) {
            return new Data(caption, curves, unit, marks, known, upToHz, scale);
        }

        private Data and(List<SpectrumCurve> more) {
            List<SpectrumCurve> all = new ArrayList<>(curves);
            all.addAll(more);
            return new Data(caption, all, unit, marks, turning, upToHz, scale);
        }

        private Data in(ShownUnit shown) {
            return new Data(
                    caption,
                    curves.stream().map(each -> each.in(shown, unit)).toList(),
                    unit,
                    marks.stream().map(each -> each.in(shown, unit)).toList(),
                    turning,
                    upToHz,
                    scale);
        }
    }

    private final Data data;
    private final ShownUnit unit;
    private final Data shown;
    private final Zoom zoom;

    public SpectrumPicture(Data data) {
        this(data, ShownUnit.AS_MEASURED, data, Zoom.across(0, data.upToHz()));
    }

    private SpectrumPicture(Data data, ShownUnit unit, Data shown, Zoom zoom) {
        this.data = data;
        this.unit = unit;
        this.shown = shown;
        this.zoom = zoom;
    }

    @Override
    public String title() {
        if (data.curves().stream().anyMatch(each -> each.role() == Role.BEFORE)) {
            return "Spectra before and after";
        }
        return data.marks().stream().anyMatch(mark -> mark.kind().order())
                ? "Spectrum with the orders marked"
                : "Averaged spectrum";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public Optional<Zoom> zoom() {
        return Optional.of(zoom);
    }

    @Override
    public Optional<Zoom> whole() {
        return Optional.of(Zoom.across(0, data.upToHz()));
    }

    @Override
    public Picture zoomedTo(Zoom other) {
        return new SpectrumPicture(data, unit, shown, other);
    }

    @Override
    public List<ShownUnit> units() {
        return ShownUnit.of(data.unit());
    }

    @Override
    public Picture in(ShownUnit other) {
        return other == unit ? this : new SpectrumPicture(data, other, data.in(other), zoom);
    }

    /** This picture with more curves; the amplitudes in the unit of the channel. */
    public SpectrumPicture with(List<SpectrumCurve> more) {
        Data all = data.and(more);
        return new SpectrumPicture(all, unit, all.in(unit), zoom);
    }

    @Override
    public List<Spot> peaks() {
        return reader().peaks(zoom.across());
    }

    @Override
    public Optional<Spot> again(Spot spot) {
        return Optional.of(reader().at(spot.x()));
    }

    private SpectrumReader reader() {
        return new SpectrumReader(shown, unit.unit(data.unit()));
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        for (SpectrumCurve curve : shown.curves()) {
            Role role = curve.role();
            entries.add(
                    role == Role.BEFORE
                            ? new KeyEntry(curve.name(), (pen, x, y) -> {
                                double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
                                Rectangle2D box =
                                        new Rectangle2D.Double(x - half, y - pen.em(0.3), 2 * half, pen.em(0.6));
                                pen.fill(box, pen.pale(Ink.BEFORE));
                                pen.draw(box, pen.colour(Ink.BEFORE), pen.stroke(0.08));
                            })
                            : KeyEntry.line(curve.name(), role.ink(), role.dash()));
        }
        entries.addAll(MarkFlags.key(shown.marks()));
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D whole) {
        Rectangle2D area =
                new Rectangle2D.Double(whole.getX(), whole.getY(), whole.getWidth() - pen.em(0.6), whole.getHeight());
        Axis x = Axis.linear(
                "frequency (Hz)", zoom.across().from(), zoom.across().to());
        int columns = (int) Math.max(100, area.getWidth());
        List<double[][]> curves = shown.curves().stream()
                .map(each -> Thinning.between(each.curve().x(), each.curve().y(), x.min(), x.max(), columns))
                .toList();
        AxesFrame frame = new AxesFrame(x, amplitudeAxis(curves), pen.theme());
        // The first is the one that is read: it is drawn last, above the others.
        for (int i = curves.size() - 1; i >= 0; i--) {
            Role role = shown.curves().get(i).role();
            if (curves.get(i)[0].length > 0 && role != Role.BEFORE) {
                frame.curve(
                        "curve " + i,
                        curves.get(i)[0],
                        curves.get(i)[1],
                        role.ink(),
                        role == Role.REFERENCE ? pen.stroke(0.1, Dash.LONG) : pen.stroke(0.1));
            }
        }
        double rows = MarkFlags.layOut(pen, shown.marks(), frame.place(area), area.getHeight())
                        .height()
                + pen.em(0.5);
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY() + rows, area.getWidth(), area.getHeight() - rows));
        for (int i = 0; i < curves.size(); i++) {
            if (shown.curves().get(i).role() == Role.BEFORE) {
                double[][] surface = curves.get(i);
                pen.within(plane.box(), () -> paintSurface(pen, plane, surface));
            }
        }
        MarkFlags placed = MarkFlags.layOut(pen, shown.marks(), plane, area.getHeight());
        placed.paintStaffs();
        frame.paint(pen.surface());
        placed.paintNames();
        SpectrumReader reader = reader();
        double reach = pen.em(0.7) / plane.box().getWidth() * zoom.across().size();
        return LaidOut.of(plane, (xPx, yPx) -> Optional.of(reader.snapped(plane.valueAtX(xPx), reach)));
    }

    private static void paintSurface(Pen pen, Plane plane, double[][] curve) {
        if (curve[0].length == 0) {
            return;
        }
        Path2D path = new Path2D.Double();
        path.moveTo(plane.x(curve[0][0]), plane.box().getMaxY());
        for (int i = 0; i < curve[0].length; i++) {
            path.lineTo(plane.x(curve[0][i]), plane.yInside(curve[1][i]));
        }
        path.lineTo(plane.x(curve[0][curve[0].length - 1]), plane.box().getMaxY());
        path.closePath();
        pen.fill(path, pen.pale(Ink.BEFORE));
        pen.draw(path, pen.colour(Ink.BEFORE), pen.stroke(0.06));
    }

    private Axis amplitudeAxis(List<double[][]> curves) {
        double[] positive = curves.stream()
                .flatMapToDouble(each -> Arrays.stream(each[1]))
                .filter(a -> a > 0)
                .sorted()
                .toArray();
        double marked = shown.marks().stream()
                .filter(mark -> mark.detected()
                        && mark.frequencyHz() >= zoom.across().from()
                        && mark.frequencyHz() <= zoom.across().to())
                .flatMapToDouble(mark -> mark.amplitude().isPresent()
                        ? DoubleStream.of(mark.amplitude().getAsDouble())
                        : DoubleStream.empty())
                .max()
                .orElse(0);
        double largest = Math.max(marked, positive.length > 0 ? positive[positive.length - 1] : 0);
        double floor = positive.length > 0 ? positive[positive.length / 20] : largest;
        return data.scale().axis(unit.title(data.unit()), floor, largest);
    }
}
