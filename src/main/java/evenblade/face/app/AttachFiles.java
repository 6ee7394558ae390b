package evenblade.face.app;

import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;

/** Takes photos and papers into a job. */
public final class AttachFiles {
    private AttachFiles() {}

    /**
     * Copies the files in, all or none; photos are brought down for the report at once.
     *
     * @param text a remark to all of them; may be empty
     * @param at when they were made; now, where empty
     * @return one entry for each
     * @throws evenblade.base.problem.BadInput where one can't be read or isn't what its name says
     */
    public static List<Event> answer(Path job, List<Path> files, String text, Optional<OffsetDateTime> at) {
        JobFolder folder = JobFolder.open(job);
        List<Event> added = folder.attach(files, text, at);
        ReportPhotos photos = new ReportPhotos(folder, List.of());
        added.parallelStream().forEach(photos::keep);
        return added;
    }
}
