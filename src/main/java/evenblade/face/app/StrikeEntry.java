package evenblade.face.app;

import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import java.nio.file.Path;

/** Takes an entry of a job back, by a further entry. */
public final class StrikeEntry {
    private StrikeEntry() {}

    /**
     * Strikes out an entry; struck out again, the strike is taken back.
     *
     * @param id of the entry
     * @param why in the user's words; may be empty
     * @throws evenblade.base.problem.BadInput where there is no such entry, or it doesn't count any more
     */
    public static Event answer(Path job, String id, String why) {
        return JobFolder.open(job).strike(id, why);
    }
}
