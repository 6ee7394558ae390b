package evenblade.judge.comparison;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import java.util.List;

/**
 * Two runs, like with like.
 *
 * @param before name of the first run
 * @param after name of the second
 * @param reasons why they can't be compared; where they are, why a channel of them is left out
 * @param channels by name; the one with most propeller 1× before comes first; empty where not comparable
 * @param warnings what to keep in mind
 */
public record RunComparison(
        String before, String after, List<Warning> reasons, List<ChannelComparison> channels, List<Warning> warnings) {
    public RunComparison {
        reasons = List.copyOf(reasons);
        channels = List.copyOf(channels);
        warnings = List.copyOf(warnings);
    }

    /** Whether anything of them could be compared. */
    public boolean comparable() {
        return !channels.isEmpty();
    }

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
}
