package evenblade.keep.job;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * The few things a job folder asks of the disk, each small enough that a crash falls between two of
 * them or leaves a file that no record names yet. The tests put a faulty one in its place.
 */
interface Disk {
    /** Makes a folder and the folders above it where they are missing. */
    void makeFolder(Path folder) throws IOException;

    /**
     * Writes a new file and returns once its bytes are on the disk.
     *
     * @throws java.nio.file.FileAlreadyExistsException where it exists
     */
    void write(Path file, byte[] bytes) throws IOException;

    /**
     * Copies a file into a new one, byte for byte, and returns once the bytes are on the disk. The
     * copy carries the time of the original.
     */
    FileStamp copy(Path from, Path to) throws IOException;

    /** Gives a file its final name in one step; a file already there is replaced. */
    void rename(Path from, Path to) throws IOException;

    /** Returns once the names in a folder are on the disk. */
    void syncFolder(Path folder) throws IOException;

    void delete(Path file) throws IOException;

    /** Names of what lies in a folder, sorted; empty where there is no such folder. */
    List<Path> list(Path folder) throws IOException;

    /** Bytes that can still be written to the disk a folder lies on. */
    long freeBytes(Path folder) throws IOException;
}
