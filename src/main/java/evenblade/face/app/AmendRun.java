package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.RunSettings;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** Puts right what a run says of itself, by a later entry. */
public final class AmendRun {
    private AmendRun() {}

    /**
     * Writes the entry.
     *
     * @param run id or label
     * @param settings what is put right of how it is analysed; the rest is unsaid
     * @param conditions what is put right of what it was like; the rest is unsaid
     * @param text a remark; may be empty
     * @param at when; now, where empty
     * @throws BadInput where there is no such run, or what is said can't be used
     */
    public static Event answer(
            Path job,
            String run,
            RunSettings settings,
            Conditions conditions,
            String text,
            Optional<OffsetDateTime> at) {
        JobFolder folder = JobFolder.open(job);
        JobRecord record = folder.record();
        settings.fullScale().ifPresent(scale -> FullScale.parse(scale, BadInput.in("full scale")));
        settings.engineRpm()
                .ifPresent(rpm -> record.installation().engine().requireRunsAt(rpm, BadInput.in("engine speed")));
        Detail.Amendment amendment = new Detail.Amendment(record.run(run).id(), settings, conditions, List.of());
        return folder.append(new Entry(at, Optional.empty(), text, amendment));
    }
}
