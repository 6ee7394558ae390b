package evenblade.input.capture;

import evenblade.base.fact.Value;
import evenblade.base.problem.BadInput;
import evenblade.input.audio.AudioPath;
import evenblade.input.recording.BlockSink;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongSupplier;

/**
 * Records a live input: every byte to the file, and the same sound as blocks to whoever listens. The
 * listener must not hold it up.
 */
public final class Recorder {
    /** Room left free on the disk for the rest of the machine. */
    public static final long KEEP_FREE_BYTES = 64_000_000;
    /** Blocks a second, each through the audio path. */
    private static final int BLOCKS_A_SECOND = 20;

    private final LiveSource input;
    private final Path path;
    private final Room room;
    private final OptionalDouble seconds;
    private final int copies;
    private final GrowingWav file;
    private final LongSupplier nanoClock;
    private volatile TeeSource source;
    private volatile boolean stopped;

    /** Knows how much a disk has left. */
    @FunctionalInterface
    public interface Room {
        /** Free bytes for this user. */
        long freeBytes() throws IOException;

        /** What the disk of a folder or file has. */
        static Room of(Path path) {
            return () -> Files.getFileStore(path).getUsableSpace();
        }
    }

    private Recorder(
            LiveSource input,
            Path path,
            Room room,
            OptionalDouble seconds,
            int copies,
            GrowingWav file,
            LongSupplier nanoClock) {
        this.input = input;
        this.path = path;
        this.room = room;
        this.seconds = seconds;
        this.copies = copies;
        this.file = file;
        this.nanoClock = nanoClock;
    }

    /**
     * Prepares a recording; the file is made, the input isn't started yet.
     *
     * @param input belongs to the recorder from now on
     * @param path of a file that isn't there yet
     * @param room of its disk
     * @param seconds how long; until stopped, where empty
     * @param copies how many times the sound will be kept on that disk in the end
     * @throws BadInput where the file can't be made or the disk lacks room
     */
    public static Recorder prepare(LiveSource input, Path path, Room room, OptionalDouble seconds, int copies) {
        return prepare(input, path, room, seconds, copies, System::nanoTime);
    }

    /** Prepares it by a given clock. */
    static Recorder prepare(
            LiveSource input, Path path, Room room, OptionalDouble seconds, int copies, LongSupplier nanoClock) {
        try {
            requireRoom(input.format(), path, room, seconds, copies);
            return new Recorder(input, path, room, seconds, copies, new GrowingWav(path, input.format()), nanoClock);
        } catch (IOException e) {
            input.close();
            throw cannotWrite(path, e);
        } catch (BadInput e) {
            input.close();
            throw e;
        }
    }

    private static void requireRoom(InputFormat format, Path path, Room room, OptionalDouble seconds, int copies)
            throws IOException {
        long free = room.freeBytes();
        long needed = KEEP_FREE_BYTES + copies * format.bytesOf(seconds.orElse(60));
        if (free < needed) {
            throw BadInput.in(path)
                    .found(
                            String.format(Locale.ROOT, "%.0f MB free on this disk", free / 1e6),
                            String.format(
                                    Locale.ROOT,
                                    "%.0f MB for %.0f s of sound at %s, and some to spare",
                                    needed / 1e6,
                                    seconds.orElse(60),
                                    format.text()));
        }
    }

    static BadInput cannotWrite(Path path, IOException e) {
        BadInput.Place place = BadInput.in(path);
        if (e instanceof FileAlreadyExistsException) {
            return place.found("there is a file of that name already", "a new name, nothing is written over");
        }
        if (e instanceof NoSuchFileException) {
            return place.found("its folder isn't there", "a folder that exists");
        }
        if (e instanceof AccessDeniedException) {
            return place.found("this user may not write there", "a folder that can be written");
        }
        String why =
                e instanceof FileSystemException file && file.getReason() != null ? file.getReason() : e.getMessage();
        return place.found("it can't be written (" + why + ")", "a folder that can be written");
    }

    static int framesPerBlock(InputFormat format) {
        return Math.max(1, format.rateHz() / BLOCKS_A_SECOND);
    }

    /** What is being recorded. */
    public InputFormat format() {
        return input.format();
    }

    public String device() {
        return input.name();
    }

    public Path path() {
        return path;
    }

    /** Sound in the file or on its way there, seconds; rises while {@link #record} runs. */
    public double recordedS() {
        TeeSource running = source;
        return running == null ? 0 : (double) running.frames() / format().rateHz();
    }

    /**
     * Records until the length is reached, {@link #stop} is called, or the input or the disk gives out;
     * then closes everything. May be called once.
     *
     * @param listener gets the sound as it comes, on this thread
     */
    public Take record(BlockSink listener) {
        WriterThread[] lane = new WriterThread[1];
        long most = seconds.isPresent() ? Math.round(seconds.getAsDouble() * format().rateHz()) : Long.MAX_VALUE;
        TeeSource taped = new TeeSource(input, bytes -> lane[0].append(bytes), most, nanoClock);
        lane[0] = new WriterThread(
                file, this::freeBytes, KEEP_FREE_BYTES, copies - 1, t -> taped.end(t.ending(), t.detail()));
        source = taped;
        if (stopped) {
            taped.end(Ending.STOPPED, CaptureFact.none());
        }
        Optional<WriterThread.Trouble> trouble = Optional.empty();
        List<Gap> gaps = List.of();
        try (input;
                InputWatch watch =
                        new InputWatch(input, change -> taped.end(Ending.INPUT_CHANGED, change), InputWatch.EVERY_MS)) {
            taped.start();
            watch.start(taped::askedOtherwise);
            new AudioPath(taped, framesPerBlock(format())).deliverTo(listener);
        } catch (IOException e) {
            taped.end(Ending.DEVICE_GONE, CaptureFact.said(e));
        } finally {
            gaps = taped.clock().gaps();
            trouble = lane[0].finish(gaps);
        }
        Ending ending = trouble.map(WriterThread.Trouble::ending).orElse(taped.ending());
        Value detail = trouble.map(WriterThread.Trouble::detail).orElse(taped.detail());
        return new Take(path, input.name(), format(), file.dataBytes() / format().frameBytes(), ending, detail, gaps);
    }

    private long freeBytes() {
        try {
            return room.freeBytes();
        } catch (IOException e) {
            // Not known; writing itself will tell.
            return Long.MAX_VALUE;
        }
    }

    /** Ends the recording after the block under way; may be called from any thread, also before it runs. */
    public void stop() {
        stopped = true;
        TeeSource running = source;
        if (running != null) {
            running.end(Ending.STOPPED, CaptureFact.none());
        }
    }
}
