package evenblade.keep.job;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * One entry of a job record. Once written it stays as it is; what was wrong is struck out by a later
 * entry.
 *
 * @param id its own name in this job: {@code e1}, {@code e2}, … in the order of entering
 * @param at when it happened, as entered
 * @param entered when it was written into the record
 * @param label a short name given by the user, for runs above all
 * @param text what was done or seen, in the user's words; may be empty
 * @param detail what kind of entry it is, with what belongs to that kind
 */
public record Event(
        String id, OffsetDateTime at, OffsetDateTime entered, Optional<String> label, String text, Detail detail) {
    public Kind kind() {
        return detail.kind();
    }

    /** Whether the machine is another one after it: a correction, or a balance weight put on or taken off. */
    public boolean changesMachine() {
        return changesTrack()
                || detail instanceof Detail.Balance b
                        && (b.on().isPresent() || b.off().isPresent());
    }

    /** Whether the track may be another one after it. A weight alone moves no tip; what words alone say may. */
    public boolean changesTrack() {
        return detail instanceof Detail.Correction || detail instanceof Detail.Balance b && b.wordsOnly();
    }
}
