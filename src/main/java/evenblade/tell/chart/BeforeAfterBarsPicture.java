package evenblade.tell.chart;

import evenblade.tell.chart.KeyEntry.BelowMark;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Every order of two runs, before over after, with intervals and the change in words. */
public final class BeforeAfterBarsPicture implements Picture {
    /**
     * One order.
     *
     * @param name as labelled
     * @param kind whose line it is
     * @param before in the strip's unit
     * @param after in the strip's unit
     * @param change in words, for instance {@code lower, −32 % (−38 to −25)}
     */
    public record Row(String name, MarkKind kind, PlottedEstimate before, PlottedEstimate after, String change) {}

    /**
     * What is drawn.
     *
     * @param caption what it was drawn from: both runs
     * @param beforeName the earlier run
     * @param afterName the later run
     * @param strips from top to bottom, at least one
     */
    public record Data(Caption caption, String beforeName, String afterName, List<Strip> strips) {
        public Data {
            strips = List.copyOf(strips);
            if (strips.isEmpty()) {
                throw new IllegalArgumentException("no orders to draw");
            }
        }

        /** All rows in one unit, on one axis. */
        public Data(Caption caption, String beforeName, String afterName, String axisTitle, List<Row> rows) {
            this(caption, beforeName, afterName, List.of(new Strip(axisTitle, rows)));
        }
    }

    /**
     * Rows of one unit on an axis of their own.
     *
     * @param axisTitle what is drawn, with its unit
     * @param rows from top to bottom, at least one
     */
    public record Strip(String axisTitle, List<Row> rows) {
        public Strip {
            rows = List.copyOf(rows);
            if (rows.isEmpty()) {
                throw new IllegalArgumentException("a strip without rows");
            }
        }

        private List<RowFrame.Row> words() {
            return rows.stream()
                    .map(r -> new RowFrame.Row(
                            r.name(),
                            "",
                            r.change(),
                            r.before().there() || r.after().there()))
                    .toList();
        }
    }

    private final Data data;
    private final String title;

    public BeforeAfterBarsPicture(Data data) {
        this(data, "Each order before and after");
    }

    /** Of other things than orders. */
    public BeforeAfterBarsPicture(Data data, String title) {
        this.data = data;
        this.title = title;
    }

    @Override
    public String title() {
        return title;
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> key = new ArrayList<>(List.of(
                new KeyEntry(
                        "before: " + data.beforeName(),
                        (pen, x, y) -> Hatching.rising(pen, sample(pen, x, y), pen.colour(Ink.BEFORE))),
                new KeyEntry(
                        "after: " + data.afterName(),
                        (pen, x, y) -> pen.fill(sample(pen, x, y), pen.colour(Ink.AFTER)))));
        if (estimates().anyMatch(each -> each.ciHigh() > each.ciLow())) {
            key.add(KeyEntry.interval());
        }
        if (estimates().anyMatch(each -> !each.there())) {
            key.add(KeyEntry.below());
        }
        return key;
    }

    private Stream<PlottedEstimate> estimates() {
        return data.strips().stream()
                .flatMap(strip -> strip.rows().stream())
                .flatMap(row -> Stream.of(row.before(), row.after()));
    }

    private static Rectangle2D sample(Pen pen, double x, double y) {
        double half = pen.em(0.45 * KeyEntry.SAMPLE_EM);
        return new Rectangle2D.Double(x - half, y - pen.em(0.3), 2 * half, pen.em(0.6));
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        List<RowFrame.Row> all =
                data.strips().stream().flatMap(strip -> strip.words().stream()).toList();
        RowFrame whole = RowFrame.place(pen, area, axis(data.strips().get(0)), all);
        double axes = area.getHeight() - whole.box().getHeight();
        double rowHeight = (area.getHeight() - axes * data.strips().size()) / all.size();
        double top = area.getY();
        List<LaidOut.Part> parts = new ArrayList<>();
        for (Strip strip : data.strips()) {
            double height = axes + rowHeight * strip.rows().size();
            Rectangle2D part = new Rectangle2D.Double(area.getX(), top, area.getWidth(), height);
            RowFrame rows = RowFrame.place(pen, part, axis(strip), strip.words(), all);
            paintStrip(pen, strip, rows);
            parts.add(rows.part(spots(parts.size(), strip, rows)));
            top += height;
        }
        return LaidOut.of(parts);
    }

    private List<Spot> spots(int part, Strip strip, RowFrame rows) {
        String unit =
                strip.axisTitle().substring(strip.axisTitle().indexOf('(') + 1).replace(")", "");
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < strip.rows().size(); i++) {
            Row row = strip.rows().get(i);
            spots.add(rows.spot(
                    part,
                    i,
                    row.after().value(),
                    Stream.of(reading(row.before(), unit, "before"), reading(row.after(), unit, "after"))
                            .flatMap(Optional::stream)
                            .toList()));
        }
        return spots;
    }

    private static Optional<Spot.Reading> reading(PlottedEstimate estimate, String unit, String of) {
        return estimate.there()
                ? Optional.of(new Spot.Reading(
                        Spot.What.AMPLITUDE, estimate.value(), (estimate.ciHigh() - estimate.ciLow()) / 2, unit, of))
                : Optional.empty();
    }

    @Override
    public double leastHeightEm() {
        return RowFrame.leastHeightEm(
                data.strips().stream().mapToInt(each -> each.rows().size() + 3).sum());
    }

    private static Axis axis(Strip strip) {
        double largest = strip.rows().stream()
                .flatMap(r -> Stream.of(r.before(), r.after()))
                .mapToDouble(PlottedEstimate::ciHigh)
                .max()
                .orElse(0);
        return Axis.fromZero(strip.axisTitle(), largest);
    }

    private static void paintStrip(Pen pen, Strip strip, RowFrame rows) {
        rows.paint();
        for (int i = 0; i < strip.rows().size(); i++) {
            Row row = strip.rows().get(i);
            rows.paintGlyph(i, row.kind());
            double height = 0.4 * rows.rowHeight();
            paintBar(pen, rows, rows.middle(i) - 0.52 * height, 0.9 * height, row.before(), true);
            paintBar(pen, rows, rows.middle(i) + 0.52 * height, 0.9 * height, row.after(), false);
        }
        rows.paintZero();
    }

    private static void paintBar(
            Pen pen, RowFrame rows, double y, double height, PlottedEstimate estimate, boolean before) {
        if (!estimate.there()) {
            BelowMark.paint(pen, rows.x(estimate.ciHigh()), y, pen.colour(before ? Ink.BEFORE : Ink.AFTER));
            return;
        }
        double zero = rows.x(0);
        Rectangle2D box =
                new Rectangle2D.Double(zero, y - height / 2, Math.max(0, rows.x(estimate.value()) - zero), height);
        if (before) {
            Hatching.rising(pen, box, pen.colour(Ink.BEFORE));
        } else {
            pen.fill(box, pen.colour(Ink.AFTER));
        }
        if (estimate.ciHigh() > estimate.ciLow()) {
            pen.errorBar(rows.x(estimate.ciLow()), y, rows.x(estimate.ciHigh()), y, pen.colour(Ink.TEXT));
        }
    }
}
