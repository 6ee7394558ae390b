package evenblade.tell.chart;

import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import evenblade.tell.document.FigureFormat;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Measures over the runs of a job, one column per run, with the corrections named between them.
 *
 * @param caption what it was drawn from
 * @param runs their short names, in order of time, at least one
 * @param bands from top to bottom, at least one
 * @param corrections in order of time
 */
public record TrendPicture(Caption caption, List<String> runs, List<Band> bands, List<Correction> corrections)
        implements Picture {
    private static final int MOST_ROWS = 4; // more hide the bands
    private static final double LEAST_BAND_EM = 5; // an axis with two numbers
    private static final double LONGEST_NAME = 0.45; // of the width: there is always room on one side of its staff

    /**
     * A measure over the runs.
     *
     * @param name as written in the key
     * @param values one per run; empty where the run doesn't have it
     */
    public record Line(String name, List<Optional<PlottedEstimate>> values) {
        public Line {
            values = List.copyOf(values);
        }
    }

    /**
     * Measures of one unit, drawn in one band.
     *
     * @param axisTitle with the unit
     * @param lines at least one
     */
    public record Band(String axisTitle, List<Line> lines) {
        public Band {
            lines = List.copyOf(lines);
        }

        private List<PlottedEstimate> estimates() {
            return lines.stream()
                    .flatMap(l -> l.values().stream())
                    .flatMap(Optional::stream)
                    .toList();
        }
    }

    /**
     * Something that was changed.
     *
     * @param beforeRun the index of the run that came next; the number of runs where none did
     * @param text what was done
     */
    public record Correction(int beforeRun, String text) {}

    public TrendPicture {
        runs = List.copyOf(runs);
        bands = List.copyOf(bands);
        corrections = List.copyOf(corrections);
        for (Band band : bands) {
            for (Line line : band.lines()) {
                if (line.values().size() != runs.size()) {
                    throw new IllegalArgumentException("'" + line.name() + "' has "
                            + line.values().size() + " values for " + runs.size() + " runs");
                }
            }
        }
    }

    @Override
    public String title() {
        return "The job so far";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        int look = 0;
        for (Band band : bands()) {
            for (Line line : band.lines()) {
                entries.add(LineLook.of(look++).key(line.name()));
            }
        }
        entries.add(KeyEntry.interval());
        bands().forEach(band -> BarRoom.key(band.axisTitle(), band.estimates()).ifPresent(entries::add));
        if (values().anyMatch(e -> !e.there())) {
            entries.add(KeyEntry.glyph("open: not detected", Glyph.CIRCLE, Ink.QUIET_TEXT, false));
        }
        if (!corrections().isEmpty()) {
            entries.add(KeyEntry.line("correction", Ink.LIMIT, Dash.DOTS));
        }
        return entries;
    }

    private Stream<PlottedEstimate> values() {
        return bands().stream().flatMap(b -> b.estimates().stream());
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        Axis x = Axis.linear("", -0.6, runs().size() - 0.4);
        double runNames = pen.em(2.9);
        double between = pen.em(0.7);
        double rowHeight = pen.lineHeight(TextStyle.SMALL);
        double right = area.getWidth() - pen.em(0.8);
        Plane first = frame(pen, x, bands().get(0), area.getHeight())
                .place(new Rectangle2D.Double(area.getX(), area.getY(), right, area.getHeight()));
        double spare = area.getHeight() - runNames - bands().size() * pen.em(LEAST_BAND_EM);
        int rows = (int) Math.max(1, Math.min(MOST_ROWS, spare / rowHeight));
        FlagRows.Layout names = correctionNames(pen, first, rows);
        double top = area.getY() + names.rows() * rowHeight + pen.em(0.4);
        double height = (area.getMaxY() - runNames - top) / bands().size();
        int look = 0;
        List<Plane> planes = new ArrayList<>();
        for (int i = 0; i < bands().size(); i++) {
            Band band = bands().get(i);
            AxesFrame frame = frame(pen, x, band, height - between);
            Plane plane = frame.place(new Rectangle2D.Double(area.getX(), top + i * height, right, height - between));
            planes.add(plane);
            frame.paint(pen.surface());
            for (Correction correction : corrections()) {
                double at = plane.x(correction.beforeRun() - 0.5);
                pen.line(
                        at,
                        plane.box().getY(),
                        at,
                        plane.box().getMaxY(),
                        pen.colour(Ink.LIMIT),
                        pen.stroke(0.1, Dash.DOTS));
            }
            for (Line line : band.lines()) {
                LineLook.of(look++).paint(pen, plane, placed(line));
            }
        }
        paintCorrectionNames(pen, planes.get(0), names, rowHeight);
        paintRunNames(pen, planes.get(planes.size() - 1));
        List<LaidOut.Part> parts = new ArrayList<>();
        for (int i = 0; i < planes.size(); i++) {
            parts.add(LaidOut.fixed(planes.get(i), spots(i)));
        }
        return LaidOut.of(parts);
    }

    private List<Spot> spots(int part) {
        List<Spot> spots = new ArrayList<>();
        Band band = bands().get(part);
        String whole = band.axisTitle();
        String unit = whole.substring(whole.indexOf('(') + 1).replace(")", "");
        for (Line line : band.lines()) {
            for (int i = 0; i < runs().size(); i++) {
                String name = runs().get(i) + ", " + line.name();
                int run = i;
                line.values()
                        .get(i)
                        .ifPresent(e -> spots.add(
                                new Spot(part, run, e.value(), name + besideName(e, unit), readings(e, unit))));
            }
        }
        return spots;
    }

    /** What its error can't say: below what it lies, or a range that goes further than down to zero. */
    private static String besideName(PlottedEstimate e, String unit) {
        if (!e.there()) {
            return ", not detected: below " + FigureFormat.rough(e.ciHigh()) + " " + unit;
        }
        return half(e) < e.value()
                ? ""
                : ", 95 %: " + FigureFormat.rough(e.ciLow()) + " to " + FigureFormat.rough(e.ciHigh()) + " " + unit;
    }

    private static List<Spot.Reading> readings(PlottedEstimate e, String unit) {
        return e.there()
                ? List.of(new Spot.Reading(Spot.What.AMPLITUDE, e.value(), half(e) < e.value() ? half(e) : 0, unit, ""))
                : List.of();
    }

    private static double half(PlottedEstimate e) {
        return (e.ciHigh() - e.ciLow()) / 2;
    }

    private static AxesFrame frame(Pen pen, Axis x, Band band, double height) {
        return new AxesFrame(x, BarRoom.axis(title(pen, band, height), band.estimates()), pen.theme())
                .withoutLyingNumbers()
                .withLeftRoom(pen.em(6.2));
    }

    /** The unit alone where a band is too low for more, nothing where it is too low for that. */
    private static String title(Pen pen, Band band, double height) {
        String whole = band.axisTitle();
        String unit = whole.substring(whole.indexOf('(') + 1).replace(")", "");
        return Stream.of(whole, unit)
                .filter(words -> pen.width(words, TextStyle.BODY) <= height)
                .findFirst()
                .orElse("");
    }

    private static List<PlacedEstimate> placed(Line line) {
        List<PlacedEstimate> points = new ArrayList<>();
        for (int run = 0; run < line.values().size(); run++) {
            int at = run;
            line.values().get(run).ifPresent(e -> points.add(new PlacedEstimate(at, e)));
        }
        return points;
    }

    private FlagRows.Layout correctionNames(Pen pen, Plane plane, int mostRows) {
        List<FlagRows.Flag> flags = new ArrayList<>();
        for (int i = 0; i < corrections().size(); i++) {
            flags.add(new FlagRows.Flag(
                    plane.x(corrections().get(i).beforeRun() - 0.5),
                    pen.em(0.4) + pen.width(name(pen, plane, i), TextStyle.SMALL),
                    i));
        }
        return FlagRows.layOut(flags, plane.box().getX(), plane.box().getMaxX(), pen.em(0.6), mostRows);
    }

    /** Its number with what was done; where one of them is too long for that, the numbers alone. */
    private String name(Pen pen, Plane plane, int correction) {
        boolean whole = corrections().stream()
                .allMatch(each -> pen.width(each.text(), TextStyle.SMALL)
                        <= LONGEST_NAME * plane.box().getWidth());
        String number = String.valueOf(correction + 1);
        return whole ? number + ". " + corrections().get(correction).text() : number;
    }

    private void paintCorrectionNames(Pen pen, Plane plane, FlagRows.Layout layout, double rowHeight) {
        for (int i = 0; i < corrections().size(); i++) {
            String name = name(pen, plane, i);
            double staff = plane.x(corrections().get(i).beforeRun() - 0.5);
            layout.places().get(i).ifPresent(place -> {
                double base = plane.box().getY() - pen.em(0.35) - place.row() * rowHeight;
                pen.line(
                        staff,
                        base - pen.em(0.7),
                        staff,
                        plane.box().getY(),
                        pen.colour(Ink.LIMIT),
                        pen.stroke(0.1, Dash.DOTS));
            });
        }
        for (int i = 0; i < corrections().size(); i++) {
            String name = name(pen, plane, i);
            layout.places().get(i).ifPresent(place -> {
                double base = plane.box().getY() - pen.em(0.35) - place.row() * rowHeight;
                double left = place.left() + (place.leftward() ? 0 : pen.em(0.4));
                pen.fill(
                        new Rectangle2D.Double(
                                left, base - pen.em(0.75), pen.width(name, TextStyle.SMALL), pen.em(0.95)),
                        pen.colour(Ink.PAPER));
                pen.text(name, left, base, TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
            });
        }
    }

    /** Every name, shortened if need be, where a column is wide enough to read one, else every second and so on. */
    private void paintRunNames(Pen pen, Plane plane) {
        double column = plane.box().getWidth() / runs().size();
        double widest = runs().stream()
                .mapToDouble(r -> pen.width(r, TextStyle.SMALL))
                .max()
                .orElse(0);
        double room = Math.max(column, pen.em(6));
        int every = (int) Math.max(1, Math.ceil(Math.min(widest + pen.em(0.5), room) / column));
        for (int i = 0; i < runs().size(); i += every) {
            double half = Math.min(every * column / 2 - pen.em(0.2), plane.box().getMaxX() + pen.em(0.8) - plane.x(i));
            pen.text(
                    Caption.shortened(runs().get(i), 2 * half, TextStyle.SMALL, pen.theme()),
                    plane.x(i),
                    plane.box().getMaxY() + pen.em(1.4),
                    TextStyle.SMALL,
                    pen.colour(Ink.TEXT),
                    Pen.Align.MIDDLE);
        }
        pen.text(
                "run, in order of time",
                plane.box().getCenterX(),
                plane.box().getMaxY() + pen.em(2.7),
                TextStyle.BODY,
                pen.colour(Ink.TEXT),
                Pen.Align.MIDDLE);
    }
}
