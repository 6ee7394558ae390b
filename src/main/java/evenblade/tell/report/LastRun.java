package evenblade.tell.report;

import evenblade.judge.comparison.MeasuredRun;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import java.util.Comparator;
import java.util.Optional;

/** Which part of a run the short report speaks of: one channel, and its longest dwell. */
final class LastRun {
    private LastRun() {}

    /** The channel of that name, else the first. */
    static Optional<ChannelOrders> channel(MeasuredRun run, Optional<String> wanted) {
        return run.channels().stream()
                .filter(each -> wanted.filter(each.channel()::equals).isPresent())
                .findFirst()
                .or(() -> run.channels().stream().findFirst());
    }

    static Optional<DwellOrders> longest(ChannelOrders channel) {
        return channel.dwells().stream()
                .max(Comparator.comparingDouble(each -> each.dwell().durationS()));
    }
}
