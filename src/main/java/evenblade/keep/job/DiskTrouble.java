package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.Locale;

/** Puts what the disk refused into words. */
final class DiskTrouble {
    private DiskTrouble() {}

    /** A step on the way to a new record failed: the old record stands. */
    static BadInput writing(Path folder, IOException e) {
        String reason = reason(e);
        String low = reason.toLowerCase(Locale.ROOT);
        if (e instanceof AccessDeniedException || low.contains("read-only") || low.contains("not permitted")) {
            return BadInput.in(folder)
                    .found(
                            "this folder can't be written to (" + reason + ")",
                            "a folder that this user may write to; the record is as it was");
        }
        if (low.contains("no space") || low.contains("not enough space") || low.contains("quota")) {
            return BadInput.in(folder)
                    .found("the disk is full (" + reason + ")", "room on the disk; the record is as it was");
        }
        return BadInput.in(folder)
                .found("the disk refused to write (" + reason + ")", "a working disk; the record is as it was");
    }

    /** A file can't be read. */
    static BadInput reading(Path file, IOException e) {
        return BadInput.in(file).found("it can't be read (" + reason(e) + ")", "a file that this user may read");
    }

    private static String reason(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "permission denied";
        }
        String reason = e instanceof FileSystemException f && f.getReason() != null ? f.getReason() : e.getMessage();
        return reason == null ? e.getClass().getSimpleName() : reason;
    }
}
