package evenblade.measure.orders;

import evenblade.base.units.SignalUnit;
import java.util.List;

/**
 * All dwells of one channel.
 *
 * @param channel its name
 * @param unit of every amplitude
 * @param dwells in order of time
 */
public record ChannelOrders(String channel, SignalUnit unit, List<DwellOrders> dwells) {
    public ChannelOrders {
        dwells = List.copyOf(dwells);
    }
}
