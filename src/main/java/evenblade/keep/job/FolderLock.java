package evenblade.keep.job;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The right to write to a job folder, held by one thread of one program at a time.
 *
 * <p>Between programs it is a lock of the operating system on {@code job.lock}, which ends with the
 * program that holds it, however that ends. The file itself stays; it says nothing.
 */
final class FolderLock {
    static final String FILE_NAME = "job.lock";
    private static final long PAUSE_MS = 15; // an entry is written within some milliseconds

    /**
     * Folders being written to by this program. The operating system's locks belong to the whole
     * program and end when <em>any</em> of its channels on the file is closed, so a second thread must
     * not even open the file; that can only be known program-wide.
     */
    private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

    private FolderLock() {}

    /** Something that is done while nobody else may write. */
    interface Work<T> {
        T run() throws IOException;
    }

    /**
     * Waits for the right to write, does the work, and gives the right back.
     *
     * @param folder the job folder, which exists
     * @param patience how long to wait for others
     * @throws BadInput where others don't finish in that time
     * @throws IOException where the lock file can't be opened, or from the work
     */
    static <T> T holding(Path folder, Duration patience, Work<T> work) throws IOException {
        Path real = folder.toRealPath();
        long deadline = System.nanoTime() + patience.toNanos();
        while (!HELD_HERE.add(real)) {
            pauseUntil(deadline, folder, patience);
        }
        try (FileChannel channel =
                FileChannel.open(real.resolve(FILE_NAME), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            while (channel.tryLock() == null) {
                pauseUntil(deadline, folder, patience);
            }
            return work.run();
        } finally {
            HELD_HERE.remove(real);
        }
    }

    private static void pauseUntil(long deadline, Path folder, Duration patience) {
        if (System.nanoTime() - deadline >= 0) {
            throw BadInput.in(folder)
                    .found(
                            String.format(
                                    Locale.ROOT,
                                    "another program is writing to this job (waited %.0f s)",
                                    patience.toMillis() / 1e3),
                            "it to finish; close it or try again, nothing was changed");
        }
        try {
            Thread.sleep(PAUSE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw BadInput.in(folder).found("interrupted while waiting for another program", "patience");
        }
    }
}
