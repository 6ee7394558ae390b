package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.PlainFile;
import evenblade.keep.job.Detail.StoredFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/**
 * Brings files from outside into a job folder.
 *
 * <p>A file is first copied under an unfinished name, which may take long and holds nobody up. Only
 * when all its bytes are on the disk it gets its final name, made from its own name and its content:
 * the same content never lies there twice, and a name never changes its content.
 */
record StoredFiles(Path folder, Disk disk) {
    static final String RECORDINGS = "recordings";
    static final String ATTACHMENTS = "attachments";

    /** Left free beside a copy, for the record itself. */
    private static final long MARGIN_BYTES = 1 << 20;

    private static final int SHORT_HASH = 8; // tells the files of one job apart

    /**
     * A complete copy without its final name.
     *
     * @param original where it came from
     * @param copy where it lies now
     * @param below the subfolder it belongs to
     * @param stamp its content
     */
    record Incoming(Path original, Path copy, String below, FileStamp stamp) {}

    /**
     * A copy with its final name.
     *
     * @param file as the record names it
     * @param created the file, where it wasn't there before
     */
    record Settled(StoredFile file, Optional<Path> created) {}

    Incoming copyIn(Path original, String below) {
        Path sub = folder.resolve(below);
        Path copy = Unfinished.in(sub, original.getFileName().toString());
        try {
            requireReadableFile(original);
            disk.makeFolder(sub);
            requireRoom(original);
            return new Incoming(original, copy, below, disk.copy(original, copy));
        } catch (IOException e) {
            discard(copy);
            throw DiskTrouble.writing(folder, e);
        }
    }

    Settled settle(Incoming incoming) throws IOException {
        Path sub = folder.resolve(incoming.below());
        String original = incoming.original().getFileName().toString();
        String hash = incoming.stamp().sha256();
        Path target = sub.resolve(plainName(original, hash.substring(0, SHORT_HASH)));
        if (Files.exists(target) && !RealDisk.stamp(target).sha256().equals(hash)) {
            target = sub.resolve(plainName(original, hash));
        }
        StoredFile stored = new StoredFile(incoming.below() + "/" + target.getFileName(), original, incoming.stamp());
        if (Files.exists(target)) {
            disk.delete(incoming.copy());
            return new Settled(stored, Optional.empty());
        }
        disk.rename(incoming.copy(), target);
        try {
            disk.syncFolder(sub);
            disk.syncFolder(folder);
        } catch (IOException e) {
            discard(target);
            throw e;
        }
        return new Settled(stored, Optional.of(target));
    }

    /** Takes away what isn't needed after all; what can't be taken away is found as a leftover later. */
    void discard(Path file) {
        try {
            disk.delete(file);
        } catch (IOException e) {
            // The next writer clears it away.
        }
    }

    private void requireReadableFile(Path original) {
        PlainFile.require(original, "a file to copy into the job");
        if (!Files.isReadable(original)) {
            throw BadInput.in(original).found("it can't be read (permission denied)", "a file that this user may read");
        }
    }

    private void requireRoom(Path original) throws IOException {
        long needed = Files.size(original) + MARGIN_BYTES;
        long free = disk.freeBytes(folder);
        if (free < needed) {
            throw BadInput.in(folder)
                    .found(
                            String.format(Locale.ROOT, "%.1f MB free on this disk", free / 1e6),
                            String.format(
                                    Locale.ROOT,
                                    "%.1f MB to copy '%s' in; the record is as it was",
                                    needed / 1e6,
                                    original.getFileName()));
        }
    }

    /** A name that every file system takes and that tells where the file came from. */
    static String plainName(String original, String hash) {
        int dot = original.lastIndexOf('.');
        String stem = dot > 0 ? original.substring(0, dot) : original;
        String ending = dot > 0 ? original.substring(dot) : "";
        String plain = PlainName.of(stem);
        return (plain.isEmpty() ? "file" : plain) + "-" + hash + (ending.isEmpty() ? "" : "." + PlainName.of(ending));
    }
}
