package evenblade.face.cli;

import evenblade.face.app.FigureText;
import evenblade.face.app.OrderCells;
import evenblade.machine.installation.OrderLine;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What a recording shows in a few lines: its speed, and what shook most telling at each dwell. */
final class FoundText {
    private static final int MOST_DWELLS = 6;

    private FoundText() {}

    static List<String> lines(RunOrders run) {
        List<String> lines = new ArrayList<>(LineWrapper.lines("  ", "  ", speed(run)));
        run.channels().stream().limit(1).forEach(channel -> {
            channel.dwells().stream()
                    .limit(MOST_DWELLS)
                    .map(dwell -> dwell(run, channel, dwell))
                    .forEach(line -> lines.addAll(LineWrapper.lines("  ", "    ", line)));
            int more = channel.dwells().size() - MOST_DWELLS;
            if (more > 0) {
                lines.add("  and " + more + " more");
            }
        });
        return lines;
    }

    private static String speed(RunOrders run) {
        SpeedResult speed = run.speed();
        if (speed.main().isEmpty()) {
            return "Speed NOT FOUND, and none was entered: no order can be measured.";
        }
        Dwell main = speed.main().get();
        if (!speed.confirmed()) {
            return String.format(
                    Locale.ROOT,
                    "Speed NOT CONFIRMED: the figures stand on the entered %.0f engine rpm alone.",
                    main.propellerRpm() * run.ratio());
        }
        int dwells = speed.dwells().size();
        return "Speed confirmed by the " + (speed.origin() == SpeedResult.Origin.MARK ? "mark" : "signal")
                + ": engine " + FigureText.engineRpm(main, run) + "; "
                + (dwells == 0 ? "no dwell" : dwells == 1 ? "1 dwell" : dwells + " dwells") + ".";
    }

    private static String dwell(RunOrders run, ChannelOrders channel, DwellOrders dwell) {
        List<OrderCells> cells = OrderCells.of(dwell, run.speed().confirmed());
        String levels = IntStream.range(0, cells.size())
                .filter(i -> telling(dwell.readings().get(i).line()))
                .mapToObj(i -> level(cells.get(i)))
                .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "%.0f engine rpm: %s (%s peak, channel '%s')",
                dwell.dwell().propellerRpm() * run.ratio(),
                levels,
                channel.unit().display(),
                channel.channel());
    }

    private static boolean telling(OrderLine line) {
        return line.propellerOnce() || line.bladePass();
    }

    private static String level(OrderCells cell) {
        String range = cell.range().isEmpty() ? "" : " ± " + cell.range();
        return cell.name() + " " + (cell.amplitude().isEmpty() ? cell.remark() : cell.amplitude() + range);
    }
}
