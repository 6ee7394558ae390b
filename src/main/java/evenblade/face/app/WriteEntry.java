package evenblade.face.app;

import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import java.nio.file.Path;

/** Writes an entry that needs no file into a job: a correction, a note, static readings. */
public final class WriteEntry {
    private WriteEntry() {}

    /**
     * Writes the entry.
     *
     * @return as it stands in the record now
     * @throws evenblade.base.problem.BadInput where the job or the entry can't be used
     */
    public static Event answer(Path job, Entry entry) {
        return JobFolder.open(job).append(entry);
    }
}
