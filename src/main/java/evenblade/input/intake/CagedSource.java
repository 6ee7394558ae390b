package evenblade.input.intake;

import evenblade.input.audio.FrameSource;
import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;

/**
 * Runs a foreign decoder in a thread of its own and believes nothing of it: whatever it throws is damage of the file,
 * what it gives is held to numbers, and where it works without giving anything it is left behind.
 */
final class CagedSource implements FrameSource, AutoCloseable {
    /** A block takes a decoder some milliseconds of processor time; with this much and no block it is in a circle. */
    private static final long PATIENCE_CPU_NANOS = 5_000_000_000L;

    private static final int BLOCKS_AHEAD = 4; // ours: keeps both threads busy, holds little
    private static final long LOOK_MS = 250; // how late the end is seen where the other thread has died
    /** Reads after the end that are taken for care and not for a circle. */
    private static final int READS_PAST_END = 64;
    /**
     * Decoded bytes at 16 bits for each byte of file: FLAC of pure silence comes to some 3000, sound never near
     * it. More is a file made to fill a disk or a memory.
     */
    private static final long MOST_EXPANSION = 3000;
    /** Decoders may overshoot full scale a little; beyond this they give nonsense. */
    private static final float MOST_SHARE = 4;

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final BlockingQueue<Part> parts = new ArrayBlockingQueue<>(BLOCKS_AHEAD);
    private final Thread thread;
    private final Gate gate;
    private final long patienceCpuNanos;
    private volatile long cpuNanosAtLastPart;
    private volatile int damaged;
    private volatile boolean otherChecksum;
    private volatile boolean left;
    private CodedForm.Format format;
    private float[] block = new float[0];
    private int taken;
    private boolean ended;
    private Optional<Throwable> failure = Optional.empty();

    /** What comes out of the cage. */
    private sealed interface Part {
        record Made(CodedForm.Format format) implements Part {}

        final class Frames implements Part {
            private final float[] interleaved;

            Frames(float[] interleaved) {
                this.interleaved = interleaved;
            }
        }

        record End(Optional<Throwable> failure) implements Part {}
    }

    CagedSource(CodedForm form, InputStream bytes) {
        this(form, bytes, PATIENCE_CPU_NANOS);
    }

