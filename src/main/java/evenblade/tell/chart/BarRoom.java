package evenblade.tell.chart;

import evenblade.tell.document.FigureFormat;
import java.awt.geom.Path2D;
import java.util.List;
import java.util.Optional;

/**
 * The room that error bars get on an upright axis from zero: the axis is made for the values. A bar that would press
 * them flat is cut at the frame, with an arrow there, and the key says how far the longest goes on.
 */
final class BarRoom {
    /** Times the largest value: bars of usual runs end below it, and the values still fill more than half the height. */
    private static final double TIMES_LARGEST = 1.6;

    private static final double HEAD_LONG_EM = 0.5; // by eye
    private static final double HEAD_WIDE_EM = 0.28; // as the end strokes of a bar

    private BarRoom() {}

    /** From 0 to a round number above every bar, or above every value where bars go too far beyond. */
    static Axis axis(String title, List<PlottedEstimate> estimates) {
        return Axis.fromZero(title, Math.min(longest(estimates), TIMES_LARGEST * largest(estimates)));
    }

    /** What the key says of bars that go beyond an axis; empty where none does. */
    static Optional<KeyEntry> key(String axisTitle, List<PlottedEstimate> estimates) {
        double longest = longest(estimates);
        return longest > axis(axisTitle, estimates).max()
                ? Optional.of(new KeyEntry(words(axisTitle, longest), BarRoom::sample))
                : Optional.empty();
    }

    private static String words(String axisTitle, double longest) {
        int bracket = axisTitle.indexOf('(');
        String what = bracket < 0 ? axisTitle : axisTitle.substring(0, bracket).strip();
        String unit = bracket < 0 ? "" : axisTitle.substring(bracket + 1).replace(")", "");
        return "bar cut at the frame: " + what + " goes up to " + FigureFormat.rough(longest)
                + (unit.isEmpty() || unit.startsWith("no ") ? "" : " " + unit);
    }

    private static void sample(Pen pen, double x, double y) {
        paint(pen, x, y + pen.em(0.5), y - pen.em(0.5));
    }

    /** An upright bar that goes on beyond the frame: no end stroke there but an arrow head. */
    static void paint(Pen pen, double x, double from, double frame) {
        double along = pen.em(HEAD_LONG_EM);
        double across = pen.em(HEAD_WIDE_EM);
        pen.line(x, from, x, frame, pen.colour(Ink.QUIET_TEXT), pen.stroke(0.11));
        pen.line(x - across, from, x + across, from, pen.colour(Ink.QUIET_TEXT), pen.stroke(0.11));
        Path2D head = new Path2D.Double();
        head.moveTo(x, frame);
        head.lineTo(x - across, frame + along);
        head.lineTo(x + across, frame + along);
        head.closePath();
        pen.fill(head, pen.colour(Ink.TEXT));
    }

    private static double longest(List<PlottedEstimate> estimates) {
        return estimates.stream().mapToDouble(PlottedEstimate::ciHigh).max().orElse(0);
    }

    /** Of what stands out; where nothing does, what all of it lies below. */
    private static double largest(List<PlottedEstimate> estimates) {
        return estimates.stream()
                .filter(PlottedEstimate::there)
                .mapToDouble(PlottedEstimate::value)
                .max()
                .orElse(longest(estimates));
    }
}
