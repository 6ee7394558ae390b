package evenblade.input.capture;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Writes samples to the file on a thread of its own, so that a slow disk doesn't hold up the input. Another
 * settles the file and looks at the room left every {@value #SETTLE_EVERY_MS} ms: a disk that takes seconds over
 * that doesn't keep samples from the file.
 */
final class WriterThread {
    static final long SETTLE_EVERY_MS = 800; // less than a second is lost where the power goes
    /** Blocks on their way to the disk; some twenty seconds. */
    private static final int MOST_WAITING = 400;

    private static final byte[] NO_MORE = new byte[0]; // ends the queue

    /** Why the lane wants no more. */
    record Trouble(Ending ending, Value detail) {}

    private final GrowingWav file;
    private final LongSupplier freeBytes;
    private final long keepFree;
    private final int copiesLater;
    private final Consumer<Trouble> onTrouble;
    private final BlockingQueue<byte[]> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final AtomicReference<Trouble> trouble = new AtomicReference<>();
    private volatile boolean full;
    private final CountDownLatch written = new CountDownLatch(1);
    private final Thread writer = new Thread(this::write, "recording to disk");
    private final Thread settler = new Thread(this::settle, "settling on disk");

    /**
     * @param freeBytes asks for the room left on the disk
     * @param keepFree room that must stay free
     * @param copiesLater how many copies of the sound will be made on the same disk
     * @param onTrouble told once, on a thread of the lane
     */
    WriterThread(GrowingWav file, LongSupplier freeBytes, long keepFree, int copiesLater, Consumer<Trouble> onTrouble) {
        this.file = file;
        this.freeBytes = freeBytes;
        this.keepFree = keepFree;
        this.copiesLater = copiesLater;
        this.onTrouble = onTrouble;
        writer.start();
        settler.start();
    }

    /**
     * Hands over whole frames, never waiting. Where the disk is too far behind to take more, the recording ends: what
     * was handed over before is still written, without a hole. The array is the lane's from now on.
     */
    void append(byte[] samples) {
        if (full || !waiting.offer(samples)) {
            full = true;
            tell(new Trouble(Ending.DISK_FAILED, Fact.of(CaptureFact.DISK_BEHIND, new Count(MOST_WAITING))));
        }
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
        while (writer.isAlive() || settler.isAlive()) {
            try {
                writer.join();
                settler.join();
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
            trouble.compareAndSet(null, new Trouble(Ending.DISK_FAILED, CaptureFact.said(e)));
        }
        return Optional.ofNullable(trouble.get());
    }

    private void write() {
        try {
            for (byte[] next = take(); next != NO_MORE; next = take()) {
                file.append(next, next.length);
            }
        } catch (IOException e) {
            tell(new Trouble(Ending.DISK_FAILED, CaptureFact.said(e)));
            while (take() != NO_MORE) {
                // Whoever records must not be held up until it has heard.
            }
        } finally {
            written.countDown();
        }
    }

    private byte[] take() {
        while (true) {
            try {
                return waiting.take();
            } catch (InterruptedException e) {
                // Nobody ends the lane this way.
            }
        }
    }

    private void settle() {
        try {
            while (!written.await(SETTLE_EVERY_MS, TimeUnit.MILLISECONDS)) {
                file.settle();
                lookForRoom();
            }
        } catch (IOException e) {
            tell(new Trouble(Ending.DISK_FAILED, CaptureFact.said(e)));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** What is waiting is still written: the room kept free is far larger. */
    private void lookForRoom() {
        if (freeBytes.getAsLong() < keepFree + copiesLater * file.dataBytes()) {
            tell(new Trouble(Ending.DISK_NEARLY_FULL, CaptureFact.none()));
        }
    }

    private void tell(Trouble what) {
        if (trouble.compareAndSet(null, what)) {
            onTrouble.accept(what);
        }
    }
}
