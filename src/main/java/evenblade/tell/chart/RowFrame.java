package evenblade.tell.chart;

import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/** A lying value axis with named rows on the left and their figures in two columns on the right. */
final class RowFrame {
    /**
     * The words of a row.
     *
     * @param name on the left
     * @param place first column on the right, for instance a frequency; may be empty
     * @param figures second column
     * @param strong whether it is there, rather than not detected or not measured
     */
    record Row(String name, String place, String figures, boolean strong) {}

    /** Title, caption, key, and the axis. */
    private static final double WORDS_AND_AXIS_EM = 12;

    private static final double ROW_EM = 1.15; // a line of text with a little air

    private final Pen pen;
    private final Pen rowPen;
    private final Rectangle2D area;
    private final AxesFrame frame;
    private final Plane plane;
    private final List<Row> rows;
    private final double namesRight;
    private final double placesRight;

    private RowFrame(Pen pen, Pen rowPen, Rectangle2D area, Axis axis, List<Row> rows, List<Row> sharing) {
        this.pen = pen;
        this.rowPen = rowPen;
        this.area = area;
        this.rows = rows;
        double nameWidth = Math.min(widest(sharing, Row::name), 0.3 * area.getWidth());
        double placeWidth = widest(sharing, Row::place);
        double figureWidth = Math.min(widest(sharing, Row::figures), 0.42 * area.getWidth());
        namesRight = area.getX() + pen.em(0.8) + nameWidth;
        placesRight = area.getMaxX() - pen.em(1.4) - figureWidth;
        double left = namesRight + pen.em(1.4);
        double right = placesRight - placeWidth - pen.em(0.6);
        frame = new AxesFrame(axis, Axis.linear("", 0, rows.size()), pen.theme()).withoutUprightNumbers();
        plane = frame.place(new Rectangle2D.Double(left, area.getY(), right - left, area.getHeight()));
    }

    /** Text of rows is made smaller where there are many of them. */
    static RowFrame place(Pen pen, Rectangle2D area, Axis axis, List<Row> rows) {
        return place(pen, area, axis, rows, rows);
    }

    /**
     * Places one of several frames below each other whose columns stand in line.
     *
     * @param sharing the rows of all of them
     */
    static RowFrame place(Pen pen, Rectangle2D area, Axis axis, List<Row> rows, List<Row> sharing) {
        double rowHeight = (area.getHeight() - pen.em(4)) / rows.size();
        double textPx = Math.max(pen.theme().leastPx(), Math.min(pen.em(0.95), rowHeight / 1.15));
        Pen rowPen = new Pen(
                pen.surface(),
                new ChartTheme(pen.theme().palette(), textPx, pen.theme().leastPx()));
        return new RowFrame(pen, rowPen, area, axis, rows, sharing);
    }

    /** What a picture of so many rows needs, in text heights, so that every row can be read. */
    static double leastHeightEm(int rows) {
        return WORDS_AND_AXIS_EM + rows * ROW_EM;
    }

    /** Draws the axis, and every row's words. */
    void paint() {
        frame.paint(pen.surface());
        for (int row = 0; row < rows.size(); row++) {
            paintWords(row, rows.get(row));
        }
    }

    /** Draws the stroke that bars begin at. */
    void paintZero() {
        double zero = x(0);
        pen.line(zero, plane.box().getY(), zero, plane.box().getMaxY(), pen.colour(Ink.QUIET_TEXT), pen.stroke(0.1));
    }

    void paintGlyph(int row, MarkKind kind) {
        boolean strong = rows.get(row).strong();
        rowPen.glyph(
                kind.glyph(),
                namesRight + pen.em(0.75),
                middle(row),
                0.34,
                strong ? pen.colour(kind.ink()) : pen.pale(kind.ink()),
                strong);
    }

    /** One plot of a picture whose spots are its rows, from the top one on. */
    LaidOut.Part part(List<Spot> spots) {
        return new LaidOut.Part(plane, (x, y) -> spots.stream()
                .min(Comparator.comparingDouble(spot -> Math.abs(plane.y(spot.y()) - y))));
    }

    /** What can be read off a row. */
    Spot spot(int part, int row, double x, List<Spot.Reading> readings) {
        Row words = rows.get(row);
        String name = readings.isEmpty() ? words.name() + ": " + words.figures() : words.name();
        return new Spot(part, x, rows.size() - row - 0.5, name, readings);
    }

    double x(double value) {
        return plane.xInside(value);
    }

    Rectangle2D box() {
        return plane.box();
    }

    /** The middle of a row; row 0 is the topmost. */
    double middle(int row) {
        return plane.box().getY() + (row + 0.5) * rowHeight();
    }

    double rowHeight() {
        return plane.box().getHeight() / rows.size();
    }

    double barHeight() {
        return Math.min(0.66 * rowHeight(), pen.em(1.6));
    }

    private void paintWords(int index, Row row) {
        double y = middle(index);
        var colour = pen.colour(row.strong() ? Ink.TEXT : Ink.QUIET_TEXT);
        double nameRoom = namesRight - area.getX() - pen.em(0.4);
        rowPen.textAcross(
                Caption.shortened(row.name(), nameRoom, TextStyle.BODY, rowPen.theme()),
                namesRight,
                y,
                TextStyle.BODY,
                colour,
                Pen.Align.RIGHT);
        rowPen.textAcross(row.place(), placesRight, y, TextStyle.BODY, colour, Pen.Align.RIGHT);
        double left = placesRight + pen.em(0.9);
        rowPen.textAcross(
                Caption.shortened(row.figures(), area.getMaxX() - left - pen.em(0.3), TextStyle.BODY, rowPen.theme()),
                left,
                y,
                TextStyle.BODY,
                colour,
                Pen.Align.LEFT);
    }

    private double widest(List<Row> sharing, Function<Row, String> words) {
        return sharing.stream()
                .mapToDouble(row -> rowPen.width(words.apply(row), TextStyle.BODY))
                .max()
                .orElse(0);
    }
}
