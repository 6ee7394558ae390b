package evenblade.keep.job;

import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.Detail.Told;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A ground run to be written into a job record, all but its recording.
 *
 * @param at when it happened; now, where empty
 * @param label a short name
 * @param text a remark; may be empty
 * @param settings how it is to be analysed
 * @param conditions what it was like
 */
public record NewRun(
        Optional<OffsetDateTime> at, Optional<String> label, String text, RunSettings settings, Conditions conditions) {
    public static NewRun labelled(String label, RunSettings settings) {
        return new NewRun(Optional.empty(), Optional.of(label), "", settings, Conditions.NONE);
    }

    Entry entry(StoredFile file) {
        return entry(file, Optional.empty(), List.of());
    }

    Entry entry(StoredFile file, Optional<StoredFile> arrivals, List<Told> told) {
        return new Entry(at, label, text, new Detail.Run(file, settings, conditions, arrivals, told));
    }
}
