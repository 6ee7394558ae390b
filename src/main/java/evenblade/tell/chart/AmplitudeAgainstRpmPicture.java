package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * How the amplitude of a few orders goes with speed: a peak at one rpm is a resonance, a steady rise isn't.
 *
 * @param caption what it was drawn from
 * @param unit of the channel
 * @param lines with at least one point between them
 */
public record AmplitudeAgainstRpmPicture(Caption caption, SignalUnit unit, List<Line> lines) implements Picture {
    /**
     * One order over speed.
     *
     * @param name as written in the key
     * @param points by engine rpm, rising
     */
    public record Line(String name, List<PlacedEstimate> points) {
        public Line {
            points = List.copyOf(points);
        }
    }

    public AmplitudeAgainstRpmPicture {
        lines = List.copyOf(lines);
        if (lines.stream().allMatch(l -> l.points().isEmpty())) {
            throw new IllegalArgumentException("no amplitudes to draw against rpm");
        }
    }

    @Override
    public String title() {
        return "Amplitude against engine speed";
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        for (int i = 0; i < lines().size(); i++) {
            entries.add(LineLook.of(i).key(lines().get(i).name()));
        }
        entries.add(KeyEntry.interval());
        BarRoom.key(AmplitudeScale.title(unit()), estimates()).ifPresent(entries::add);
        return entries;
    }

    private Stream<PlacedEstimate> points() {
        return lines().stream().flatMap(l -> l.points().stream());
    }

    private List<PlottedEstimate> estimates() {
        return points().map(PlacedEstimate::estimate).toList();
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        List<PlacedEstimate> all = points().toList();
        double slowest = all.stream().mapToDouble(PlacedEstimate::x).min().orElseThrow();
        double fastest = all.stream().mapToDouble(PlacedEstimate::x).max().orElseThrow();
        AxesFrame frame = new AxesFrame(
                Axis.around("engine speed (rpm)", slowest, fastest),
                BarRoom.axis(AmplitudeScale.title(unit()), estimates()),
                pen.theme());
        Plane plane = frame.place(
                new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - pen.em(0.8), area.getHeight()));
        frame.paint(pen.surface());
        for (int i = 0; i < lines().size(); i++) {
            LineLook.of(i).paint(pen, plane, lines().get(i).points());
        }
        return LaidOut.NONE;
    }
}
