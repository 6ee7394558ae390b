package evenblade.tell.chart;

import evenblade.tell.document.FigureFormat;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * How far each blade and each hub position is from the mean, with intervals: what goes with which.
 *
 * @param caption what it was drawn from
 * @param axisTitle what deviates, with its unit, for instance {@code deviation of the tip (mm)}
 * @param blades from top to bottom
 * @param positions below the blades
 */
public record DeviationPicture(Caption caption, String axisTitle, List<Row> blades, List<Row> positions)
        implements Picture {
    /**
     * One blade or one position.
     *
     * @param name for instance {@code blade C} or {@code position 2}
     * @param deviation from the mean of its kind; there where zero lies outside its interval
     */
    public record Row(String name, PlottedEstimate deviation) {}

    public DeviationPicture {
        blades = List.copyOf(blades);
        positions = List.copyOf(positions);
        if (blades.isEmpty() && positions.isEmpty()) {
            throw new IllegalArgumentException("no deviations to draw");
        }
    }

    @Override
    public String title() {
        return "What goes with the blade, what stays with the hub";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        if (!blades().isEmpty()) {
            entries.add(KeyEntry.glyph("blade", Glyph.TRIANGLE, Ink.PROPELLER, true));
        }
        if (!positions().isEmpty()) {
            entries.add(KeyEntry.glyph("hub position", Glyph.SQUARE, Ink.CRANK, true));
        }
        entries.add(KeyEntry.interval());
        entries.add(KeyEntry.glyph("open: within the reading error", Glyph.CIRCLE, Ink.QUIET_TEXT, false));
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        List<Row> all = Stream.concat(blades().stream(), positions().stream()).toList();
        double reach = all.stream()
                .mapToDouble(r -> Math.max(
                        Math.abs(r.deviation().ciLow()), Math.abs(r.deviation().ciHigh())))
                .max()
                .orElseThrow();
        double end = reach > 0 ? 1.1 * reach : 1;
        RowFrame rows = RowFrame.place(
                pen,
                area,
                Axis.linear(axisTitle(), -end, end),
                all.stream()
                        .map(r -> new RowFrame.Row(
                                r.name(),
                                "",
                                figures(r.deviation()),
                                r.deviation().there()))
                        .toList());
        rows.paint();
        rows.paintZero();
        for (int i = 0; i < all.size(); i++) {
            boolean blade = i < blades().size();
            PlottedEstimate deviation = all.get(i).deviation();
            double y = rows.middle(i);
            pen.errorBar(rows.x(deviation.ciLow()), y, rows.x(deviation.ciHigh()), y, pen.colour(Ink.TEXT));
            pen.glyph(
                    blade ? Glyph.TRIANGLE : Glyph.SQUARE,
                    rows.x(deviation.value()),
                    y,
                    0.5,
                    pen.colour(blade ? Ink.PROPELLER : Ink.CRANK),
                    deviation.there());
        }
        if (!blades().isEmpty() && !positions().isEmpty()) {
            double y = rows.middle(blades().size()) - rows.rowHeight() / 2;
            pen.line(
                    rows.box().getX(),
                    y,
                    rows.box().getMaxX(),
                    y,
                    pen.colour(Ink.QUIET_TEXT),
                    pen.stroke(0.06, Dash.DOTS));
        }
        return LaidOut.NONE;
    }

    private static String figures(PlottedEstimate deviation) {
        return FigureFormat.offset(deviation.value(), 2) + " (" + FigureFormat.offset(deviation.ciLow(), 2) + " to "
                + FigureFormat.offset(deviation.ciHigh(), 2) + ")";
    }
}
