package evenblade.face.app;

import evenblade.measure.lines.ChannelSpectrum;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import java.util.Optional;

/**
 * One recording, looked at.
 *
 * @param spectrum the answer
 * @param run speed and orders of the whole recording; empty where no installation was given
 * @param dwell the dwell of that run whose orders the lines are compared with; empty where no confirmed dwell overlaps
 *     the stretch
 */
public record LookedAt(ChannelSpectrum spectrum, Optional<RunOrders> run, Optional<DwellOrders> dwell) {}
