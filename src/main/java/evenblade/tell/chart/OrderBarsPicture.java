package evenblade.tell.chart;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.Level;
import evenblade.tell.chart.KeyEntry.BelowMark;
import evenblade.tell.document.FigureFormat;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Every order of a dwell as a lying bar with its 95 % interval and its number; undetected ones as 'below'. */
public final class OrderBarsPicture implements Picture {
    /**
     * What is drawn.
     *
     * @param caption what it was drawn from
     * @param unit of the channel
     * @param bars from top to bottom
     */
    public record Data(Caption caption, SignalUnit unit, List<OrderBar> bars) {
        public Data {
            bars = List.copyOf(bars);
            if (bars.isEmpty()) {
                throw new IllegalArgumentException("no orders to draw");
            }
        }
    }

    private final Data data;
    private final ShownUnit unit;
    private final List<OrderBar> bars;

    public OrderBarsPicture(Data data) {
        this(data, ShownUnit.AS_MEASURED, data.bars());
    }

    private OrderBarsPicture(Data data, ShownUnit unit, List<OrderBar> bars) {
        this.data = data;
        this.unit = unit;
        this.bars = bars;
    }

    @Override
    public String title() {
        return "Amplitude of each order";
    }

    @Override
    public Caption caption() {
        return data.caption();
    }

    @Override
    public List<KeyEntry> key() {
        List<KeyEntry> entries = new ArrayList<>();
        for (MarkKind kind : MarkKind.values()) {
            if (bars.stream().anyMatch(b -> b.kind() == kind)) {
                entries.add(KeyEntry.glyph(kind.words(), kind.glyph(), kind.ink(), true));
            }
        }
        entries.add(KeyEntry.interval());
        if (bars.stream().anyMatch(b -> b.level() instanceof Level.Measured m && !m.detected())) {
            entries.add(KeyEntry.below());
        }
        return entries;
    }

    @Override
    public LaidOut paintBody(Pen pen, Rectangle2D area) {
        double largest = 0;
        for (OrderBar bar : bars) {
            if (bar.level() instanceof Level.Measured m) {
                largest = Math.max(largest, m.ciHigh());
            }
        }
        RowFrame rows = RowFrame.place(
                pen,
                area,
                Axis.fromZero(unit.title(data.unit()), largest),
                bars.stream().map(OrderBarsPicture::row).toList());
        rows.paint();
        for (int i = 0; i < bars.size(); i++) {
            OrderBar bar = bars.get(i);
            rows.paintGlyph(i, bar.kind());
            if (bar.level() instanceof Level.Measured measured) {
                paintBar(pen, rows, i, bar, measured);
            }
        }
        rows.paintZero();
        return LaidOut.of(List.of(rows.part(spots(rows))));
    }

    private List<Spot> spots(RowFrame rows) {
        List<Spot> spots = new ArrayList<>();
        for (int i = 0; i < bars.size(); i++) {
            OrderBar bar = bars.get(i);
            List<Spot.Reading> readings = new ArrayList<>();
            double x = 0;
            if (bar.level() instanceof Level.Measured measured && measured.detected()) {
                x = measured.amplitude();
                readings.add(Spot.Reading.of(Spot.What.FREQUENCY, bar.frequencyHz()));
                readings.add(Spot.Reading.of(Spot.What.PROPELLER_ORDER, bar.propellerOrder()));
                readings.add(new Spot.Reading(
                        Spot.What.AMPLITUDE, x, FigureFormat.half(measured), unit.unit(data.unit()), ""));
            }
            spots.add(rows.spot(0, i, x, readings));
        }
        return spots;
    }

    @Override
    public double leastHeightEm() {
        return RowFrame.leastHeightEm(bars.size());
    }

    @Override
    public List<ShownUnit> units() {
        return ShownUnit.of(data.unit());
    }

    @Override
    public Picture in(ShownUnit other) {
        return other == unit
                ? this
                : new OrderBarsPicture(
                        data,
                        other,
                        data.bars().stream()
                                .map(each -> each.in(other, data.unit()))
                                .toList());
    }

    private void paintBar(Pen pen, RowFrame rows, int row, OrderBar bar, Level.Measured measured) {
        double y = rows.middle(row);
        double zero = rows.x(0);
        if (!measured.detected()) {
            BelowMark.paint(pen, rows.x(measured.ciHigh()), y, pen.colour(Ink.QUIET_TEXT));
            return;
        }
        double half = 0.5 * rows.barHeight();
        Color colour = pen.colour(bar.kind().ink());
        Rectangle2D box = new Rectangle2D.Double(zero, y - half, rows.x(measured.amplitude()) - zero, 2 * half);
        Hatching.fill(pen, box, colour, bar.kind());
        double end = rows.x(measured.ciHigh());
        pen.errorBar(rows.x(Math.max(0, measured.ciLow())), y, end, y, pen.colour(Ink.TEXT));
    }

    private static boolean detected(OrderBar bar) {
        return bar.level() instanceof Level.Measured measured && measured.detected();
    }

    private static RowFrame.Row row(OrderBar bar) {
        return new RowFrame.Row(bar.name(), FigureFormat.plain(bar.frequencyHz()) + " Hz", figures(bar), detected(bar));
    }

    private static String figures(OrderBar bar) {
        String text;
        if (bar.level() instanceof Level.Measured measured) {
            text = FigureFormat.level(measured);
        } else {
            OptionalDouble folds = ((Level.BeyondRange) bar.level()).foldsToHz();
            text = folds.isPresent()
                    ? "beyond range, folds to " + FigureFormat.plain(folds.getAsDouble()) + " Hz"
                    : "above the usable band";
        }
        return bar.notToldApartFrom().isEmpty()
                ? text
                : text + ", not separated from " + String.join(", ", bar.notToldApartFrom());
    }
}
