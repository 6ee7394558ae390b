package evenblade.tell.chart;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.DwellOrders.UnexplainedLine;
import evenblade.measure.orders.Level;
import evenblade.measure.orders.OrderReading;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.OnePlace;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Turns what a dwell says of its lines into what pictures show: lines that lie on each other become one. */
public final class OrderRows {
    private OrderRows() {}

    /** One row per frequency, in the order of the table: propeller first. */
    public static List<OrderBar> bars(DwellOrders dwell) {
        return OnePlace.of(dwell.readings(), OrderReading::line).stream()
                .map(OrderRows::bar)
                .toList();
    }

    /** These rows as marks, then the steady lines that no order explains. */
    public static List<OrderMark> marks(DwellOrders dwell) {
        Stream<OrderMark> orders = bars(dwell).stream().map(OrderRows::mark);
        Stream<OrderMark> others = dwell.unexplained().stream().map(OrderRows::mark);
        return Stream.concat(orders, others).toList();
    }

    /** These marks without amplitudes, for pictures of several runs in which these differ. */
    public static List<OrderMark> lines(DwellOrders dwell) {
        return marks(dwell).stream().map(OrderMark::withoutAmplitude).toList();
    }

    /** A frequency that leaves a little room above the highest propeller, crank or firing order. */
    public static double upToHz(DwellOrders dwell) {
        return 1.08
                * dwell.readings().stream()
                        .filter(r -> r.line().role() != OrderLine.Role.MESH)
                        .mapToDouble(OrderReading::frequencyHz)
                        .max()
                        .orElseThrow();
    }

    private static OrderBar bar(OnePlace<OrderReading> place) {
        List<OrderReading> group = place.all();
        OrderReading first = place.first();
        List<OrderLine> own = group.stream().map(OrderReading::line).toList();
        List<String> near = group.stream()
                .flatMap(r -> r.inseparableFrom().stream())
                .filter(line -> !own.contains(line))
                .distinct()
                .map(OrderLine::name)
                .toList();
        return new OrderBar(
                place.name(), kind(group), first.line().propellerOrder(), first.frequencyHz(), first.level(), near);
    }

    /** Whose line it is that these readings share; at least one. */
    public static MarkKind kind(List<OrderReading> group) {
        List<Shaft> shafts = group.stream().map(r -> r.line().of()).distinct().collect(Collectors.toList());
        if (shafts.size() > 1) {
            return MarkKind.BOTH;
        }
        return shafts.get(0) == Shaft.PROPELLER ? MarkKind.PROPELLER : MarkKind.CRANK;
    }

    private static OrderMark mark(OrderBar bar) {
        OptionalDouble amplitude = OptionalDouble.empty();
        double half = 0;
        boolean detected = false;
        if (bar.level() instanceof Level.Measured measured) {
            amplitude = OptionalDouble.of(measured.amplitude());
            half = FigureFormat.half(measured);
            detected = measured.detected();
        }
        return new OrderMark(
                bar.name(), bar.kind(), bar.propellerOrder(), bar.frequencyHz(), amplitude, half, detected);
    }

    private static OrderMark mark(UnexplainedLine line) {
        return new OrderMark(
                FigureFormat.plain(line.frequencyHz()) + " Hz",
                MarkKind.OTHER,
                line.propellerOrder(),
                line.frequencyHz(),
                OptionalDouble.of(line.amplitude()),
                true);
    }
}
