package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * {@code job.json}: read as a whole, replaced as a whole.
 *
 * <p>The new text is written beside the old one, brought to the disk and then given the name in one
 * step. A crash at any moment leaves the old text or the new one under the name, never a mixture.
 */
record RecordFile(Path folder, Disk disk, RecordFormat format) {
    static final String FILE_NAME = "job.json";

    Path path() {
        return folder.resolve(FILE_NAME);
    }

    RecordFormat.Reading read() {
        if (!Files.exists(folder)) {
            throw BadInput.in(folder).found("no such folder", "a job folder (made with 'evenblade job new')");
        }
        if (!Files.isDirectory(folder)) {
            throw BadInput.in(folder).found("a file", "a job folder, which holds a job.json");
        }
        if (!Files.exists(path())) {
            throw BadInput.in(folder)
                    .found("a folder without job.json", "a job folder (made with 'evenblade job new')");
        }
        InsideFolder.requireOwnParts(folder);
        return format.read(path());
    }

    /** Writes the first record of a job. */
    void create(JobRecord record) throws IOException {
        replace(record, false);
    }

    /** Writes a record in place of one that was read; the text of an older version is kept beside it. */
    void replace(RecordFormat.Reading old, JobRecord record) throws IOException {
        if (old.version() < RecordFormat.VERSION) {
            keep(old.version());
        }
        replace(record, old.changedByHand());
    }

    private void replace(JobRecord record, boolean changedByHand) throws IOException {
        Path unfinished = Unfinished.in(folder, FILE_NAME);
        try {
            disk.write(unfinished, format.write(record, changedByHand));
            disk.rename(unfinished, path());
        } catch (IOException e) {
            disk.delete(unfinished);
            throw e;
        }
        try {
            disk.syncFolder(folder);
        } catch (IOException e) {
            throw BadInput.in(path())
                    .found(
                            "the entry was written, but the disk doesn't confirm it (" + e.getMessage() + ")",
                            "a working disk; look with 'evenblade job show' whether it is there");
        }
    }

    private void keep(int version) throws IOException {
        Path kept = folder.resolve(FILE_NAME + ".version-" + version);
        if (Files.exists(kept)) {
            return;
        }
        Path unfinished = Unfinished.in(folder, kept.getFileName().toString());
        disk.copy(path(), unfinished);
        disk.rename(unfinished, kept);
        disk.syncFolder(folder);
    }
}
