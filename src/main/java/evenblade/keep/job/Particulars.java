package evenblade.keep.job;

import evenblade.base.fact.Worded;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the papers of a job say about whose machine it is and who worked on it. Each may be left out. Unlike the entries of
 * the record they may be put right at any time: nothing is worked out from them.
 *
 * @param items each in the user's words, never blank
 */
public record Particulars(Map<Item, String> items) {
    /** Nothing said. */
    public static final Particulars NONE = new Particulars(Map.of());

    /** What can be said. */
    public enum Item implements Worded {
        REGISTRATION("Registration"),
        PROPELLER_SERIAL("Propeller, serial number"),
        /** By letter, as in {@code A=101, B=102}. */
        BLADE_SERIALS("Blades, serial numbers"),
        ENGINE_SERIAL("Engine, serial number"),
        HOURS("Hours"),
        OWNER("Owner"),
        WORKSHOP("Workshop"),
        TECHNICIAN("Technician"),
        /** Which unit of length comes first in every answer about the job; its words are those of the option. */
        UNITS("Units of length");

        private final String title;

        Item(String title) {
            this.title = title;
        }

        /** As written for people. */
        public String title() {
            return title;
        }

        static List<String> words() {
            return Stream.of(values()).map(Item::word).toList();
        }
    }

    public Particulars {
        Map<Item, String> said = new EnumMap<>(Item.class);
        items.forEach((item, text) -> {
            if (!text.isBlank()) {
                said.put(item, text.strip());
            }
        });
        items = Collections.unmodifiableMap(said);
    }

    /** One of them. */
    public Optional<String> get(Item item) {
        return Optional.ofNullable(items.get(item));
    }

    /** Puts others over these; a blank text there takes one away. */
    public Particulars with(Map<Item, String> others) {
        Map<Item, String> all = new EnumMap<>(Item.class);
        all.putAll(items);
        all.putAll(others);
        return new Particulars(all);
    }
}
