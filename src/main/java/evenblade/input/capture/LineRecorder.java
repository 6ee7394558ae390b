package evenblade.input.capture;

import evenblade.base.problem.BadInput;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
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
 * Records lines of text as they come: every line to the file, and to whoever listens. The file holds
 * whole lines only, so it can be read at any moment.
 */
public final class LineRecorder {
    /** A sensor that sends nothing for so long after its first line has gone. */
    static final double PATIENCE_S = 10;

    private static final int MOST_WAITING = 100_000;
    private static final long SETTLE_NANOS = TimeUnit.MILLISECONDS.toNanos(WriterThread.SETTLE_EVERY_MS);

    private final InputStream input;
    private final Recorder.Room room;
    private final double seconds;
    private final FileChannel file;
    private final BlockingQueue<Optional<String>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private volatile boolean stopped;
    private volatile Ending inputEnding = Ending.INPUT_ENDED;
    private volatile double elapsedS;
    private long lines;

    private LineRecorder(InputStream input, Recorder.Room room, double seconds, FileChannel file) {
        this.input = input;
        this.room = room;
        this.seconds = seconds;
        this.file = file;
    }

    /**
     * Prepares a recording; the file is made.
     *
     * @param input lines in UTF-8; a line is done when its line feed has come
     * @param path of a file that isn't there yet
     * @param room of its disk
     * @param seconds how long by the clock; infinity for no limit
     * @throws BadInput where the file can't be made or the disk is nearly full
     */
    public static LineRecorder prepare(InputStream input, Path path, Recorder.Room room, double seconds) {
        try {
            if (room.freeBytes() < Recorder.KEEP_FREE_BYTES) {
                throw BadInput.in(path)
                        .found(
                                String.format(Locale.ROOT, "%.0f MB free on this disk", room.freeBytes() / 1e6),
                                String.format(Locale.ROOT, "%.0f MB for the rest", Recorder.KEEP_FREE_BYTES / 1e6));
            }
            return new LineRecorder(
                    input,
                    room,
                    seconds,
                    FileChannel.open(path, StandardOpenOption.WRITE, StandardOpenOption.CREATE_NEW));
        } catch (IOException e) {
            throw Recorder.cannotWrite(path, e);
        }
    }

    /** Time since the first line, seconds. */
    public double elapsedS() {
        return elapsedS;
    }

    /** Lines in the file. */
    public long lines() {
        return lines;
    }

    /** Ends soon; from any thread. */
    public void stop() {
        stopped = true;
    }

    /**
     * Records until the length is reached, {@link #stop} is called, or input or disk give out (by itself after {@value #PATIENCE_S} s without a line). May be called once.
     *
     * @param listener gets every line, on this thread
     */
    public Ending record(Consumer<String> listener) {
        Thread reader = new Thread(this::readLines, "lines from sensor");
        reader.setDaemon(true);
        reader.start();
        try (file) {
            Ending ending = write(listener);
            file.force(true);
            return ending;
        } catch (IOException e) {
            return Ending.DISK_FAILED;
        }
    }

    private Ending write(Consumer<String> listener) throws IOException {
        long first = 0;
        long looked = System.nanoTime();
        double silentS = 0;
        long settled = System.nanoTime();
        while (!stopped) {
            Optional<String> line;
            try {
                line = waiting.poll(50, TimeUnit.MILLISECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return Ending.STOPPED;
            }
            long now = System.nanoTime();
            if (line != null && line.isEmpty()) {
                return inputEnding;
            }
            if (line != null) {
                first = first == 0 ? now : first;
                silentS = 0;
                lines++;
                append(line.get());
                listener.accept(line.get());
            }
            silentS += line == null ? Math.min(TeeSource.LOOK_S, (now - looked) / 1e9) : 0;
            looked = now;
            elapsedS = first == 0 ? 0 : (now - first) / 1e9;
            if (elapsedS >= seconds) {
                return Ending.LENGTH_REACHED;
            }
            if (first != 0 && silentS > PATIENCE_S) {
                return Ending.DEVICE_GONE;
            }
            if (now - settled > SETTLE_NANOS) {
                file.force(false);
                settled = now;
                if (room.freeBytes() < Recorder.KEEP_FREE_BYTES) {
                    return Ending.DISK_NEARLY_FULL;
                }
            }
        }
        return Ending.STOPPED;
    }

    private void append(String line) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap((line + "\n").getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
            file.write(bytes);
        }
    }

    private void readLines() {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(input, StandardCharsets.UTF_8))) {
            String line;
            while (!stopped && (line = lines.readLine()) != null) {
                waiting.put(Optional.of(line));
            }
            waiting.put(Optional.empty());
        } catch (IOException e) {
            // A port that was pulled out.
            inputEnding = Ending.DEVICE_GONE;
            if (!waiting.offer(Optional.empty())) {
                stopped = true;
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
