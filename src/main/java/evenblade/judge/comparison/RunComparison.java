package evenblade.judge.comparison;

import evenblade.base.fact.Warning;
import java.util.List;

/**
 * Two runs, like with like.
 *
 * @param before name of the first run
 * @param after name of the second
 * @param reasons why they can't be compared; empty where they are
 * @param channels by name; the one with most propeller 1× before comes first; empty where not comparable
 * @param warnings what to keep in mind
 */
public record RunComparison(
        String before, String after, List<Reason> reasons, List<ChannelComparison> channels, List<Warning> warnings) {
    public RunComparison {
        reasons = List.copyOf(reasons);
        channels = List.copyOf(channels);
        warnings = List.copyOf(warnings);
    }

    /** Whether anything of them could be compared. */
    public boolean comparable() {
        return !channels.isEmpty();
    }
}
