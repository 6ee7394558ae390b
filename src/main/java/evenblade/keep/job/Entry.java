package evenblade.keep.job;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * Something to be written into a job record.
 *
 * @param at when it happened; now, where empty
 * @param label a short name; may not look like an entry's id
 * @param text what was done or seen
 * @param detail what kind of entry it is
 */
public record Entry(Optional<OffsetDateTime> at, Optional<String> label, String text, Detail detail) {
    public static Entry of(Detail detail, String text) {
        return new Entry(Optional.empty(), Optional.empty(), text, detail);
    }

    public static Entry correction(String text) {
        return of(new Detail.Correction(), text);
    }

    public static Entry note(String text) {
        return of(new Detail.Note(), text);
    }

    /** This entry, at a time. */
    public Entry at(OffsetDateTime time) {
        return new Entry(Optional.of(time), label, text, detail);
    }

    /** This entry, with a short name. */
    public Entry labelled(String name) {
        return new Entry(at, Optional.of(name), text, detail);
    }
}
