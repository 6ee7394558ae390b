package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;

/**
 * The gate that every path of a job folder passes. A folder may come from somebody else: what it names must lie inside
 * it, where all its links lead, and be a plain file or folder, never a pipe or a device.
 */
final class InsideFolder {
    /** Files and folders of a job that this program reads or writes by itself. */
    private static final List<String> OWN_FILES =
            List.of(RecordFile.FILE_NAME, FolderLock.FILE_NAME, ParticularsFile.FILE_NAME);

    private static final List<String> OWN_FOLDERS =
            List.of(StoredFiles.RECORDINGS, StoredFiles.ATTACHMENTS, JobFolder.TAKES);

    private InsideFolder() {}

    /**
     * Where a file that the record names lies; it may be missing.
     *
     * @throws BadInput where its name can't be one here, or where it isn't a plain file inside the folder
     */
    static Path file(Path folder, String path) {
        return plain(folder, resolved(folder, path));
    }

    private static Path plain(Path folder, Path file) {
        requireInside(folder, file);
        if (Files.exists(file) && !Files.isRegularFile(file)) {
            throw BadInput.in(file).found("no plain file", "a plain file inside the job folder");
        }
        return file;
    }

    /** Whether results may be kept in a folder below, and read from it. */
    static boolean holds(Path folder, Path below) {
        return !Files.exists(below, LinkOption.NOFOLLOW_LINKS) || leadsInside(folder, below);
    }

    /** Refuses a job folder of which a part lies elsewhere. */
    static void requireOwnParts(Path folder) {
        for (String name : OWN_FILES) {
            plain(folder, folder.resolve(name));
        }
        for (String name : OWN_FOLDERS) {
            Path part = folder.resolve(name);
            requireInside(folder, part);
            if (Files.exists(part) && !Files.isDirectory(part)) {
                throw BadInput.in(part).found("something that is no folder", "a job folder as made here");
            }
        }
    }

    private static void requireInside(Path folder, Path file) {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !leadsInside(folder, file)) {
            throw BadInput.in(file)
                    .found("a link that leads out of the job folder, or nowhere", "the file itself in the folder");
        }
    }

    private static boolean leadsInside(Path folder, Path file) {
        try {
            return file.toRealPath().startsWith(folder.toRealPath());
        } catch (IOException e) {
            return false;
        }
    }

    private static Path resolved(Path folder, String path) {
        try {
            Path added = Path.of(path);
            if (added.getNameCount() == 2 && added.equals(added.normalize())) {
                return folder.resolve(added);
            }
        } catch (InvalidPathException e) {
            // Said below, in words that don't depend on the system.
        }
        throw BadInput.in(folder)
                .found(
                        "the file name '" + path + "', which can't be used here",
                        "a file name that this system takes (letters beyond a to z need a UTF-8 locale)");
    }
}
