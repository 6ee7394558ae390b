package evenblade.face.app;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.StoredFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Takes photos and papers into a job. */
public final class AttachFiles {
    /** The text of an entry that this program drew. */
    private static final String DRAWN = "Drawn by Evenblade.";

    private AttachFiles() {}

    /**
     * Refuses what isn't a job, before any work is done.
     *
     * @throws evenblade.base.problem.BadInput where there is none
     */
    public static void requireJob(Path job) {
        JobFolder.open(job);
    }

    /**
     * Takes pictures in that this program drew. Each stands in the record once: one that is there already is left, an older
     * drawing of the same name is crossed out.
     *
     * @return what is new
     */
    public static List<Event> drawn(Path job, List<Path> pictures) {
        JobFolder folder = JobFolder.open(job);
        List<Path> fresh = new ArrayList<>();
        for (Path picture : pictures) {
            Optional<Event> earlier = folder.record().standing(Kind.ATTACHMENT).stream()
                    .filter(event -> event.text().equals(DRAWN))
                    .filter(event -> stored(event)
                            .originalName()
                            .equals(picture.getFileName().toString()))
                    .findFirst();
            if (earlier.filter(event -> alike(picture, folder.locate(stored(event))))
                    .isEmpty()) {
                earlier.ifPresent(event -> folder.strike(event.id(), "drawn anew"));
                fresh.add(picture);
            }
        }
        return fresh.isEmpty() ? List.of() : answer(job, fresh, DRAWN, Optional.empty());
    }

    private static boolean alike(Path picture, Path kept) {
        try {
            return Files.exists(kept) && Files.mismatch(picture, kept) < 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static StoredFile stored(Event event) {
        return ((Detail.Attachment) event.detail()).file();
    }

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
