package evenblade.keep.job;

import evenblade.base.fact.Worded;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
        DEVICE,
        /** Said where two runs were asked about: that nothing was changed since the run before. */
        NOTHING_CHANGED;

        /** Those that can be noted of any run, whatever came before it. */
        public static final Set<Condition> NOTED =
                Collections.unmodifiableSet(EnumSet.complementOf(EnumSet.of(NOTHING_CHANGED)));
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

    /** These, and where something isn't noted, those. */
    public Conditions over(Conditions those) {
        Map<Condition, String> all = new EnumMap<>(Condition.class);
        all.putAll(those.entries);
        all.putAll(entries);
        return new Conditions(all);
    }

    /** What these note and those don't or otherwise. */
    public Conditions unlike(Conditions those) {
        Map<Condition, String> other = new EnumMap<>(Condition.class);
        other.putAll(entries);
        other.entrySet().removeAll(those.entries.entrySet());
        return new Conditions(other);
    }

    /** Those of some kinds alone. */
    public Conditions of(Set<Condition> kinds) {
        Map<Condition, String> some = new EnumMap<>(Condition.class);
        some.putAll(entries);
        some.keySet().retainAll(kinds);
        return new Conditions(some);
    }
}
