package evenblade.tell.chart;

import evenblade.base.units.Length;
import evenblade.base.units.LengthUnit;
import evenblade.tell.document.FigureFormat;
import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The tips seen edge on against the block, each at the height of its mark, with a scale in mm and in inches. */
public final class TipMarksPicture implements Picture {
    /**
     * One tip.
     *
     * @param blade the blade's own mark
     * @param position the hub position it sits at
     * @param mark its reading on the block
     */
    public record Tip(String blade, String position, Length mark) {}

    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param tips in the order of the hub positions, two or more
     * @param sigma standard deviation of one reading
     * @param limit the largest spread allowed, where one was entered
     */
    public record Data(Caption caption, List<Tip> tips, Length sigma, Optional<Length> limit) {
        public Data {
            tips = List.copyOf(tips);
            if (tips.size() < 2) {
                throw new IllegalArgumentException("track needs two tips or more, not " + tips.size());
            }
        }
    }

    private final Data data;
    private final FigureFormat figures;

    public TipMarksPicture(Data data) {
        this(data, LengthUnit.MILLIMETRE);
    }

    /** With one of the units first; both scales are there in any case. */
    public TipMarksPicture(Data data, LengthUnit first) {
        this.data = data;
        this.figures = new FigureFormat(first);
    }

    @Override
    public String title() {
        return "Tip marks on the block: spread " + figures.both(highestMm() - lowestMm());
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        entries.add(new KeyEntry(
                "tip, edge on",
                (pen, x, y) -> pen.fill(profile(x - pen.em(0.8), y, pen.em(1.6), pen.em(0.4)), pen.colour(Ink.AFTER))));
        entries.add(new KeyEntry(
                "reading ± two standard deviations",
                (pen, x, y) -> pen.errorBar(x, y - pen.em(0.4), x, y + pen.em(0.4), pen.colour(Ink.TEXT))));
        if (data.limit().isPresent()) {
            entries.add(KeyEntry.line("largest spread allowed, from the lowest mark", Ink.LIMIT, Dash.LONG));
        }
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double low = lowestMm();
        double top = Math.max(
                highestMm(), low + data.limit().map(Length::millimetres).orElse(0.0));
        double room = Math.max(0.12 * (top - low), 2.5 * data.sigma().millimetres());
        Axis marks = Axis.linear("mark on the block (mm)", low - room, top + room);
        AxesFrame frame =
                new AxesFrame(Axis.linear("", 0, data.tips().size()), marks, pen.theme()).withoutLyingNumbers();
        double names = pen.em(3.6);
        double inches = pen.em(5.2);
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - inches, area.getHeight() - names));
        Rectangle2D box = plane.box();
        frame.paint(pen.surface());
        paintInches(pen, plane);
        data.limit().ifPresent(limit -> {
            for (double mm : new double[] {low, low + limit.millimetres()}) {
                pen.line(
                        box.getX(),
                        plane.y(mm),
                        box.getMaxX(),
                        plane.y(mm),
                        pen.colour(Ink.LIMIT),
                        pen.stroke(0.12, Dash.LONG));
            }
        });
        for (int i = 0; i < data.tips().size(); i++) {
            paintTip(pen, plane, i, data.tips().get(i));
        }
        double mm = box.getHeight() / (marks.max() - marks.min());
        double acrossPage = 170.0 / area.getWidth() * mm;
        pen.text(
                "drawn " + FigureFormat.fixed(acrossPage, 0) + " times life size across a 170 mm page",
                box.getMaxX(),
                area.getMaxY() - pen.em(0.4),
                TextStyle.SMALL,
                pen.colour(Ink.QUIET_TEXT),
                Pen.Align.RIGHT);
        return LaidOut.NONE;
    }

    private void paintTip(Pen pen, Plane plane, int index, Tip tip) {
        double middle = plane.x(index + 0.5);
        double column = plane.box().getWidth() / data.tips().size();
        double y = plane.y(tip.mark().millimetres());
        Color colour = pen.colour(Ink.AFTER);
        pen.fill(profile(middle - 0.28 * column, y, 0.56 * column, pen.em(0.9)), colour);
        double two = 2 * data.sigma().millimetres();
        double bar = middle + 0.36 * column;
        pen.errorBar(
                bar,
                plane.yInside(tip.mark().millimetres() - two),
                bar,
                plane.yInside(tip.mark().millimetres() + two),
                pen.colour(Ink.TEXT));
        pen.text(aboveLowest(tip), middle, y - pen.em(0.75), TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.MIDDLE);
        double names = plane.box().getMaxY();
        pen.text(
                "blade " + tip.blade(),
                middle,
                names + pen.em(1.2),
                TextStyle.STRONG,
                pen.colour(Ink.TEXT),
                Pen.Align.MIDDLE);
        pen.text(
                "position " + tip.position(),
                middle,
                names + pen.em(2.4),
                TextStyle.SMALL,
                pen.colour(Ink.TEXT),
                Pen.Align.MIDDLE);
    }

    private String aboveLowest(Tip tip) {
        return figures.first(tip.mark().millimetres() - lowestMm());
    }

    /** The outline of a tip seen along the blade: blunt in front, thin behind. */
    private static Path2D profile(double left, double y, double length, double thickness) {
        Path2D path = new Path2D.Double();
        path.moveTo(left, y);
        path.curveTo(left, y - 0.9 * thickness, left + 0.35 * length, y - 0.6 * thickness, left + length, y);
        path.curveTo(left + 0.5 * length, y + 0.1 * thickness, left, y + 0.55 * thickness, left, y);
        path.closePath();
        return path;
    }

    /** Sixteenths of an inch on the right, as the pencil marks are often read. */
    private static void paintInches(Pen pen, Plane plane) {
        double sixteenth = 25.4 / 16;
        Axis axis = plane.yAxis();
        int step = 1;
        while ((axis.max() - axis.min()) / (step * sixteenth) > 12) {
            step *= 2;
        }
        double x = plane.box().getMaxX();
        pen.line(x, plane.box().getY(), x, plane.box().getMaxY(), pen.colour(Ink.QUIET_TEXT), pen.stroke(0.08));
        long first = (long) Math.ceil(axis.min() / (step * sixteenth));
        for (long n = first; n * step * sixteenth <= axis.max(); n++) {
            double y = plane.y(n * step * sixteenth);
            pen.line(x, y, x + pen.em(0.4), y, pen.colour(Ink.QUIET_TEXT), pen.stroke(0.08));
            pen.textAcross(
                    sixteenths(n * step), x + pen.em(0.7), y, TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
        }
        pen.textUp(
                "mark on the block (in)",
                x + pen.em(4.4),
                plane.box().getCenterY(),
                TextStyle.BODY,
                pen.colour(Ink.TEXT));
    }

    static String sixteenths(long n) {
        long whole = n / 16;
        long rest = Math.abs(n % 16);
        if (rest == 0) {
            return String.valueOf(whole);
        }
        long divisor = Long.lowestOneBit(rest);
        String sign = n < 0 && whole == 0 ? "-" : "";
        return sign + (whole == 0 ? "" : whole + " ") + rest / divisor + "/" + 16 / divisor;
    }

    private double lowestMm() {
        return data.tips().stream()
                .mapToDouble(t -> t.mark().millimetres())
                .min()
                .orElseThrow();
    }

    private double highestMm() {
        return data.tips().stream()
                .mapToDouble(t -> t.mark().millimetres())
                .max()
                .orElseThrow();
    }
}
