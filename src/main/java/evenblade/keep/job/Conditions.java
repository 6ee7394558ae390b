package evenblade.keep.job;

import evenblade.base.fact.Worded;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a run was like, in the user's words: like is only to be compared with like.
 *
 * @param entries what was noted; the rest is unknown
 */
public record Conditions(Map<Condition, String> entries) {
    /** Nothing noted. */
    public static final Conditions NONE = new Conditions(Map.of());

    /** Something that may differ between two runs. */
    public enum Condition implements Worded {
        WIND,
        TEMPERATURE,
        FUEL,
        /** Which sensor. */
        SENSOR,
        /** Where it was fixed. */
        PLACE,
        /** Which way it pointed. */
        DIRECTION,
        /** Gain or range of the recorder. */
        GAIN,
        /** What recorded it. */
        DEVICE;
    }

    public Conditions {
        Map<Condition, String> copy = new EnumMap<>(Condition.class);
        copy.putAll(entries);
        entries = Collections.unmodifiableMap(copy);
    }

    public Optional<String> get(Condition condition) {
        return Optional.ofNullable(entries.get(condition));
    }

    /** Notes one more. */
    public Conditions with(Condition condition, String value) {
        Map<Condition, String> more = new EnumMap<>(Condition.class);
        more.putAll(entries);
        more.put(condition, value);
        return new Conditions(more);
    }
}
