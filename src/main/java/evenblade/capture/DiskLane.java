package evenblade.capture;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Writes samples to the file on a thread of its own, so that a slow disk doesn't hold up the input;
 * settles the file and looks at the room left every {@value #SETTLE_EVERY_MS} ms.
 */
final class DiskLane {
    static final long SETTLE_EVERY_MS = 800;
    /** Blocks on their way to the disk; some twenty seconds. */
    private static final int MOST_WAITING = 400;

    private static final byte[] NO_MORE = new byte[0];

    /** Why the lane wants no more. */
    record Trouble(Ending ending, String detail) {}

    private final GrowingWav file;
    private final LongSupplier freeBytes;
    private final long keepFree;
    private final int copiesLater;
    private final Consumer<Trouble> onTrouble;
    private final BlockingQueue<byte[]> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final AtomicReference<Trouble> trouble = new AtomicReference<>();
    private final Thread thread = new Thread(this::work, "recording to disk");

    /**
     * @param freeBytes asks for the room left on the disk
     * @param keepFree room that must stay free
     * @param copiesLater how many copies of the sound will be made on the same disk
     * @param onTrouble told once, on the lane's thread
     */
    DiskLane(GrowingWav file, LongSupplier freeBytes, long keepFree, int copiesLater, Consumer<Trouble> onTrouble) {
        this.file = file;
        this.freeBytes = freeBytes;
        this.keepFree = keepFree;
        this.copiesLater = copiesLater;
        this.onTrouble = onTrouble;
        thread.start();
    }

    /** Hands over whole frames; waits where the disk is far behind. The array is the lane's from now on. */
    void append(byte[] samples) {
        put(samples);
    }

    private void put(byte[] samples) {
        try {
            waiting.put(samples);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Writes what is waiting, marks the gaps, settles and closes the file. */
    Optional<Trouble> finish(List<Gap> gaps) {
        put(NO_MORE);
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
        try (file) {
            file.finish(gaps.stream().map(Gap::frame).toList());
        } catch (IOException e) {
            trouble.compareAndSet(null, new Trouble(Ending.DISK_FAILED, reason(e)));
        }
        return Optional.ofNullable(trouble.get());
    }

    private void work() {
        long settled = System.nanoTime();
        boolean writing = true;
        while (true) {
            byte[] next;
            try {
                next = waiting.poll(SETTLE_EVERY_MS, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                continue;
            }
            if (next == NO_MORE) {
                return;
            }
            if (!writing) {
                continue;
            }
            try {
                if (next != null) {
                    file.append(next, next.length);
                }
                if (System.nanoTime() - settled >= TimeUnit.MILLISECONDS.toNanos(SETTLE_EVERY_MS)) {
                    file.settle();
                    settled = System.nanoTime();
                    lookForRoom();
                }
            } catch (IOException e) {
                writing = false;
                tell(new Trouble(Ending.DISK_FAILED, reason(e)));
            }
        }
    }

    /** What is waiting is still written: the room kept free is far larger. */
    private void lookForRoom() {
        if (freeBytes.getAsLong() < keepFree + copiesLater * file.dataBytes()) {
            tell(new Trouble(Ending.DISK_NEARLY_FULL, ""));
        }
    }

    private void tell(Trouble what) {
        if (trouble.compareAndSet(null, what)) {
            onTrouble.accept(what);
        }
    }

    private static String reason(IOException e) {
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }
}
