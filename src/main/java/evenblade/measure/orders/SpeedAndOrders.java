package evenblade.measure.orders;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedFinder;
import evenblade.measure.speed.SpeedPrior;
import evenblade.measure.speed.SpeedResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * A speed and the orders measured at it, each held against the other: a speed taken from the lines is confirmed only
 * where at least one line is detected in a dwell, and a dwell that bears no figures is no dwell of the speed's.
 *
 * @param speed the speed that is left
 * @param channels orders at that speed, one entry per channel
 */
public record SpeedAndOrders(SpeedResult speed, List<ChannelOrders> channels) {
    public SpeedAndOrders {
        channels = List.copyOf(channels);
    }

    /**
     * Measures the orders and looks whether they bear the speed out.
     *
     * @param expectation where the speed was looked for; its entered speed is used where the one found isn't borne out
     */
    public static SpeedAndOrders measure(
            Recording recording, List<Channel> signals, OrderTable table, SpeedResult found, SpeedPrior expectation) {
        SpeedAndOrders first = measure(recording, signals, table, found);
        boolean fromLines = found.confirmed() && found.origin() == SpeedResult.Origin.SIGNAL;
        if (!fromLines || first.speed.dwells().isEmpty() || first.anyDetected()) {
            return first;
        }
        return measure(recording, signals, table, SpeedFinder.notBorneOut(found, recording, expectation));
    }

    private static SpeedAndOrders measure(
            Recording recording, List<Channel> signals, OrderTable table, SpeedResult found) {
        SensorHold.Held held = SensorHold.through(found.dwells(), found.track(), recording, signals);
        SpeedResult speed = held.warnings().isEmpty() ? found : found.withDwells(held.dwells(), held.warnings());
        OrderMeter.Measured orders = OrderMeter.of(recording, signals, table, speed);
        Set<Dwell> measured = new HashSet<>();
        orders.channels().forEach(channel -> channel.dwells().forEach(each -> measured.add(each.dwell())));
        List<Warning> warnings = new ArrayList<>();
        for (Dwell dwell : speed.dwells()) {
            if (!measured.contains(dwell) && !orders.channels().isEmpty()) {
                warnings.add(Warning.of(
                        WarningCode.DWELL_WITHOUT_FIGURES,
                        Subject.Whole.RECORDING,
                        Measure.TIME.of(dwell.fromS()),
                        Measure.TIME.of(dwell.toS())));
            }
        }
        List<Dwell> left = warnings.isEmpty()
                ? speed.dwells()
                : speed.dwells().stream().filter(measured::contains).toList();
        orders.rattling()
                .forEach(channel -> warnings.add(
                        Warning.of(WarningCode.SENSOR_RATTLES, new Subject.Channel(channel), new Quoted(channel))));
        return new SpeedAndOrders(warnings.isEmpty() ? speed : speed.withDwells(left, warnings), orders.channels());
    }

    private boolean anyDetected() {
        return channels.stream()
                .flatMap(channel -> channel.dwells().stream())
                .flatMap(dwell -> dwell.readings().stream())
                .anyMatch(OrderReading::detected);
    }
}