    /** @param patienceCpuNanos processor time without a block that is taken for a circle */
    CagedSource(CodedForm form, InputStream bytes, long patienceCpuNanos) {
        this.patienceCpuNanos = patienceCpuNanos;
        gate = new Gate(bytes);
        thread = new Thread(() -> run(form), "decoder");
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * How the sound is made.
     *
     * @throws IOException where the file holds nothing that can be decoded
     */
    CodedForm.Format format() throws IOException {
        if (format == null) {
            Part first = next();
            if (!(first instanceof Part.Made made)) {
                throw new IOException("nothing in it can be decoded");
            }
            format = made.format();
        }
        return format;
    }

    @Override
    public int channels() {
        return format.channels();
    }

    @Override
    public double rateHz() {
        return format.rateHz();
    }

    /** Places that were damaged and left out, the end among them where the decoder failed there. */
    int damagedPlaces() {
        return damaged + (failure.isPresent() ? 1 : 0);
    }

    /** Whether the decoder came to its end and the samples aren't those that the file's checksum was made of. */
    boolean otherChecksum() {
        return otherChecksum;
    }

    @Override
    public int read(float[] into, int frames) throws IOException {
        int channels = format().channels();
        int done = 0;
        while (done < frames) {
            if (taken == block.length && !nextBlock()) {
                break;
            }
            int count = Math.min((frames - done) * channels, block.length - taken);
            System.arraycopy(block, taken, into, done * channels, count);
            taken += count;
            done += count / channels;
        }
        return done == 0 ? -1 : done;
    }

    private boolean nextBlock() {
        if (ended) {
            return false;
        }
        Part part = next();
        if (part instanceof Part.Frames frames) {
            block = frames.interleaved;
            taken = 0;
            return true;
        }
        ended = true;
        failure = part instanceof Part.End end ? end.failure() : Optional.empty();
        return false;
    }

    private Part next() {
        try {
            while (true) {
                Part part = parts.poll(LOOK_MS, TimeUnit.MILLISECONDS);
                if (part != null) {
                    return part;
                }
                long cpuNanos = THREADS.getThreadCpuTime(thread.getId());
                if (cpuNanos - cpuNanosAtLastPart > patienceCpuNanos || !thread.isAlive() && parts.isEmpty()) {
                    close();
                    return new Part.End(Optional.of(new IOException("the decoder goes in a circle")));
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Part.End(Optional.of(e));
        }
    }

    private void run(CodedForm form) {
        Optional<Throwable> why = Optional.empty();
        try {
            form.decode(gate, new Held());
        } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError | AssertionError e) {
            why = Optional.of(e);
        }
        try {
            put(new Part.End(why));
        } catch (IOException e) {
            // Nobody waits for it any more.
        }
    }

    private void put(Part part) throws IOException {
        try {
            while (!parts.offer(part, LOOK_MS, TimeUnit.MILLISECONDS)) {
                if (left) {
                    throw new IOException("left behind");
                }
            }
            cpuNanosAtLastPart = THREADS.getCurrentThreadCpuTime();
        } catch (InterruptedException e) {
            throw new IOException("left behind", e);
        }
    }

    /** Leaves the decoder: it stops at its next read or block. */
    @Override
    public void close() {
        left = true;
        thread.interrupt();
        parts.clear();
        try {
            thread.join(LOOK_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Holds what comes out of the decoder to what can be. */
    private final class Held implements CodedForm.Taker {
        private CodedForm.Format said;
        private long samples;

        @Override
        public void format(CodedForm.Format format) throws IOException {
            boolean can = format.channels() >= 1
                    && format.channels() <= 8
                    && format.rateHz() >= 1
                    && format.rateHz() <= 1e6
                    && format.bitsPerSample() >= 4
                    && format.bitsPerSample() <= 32;
            if (!can) {
                throw new IOException("impossible: " + format);
            }
            said = format;
            put(new Part.Made(format));
        }

        @Override
        public void frames(float[] interleaved) throws IOException {
            if (interleaved.length == 0) {
                return;
            }
            samples += interleaved.length;
            if (interleaved.length % said.channels() != 0 || samples * 2 > MOST_EXPANSION * (gate.count + 4096)) {
                throw new IOException("impossible length");
            }
            boolean nonsense = false;
            for (int i = 0; i < interleaved.length; i++) {
                if (!(Math.abs(interleaved[i]) <= MOST_SHARE)) {
                    interleaved[i] = 0;
                    nonsense = true;
                }
            }
            if (nonsense) {
                damaged();
            }
            put(new Part.Frames(interleaved));
        }

        @Override
        public void damaged() {
            damaged++;
        }

        @Override
        public void otherChecksum() {
            otherChecksum = true;
        }
    }

    /** Counts what is read, and ends a decoder that reads on past the end or after it was left behind. */
    private final class Gate extends FilterInputStream {
        private long count;
        private int pastEnd;

        Gate(InputStream bytes) {
            super(bytes);
        }

        private int counted(int read) throws IOException {
            if (left) {
                throw new IOException("left behind");
            }
            if (read < 0 && ++pastEnd > READS_PAST_END) {
                throw new EOFException("the file ends too early");
            }
            count += Math.max(0, read);
            return read;
        }

        @Override
        public int read() throws IOException {
            int value = in.read();
            counted(value < 0 ? -1 : 1);
            return value;
        }

        @Override
        public int read(byte[] into, int offset, int length) throws IOException {
            return counted(in.read(into, offset, length));
        }

        @Override
        public long skip(long bytes) throws IOException {
            long skipped = in.skip(bytes);
            counted(skipped == 0 && bytes > 0 ? -1 : 0);
            count += skipped;
            return skipped;
        }

        @Override
        public boolean markSupported() {
            return false;
        }

        @Override
        public void close() {
            // Whoever opened the file closes it.
        }
    }
}
