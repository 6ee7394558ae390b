package evenblade.judge.findings;

import evenblade.base.fact.Code;
import evenblade.base.fact.Value.Quoted;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One measured run.
 *
 * @param ref which run
 * @param at when, by the order of the job: of two runs with one time the later entry lies later
 * @param lastChange when something was changed last before it, in any earlier stretch too; empty where nothing was
 * @param changesBefore what was changed since the run before it, in the user's words; empty for a repeat
 * @param numbers what was measured
 * @param directions of the channels by name; those that aren't known are left out
 * @param microphone whether it is sound, whose level says nothing by itself
 */
public record RunEvidence(
        RunRef ref,
        Instant at,
        Optional<Instant> lastChange,
        List<String> changesBefore,
        RunNumbers numbers,
        Map<String, Direction> directions,
        boolean microphone) {
    public RunEvidence {
        changesBefore = List.copyOf(changesBefore);
        directions = Map.copyOf(directions);
    }

    EvidenceRef ref(EvidenceRef.Side side) {
        return EvidenceRef.Run.of(ref.id(), side);
    }

    Direction direction(String channel) {
        return directions.getOrDefault(channel, Direction.UNKNOWN);
    }

    /**
     * A run of a job.
     *
     * @param id of its entry
     * @param name what the user calls it
     */
    public record RunRef(String id, String name) {
        Quoted quoted() {
            return new Quoted(name);
        }
    }

    /** Which way a channel feels, against the propeller shaft. */
    public enum Direction implements Code {
        ALONG,
        /** Across the shaft, level. */
        ACROSS,
        /** Across the shaft, upright. */
        UP,
        UNKNOWN;

        /** Whether it lies across the shaft, level or upright. */
        public boolean acrossShaft() {
            return this == ACROSS || this == UP;
        }
    }
}
