package evenblade.judge.findings;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * One measured run.
 *
 * @param name what the user calls it
 * @param at when
 * @param changesBefore what was changed since the run before it, in the user's words; empty for a repeat
 * @param numbers what was measured
 * @param directions of the channels by name; those that aren't known are left out
 * @param microphone whether it is sound, whose level says nothing by itself
 */
public record RunEvidence(
        String name,
        Instant at,
        List<String> changesBefore,
        RunNumbers numbers,
        Map<String, Direction> directions,
        boolean microphone) {
    public RunEvidence {
        changesBefore = List.copyOf(changesBefore);
        directions = Map.copyOf(directions);
    }

    Direction direction(String channel) {
        return directions.getOrDefault(channel, Direction.UNKNOWN);
    }
}
