package evenblade.judge.comparison;

import evenblade.base.units.SignalUnit;
import java.util.List;

/**
 * One channel of two runs.
 *
 * @param channel its name in the first run
 * @param unit of the amplitudes
 * @param basis what was compared
 * @param repeatRuns runs of the job that repeat another one with nothing changed
 * @param dwells pairs at the same speed, in the first run's order of time
 */
public record ChannelComparison(
        String channel, SignalUnit unit, Basis basis, int repeatRuns, List<DwellComparison> dwells) {
    public ChannelComparison {
        dwells = List.copyOf(dwells);
    }
}
