package evenblade.tell.chart;

import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Order marks over a spectrum: staffs down to the axis, names in rows above, measured amplitudes as mark shapes. */
record MarkFlags(Pen pen, List<OrderMark> marks, FlagRows.Layout layout, Plane plane) {
    private static final int MOST_ROWS = 5; // more hide the curve
    /** However many lines there are, the curve keeps most of the room. */
    private static final double SHARE_OF_NAMES = 0.3;

    private static final double RADIUS = 0.34; // text heights, by eye

    /**
     * Finds the names' places.
     *
     * @param height of everything, names and plot; the names get a share of it
     */
    static MarkFlags layOut(Pen pen, List<OrderMark> all, Plane plane, double height) {
        int most = (int) Math.max(1, Math.min(MOST_ROWS, SHARE_OF_NAMES * height / rowHeight(pen)));
        Axis axis = plane.xAxis();
        List<OrderMark> marks = all.stream()
                .filter(m -> m.frequencyHz() >= axis.min() && m.frequencyHz() <= axis.max())
                .toList();
        List<FlagRows.Flag> flags = new ArrayList<>();
        for (OrderMark mark : marks) {
            double width = pen.em(1.1) + pen.width(mark.name(), TextStyle.SMALL);
            double rank = (mark.detected() ? 1e9 : 0) - mark.propellerOrder();
            flags.add(new FlagRows.Flag(plane.x(mark.frequencyHz()), width, rank));
        }
        FlagRows.Layout layout =
                FlagRows.layOut(flags, plane.box().getX(), plane.box().getMaxX() + pen.em(0.5), pen.em(0.5), most);
        return new MarkFlags(pen, marks, layout, plane);
    }

    double height() {
        return layout.rows() * rowHeight(pen);
    }

    /** Draws what lies beneath the curves: the staffs, pale within the plot. */
    void paintStaffs() {
        for (int i = 0; i < marks.size(); i++) {
            OrderMark mark = marks.get(i);
            double x = plane.x(mark.frequencyHz());
            double top = plane.box().getY();
            Optional<FlagRows.Place> place = layout.places().get(i);
            if (place.isPresent()) {
                pen.line(
                        x,
                        rowMiddle(place.get().row()),
                        x,
                        top,
                        colour(mark),
                        pen.stroke(0.09, mark.kind().dash()));
            }
            pen.line(
                    x,
                    top,
                    x,
                    plane.box().getMaxY(),
                    pen.pale(mark.kind().ink()),
                    pen.stroke(0.09, mark.kind().dash()));
        }
    }

    /** Draws what lies above the curves: the names, the measured amplitudes, and how many names had no room. */
    void paintNames() {
        for (int i = 0; i < marks.size(); i++) {
            OrderMark mark = marks.get(i);
            layout.places().get(i).ifPresent(place -> paintName(mark, place));
        }
        marks.forEach(this::paintAmplitude);
        if (layout.leftOut() > 0) {
            String words = layout.leftOut() + " names left out for lack of room";
            double width = pen.width(words, TextStyle.SMALL);
            pen.fill(
                    new Rectangle2D.Double(
                            plane.box().getMaxX() - width, plane.box().getY() + pen.em(0.2), width, pen.em(1.2)),
                    pen.colour(Ink.PAPER));
            pen.text(
                    words,
                    plane.box().getMaxX(),
                    plane.box().getY() + pen.em(1.1),
                    TextStyle.SMALL,
                    pen.colour(Ink.QUIET_TEXT),
                    Pen.Align.RIGHT);
        }
    }

    private void paintName(OrderMark mark, FlagRows.Place place) {
        double x = plane.x(mark.frequencyHz());
        double y = rowMiddle(place.row());
        double width = pen.width(mark.name(), TextStyle.SMALL);
        double textLeft = place.leftward() ? place.left() : place.left() + pen.em(0.7);
        double half = 0.5 * rowHeight(pen);
        pen.fill(
                new Rectangle2D.Double(textLeft - pen.em(0.15), y - half, width + pen.em(0.3), 2 * half),
                pen.colour(Ink.PAPER));
        Color text = mark.detected() ? pen.colour(Ink.TEXT) : pen.colour(Ink.QUIET_TEXT);
        pen.textAcross(mark.name(), textLeft, y, TextStyle.SMALL, text, Pen.Align.LEFT);
        pen.glyph(mark.kind().glyph(), x, y, RADIUS, colour(mark), mark.detected());
    }

    private void paintAmplitude(OrderMark mark) {
        if (mark.detected() && mark.amplitude().isPresent()) {
            double y = plane.yInside(mark.amplitude().getAsDouble());
            pen.glyph(mark.kind().glyph(), plane.x(mark.frequencyHz()), y, RADIUS, colour(mark), true);
        }
    }

    private Color colour(OrderMark mark) {
        return mark.detected()
                ? pen.colour(mark.kind().ink())
                : pen.pale(mark.kind().ink());
    }

    private double rowMiddle(int row) {
        return plane.box().getY() - pen.em(0.3) - (row + 0.5) * rowHeight(pen);
    }

    private static double rowHeight(Pen pen) {
        return 1.2 * pen.em(0.9);
    }

    /** What a picture's key says of the kinds that occur, and of names left out. */
    static List<KeyEntry> key(List<OrderMark> marks) {
        List<KeyEntry> entries = new ArrayList<>();
        for (MarkKind kind : MarkKind.values()) {
            if (marks.stream().anyMatch(m -> m.kind() == kind)) {
                entries.add(KeyEntry.mark(kind));
            }
        }
        if (marks.stream().anyMatch(m -> !m.detected())) {
            entries.add(KeyEntry.glyph("pale, open: not detected", Glyph.CIRCLE, Ink.QUIET_TEXT, false));
        }
        return entries;
    }
}
