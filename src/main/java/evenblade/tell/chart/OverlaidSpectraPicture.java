package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The spectra of two runs laid over each other, with the orders marked: before as a surface, after as a line. */
public final class OverlaidSpectraPicture extends Picture {
    /**
     * What is drawn.
     *
     * @param caption what it was drawn from: both runs
     * @param beforeName the run drawn as a surface
     * @param before frequency in Hz, amplitude as peak value
     * @param afterName the run drawn as a line
     * @param after likewise
     * @param unit of both
     * @param marks lines to mark, where the later run has them
     * @param upToHz right end of the picture
     * @param scale of the amplitude axis
     */
    public record Data(
            Caption caption,
            String beforeName,
            Curve before,
            String afterName,
            Curve after,
            SignalUnit unit,
            List<OrderMark> marks,
            double upToHz,
            AmplitudeScale scale) {
        public Data {
            marks = List.copyOf(marks);
        }
    }

    private final Data data;

    public OverlaidSpectraPicture(Data data) {
        this.data = data;
    }

    @Override
    public String title() {
        return "Spectra before and after";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(new KeyEntry("before: " + data.beforeName(), (pen, x, y) -> {
            double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
            Rectangle2D box = new Rectangle2D.Double(x - half, y - pen.em(0.3), 2 * half, pen.em(0.6));
            pen.fill(box, pen.pale(Ink.BEFORE));
            pen.draw(box, pen.colour(Ink.BEFORE), pen.stroke(0.08));
        }));
        entries.add(KeyEntry.line("after: " + data.afterName(), Ink.AFTER, Dash.SOLID));
        entries.addAll(MarkFlags.key(data.marks()));
        return entries;
    }

    @Override
    void paintBody(Pen pen, Rectangle2D whole) {
        Rectangle2D area =
                new Rectangle2D.Double(whole.getX(), whole.getY(), whole.getWidth() - pen.em(0.6), whole.getHeight());
        int columns = (int) Math.max(100, area.getWidth());
        double[][] before = Thinning.between(data.before().x(), data.before().y(), 0, data.upToHz(), columns);
        double[][] after = Thinning.between(data.after().x(), data.after().y(), 0, data.upToHz(), columns);
        double[] both = new double[before[1].length + after[1].length];
        System.arraycopy(before[1], 0, both, 0, before[1].length);
        System.arraycopy(after[1], 0, both, before[1].length, after[1].length);
        double[] positive = Arrays.stream(both).filter(a -> a > 0).sorted().toArray();
        double largest = positive.length == 0 ? 0 : positive[positive.length - 1];
        double floor = positive.length == 0 ? 0 : positive[positive.length / 20];
        AxesFrame frame = new AxesFrame(
                Axis.linear("frequency (Hz)", 0, data.upToHz()),
                data.scale().axis(AmplitudeScale.title(data.unit()), floor, largest),
                pen.theme());
        if (after[0].length > 0) {
            frame.curve("after", after[0], after[1], Ink.AFTER, pen.stroke(0.11));
        }
        List<OrderMark> marks = data.marks().stream()
                .map(OverlaidSpectraPicture::withoutAmplitude)
                .toList();
        double rows = MarkFlags.layOut(pen, marks, frame.place(area)).height() + pen.em(0.5);
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY() + rows, area.getWidth(), area.getHeight() - rows));
        pen.within(plane.box(), () -> paintSurface(pen, plane, before));
        MarkFlags placed = MarkFlags.layOut(pen, marks, plane);
        placed.paintStaffs();
        frame.paint(pen.surface());
        placed.paintNames();
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

    /** The amplitude differs between the runs, so no mark stands at one. */
    private static OrderMark withoutAmplitude(OrderMark mark) {
        return new OrderMark(
                mark.name(),
                mark.kind(),
                mark.propellerOrder(),
                mark.frequencyHz(),
                java.util.OptionalDouble.empty(),
                mark.detected());
    }
}
