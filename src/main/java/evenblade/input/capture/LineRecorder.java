package evenblade.input.capture;

import evenblade.base.problem.BadInput;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Records lines as they come, byte for byte: every line to the file, the time of its arrival to a file beside it, and
 * its text to whoever listens. The file holds whole lines only, but for a last one that the input left unended, so it
 * can be read at any moment.
 */
public final class LineRecorder {
    /** A sensor that sends nothing for so long after its first line has gone. */
    static final double PATIENCE_S = 10;

    private static final int MOST_WAITING = 100_000; // minutes of lines, should the disk stand still
    private static final long SETTLE_NANOS = TimeUnit.MILLISECONDS.toNanos(WriterThread.SETTLE_EVERY_MS);
    private static final byte[] ARRIVALS_HEADING = "line,arrived (s)\n".getBytes(StandardCharsets.US_ASCII);

    /** A line with the moment at which it was whole, by the machine's clock; none at the end. */
    private record Arrived(Optional<LineBytes.Line> line, long nanos) {}

    private final InputStream input;
    private final Path path;
    private final Recorder.Room room;
    private final double seconds;
    private final FileChannel file;
    private final FileChannel arrivals;
    private final ByteArrayOutputStream unwritten = new ByteArrayOutputStream();
    private final BlockingQueue<Arrived> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private volatile boolean stopped;
    private volatile Ending inputEnding = Ending.INPUT_ENDED;
    private volatile double elapsedS;
    private long first;
    private long lines;
    private long cut;

    private LineRecorder(
            InputStream input, Path path, Recorder.Room room, double seconds, FileChannel file, FileChannel arrivals) {
        this.input = input;
        this.path = path;
        this.room = room;
        this.seconds = seconds;
        this.file = file;
        this.arrivals = arrivals;
    }

    /**
     * Prepares a recording; the files are made.
     *
     * @param input lines; a line is done when its end has come; closed at the end
     * @param path of a file that isn't there yet
     * @param arrivals of another, for the times of arrival
     * @param room of its disk
     * @param seconds how long by the clock; infinity for no limit
     * @throws BadInput where a file can't be made or the disk is nearly full
     */
    public static LineRecorder prepare(
            InputStream input, Path path, Path arrivals, Recorder.Room room, double seconds) {
        try {
            if (room.freeBytes() < Recorder.KEEP_FREE_BYTES) {
                throw BadInput.in(path)
                        .found(
                                String.format(Locale.ROOT, "%.0f MB free on this disk", room.freeBytes() / 1e6),
                                String.format(Locale.ROOT, "%.0f MB for the rest", Recorder.KEEP_FREE_BYTES / 1e6));
            }
            FileChannel file = made(path);
            try {
                FileChannel beside = made(arrivals);
                FolderNames.settle(path);
                return new LineRecorder(input, path, room, seconds, file, beside);
            } catch (IOException e) {
                file.close();
                throw e;
            }
        } catch (IOException e) {
            throw Recorder.cannotWrite(path, e);
        }
    }

    private static FileChannel made(Path path) throws IOException {
        return FileChannel.open(path, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW);
    }

    /** Time since the first line, seconds. */
    public double elapsedS() {
        return elapsedS;
    }

    /** Lines in the file. */
    public long lines() {
        return lines;
    }

    /** Lines that never ended and were cut. */
    public long cut() {
        return cut;
    }

    /** Ends soon; from any thread. */
    public void stop() {
        stopped = true;
    }

    /**
     * Records until the length is reached, {@link #stop} is called, or input or disk give out (by itself after
     * {@value #PATIENCE_S} s without a line). What has come in until then is written. May be called once.
     *
     * @param listener gets the text of every line, on this thread
     */
    public Ending record(Consumer<String> listener) {
        Thread reader = new Thread(this::readLines, "lines from sensor");
        reader.setDaemon(true);
        reader.start();
        try (file;
                arrivals) {
            unwritten.writeBytes(ARRIVALS_HEADING);
            Ending ending = write(listener);
            for (Arrived late; (late = waiting.poll()) != null; ) {
                if (late.line().isPresent()) {
                    append(late.line().get(), late.nanos(), listener);
                }
            }
            settle();
            return ending;
        } catch (IOException e) {
            return Ending.DISK_FAILED;
        } finally {
            leave();
        }
    }

    /** Its reader may still wait for a line that never comes. */
    private void leave() {
        try {
            input.close();
        } catch (IOException e) {
            // One that was pulled out needs no closing.
        }
    }

    private Ending write(Consumer<String> listener) throws IOException {
        long looked = System.nanoTime();
        double silentS = 0;
        long settled = System.nanoTime();
        while (!stopped) {
            Arrived next;
            try {
                next = waiting.poll(50, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return Ending.STOPPED;
            }
            long now = System.nanoTime();
            if (next != null && next.line().isEmpty()) {
                return inputEnding;
            }
            if (next != null) {
                silentS = 0;
                append(next.line().get(), next.nanos(), listener);
            }
            silentS += next == null ? Math.min(TeeSource.LOOK_S, (now - looked) / 1e9) : 0;
            looked = now;
            elapsedS = lines == 0 ? 0 : (now - first) / 1e9;
            if (elapsedS >= seconds) {
                return Ending.LENGTH_REACHED;
            }
            if (lines != 0 && silentS > PATIENCE_S) {
                return Ending.DEVICE_GONE;
            }
            if (now - settled > SETTLE_NANOS) {
                settle();
                settled = now;
                if (room.freeBytes() < Recorder.KEEP_FREE_BYTES) {
                    return Ending.DISK_NEARLY_FULL;
                }
            }
        }
        return Ending.STOPPED;
    }

    private void append(LineBytes.Line line, long nanos, Consumer<String> listener) throws IOException {
        first = lines == 0 ? nanos : first;
        lines++;
        cut += line.cut() ? 1 : 0;
        writeAll(file, line.bytes());
        String at = String.format(Locale.ROOT, "%d,%.6f\n", lines, (nanos - first) / 1e9);
        unwritten.writeBytes(at.getBytes(StandardCharsets.US_ASCII));
        listener.accept(new String(line.bytes(), StandardCharsets.UTF_8).stripTrailing());
    }

    private void settle() throws IOException {
        file.force(false);
        writeAll(arrivals, unwritten.toByteArray());
        unwritten.reset();
        arrivals.force(false);
        FolderNames.requireThere(path);
    }

    private static void writeAll(FileChannel channel, byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
    }

    private void readLines() {
        LineBytes parted = new LineBytes(input);
        try (input) {
            Optional<LineBytes.Line> line;
            while (!stopped && (line = parted.next()).isPresent()) {
                waiting.put(new Arrived(line, System.nanoTime()));
            }
            waiting.put(new Arrived(Optional.empty(), System.nanoTime()));
        } catch (IOException e) {
            // A port that was pulled out.
            inputEnding = Ending.DEVICE_GONE;
            if (!waiting.offer(new Arrived(Optional.empty(), System.nanoTime()))) {
                stopped = true;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
