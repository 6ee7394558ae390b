package evenblade.input.capture;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value;
import evenblade.input.audio.FrameSource;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongSupplier;

/**
 * Turns a live input into frames for the audio path; the bytes go to the file first, exactly as they
 * came.
 */
final class TeeSource implements FrameSource {
    /** An input that gives nothing for so long while it is asked has gone. */
    static final double PATIENCE_S = 5;

    /** The most that one look without an answer counts: where the machine stood still, nobody was asking. */
    static final double LOOK_S = 0.2;

    private final LiveSource input;
    private final InputFormat format;
    private final Consumer<byte[]> tape;
    private final ArrivalClock clock;
    private final LongSupplier nanoClock;
    private final long mostFrames;
    private final NoiseFloor floor;
    private byte[] bytes = new byte[0];
    private volatile boolean asked;
    private long startedNanos;
    private long lookedNanos;
    private double silentS;
    private volatile long frames;
    private volatile Ending ending;
    private volatile Value detail = CaptureFact.none();

    /**
     * @param tape gets every block of bytes; the array is its own
     * @param mostFrames where to end
     * @param nanoClock the machine's clock, nanoseconds
     */
    TeeSource(LiveSource input, Consumer<byte[]> tape, long mostFrames, LongSupplier nanoClock) {
        this.nanoClock = nanoClock;
        this.input = input;
        this.format = input.format();
        this.tape = tape;
        this.clock = new ArrivalClock(format.rateHz());
        this.mostFrames = mostFrames;
        this.floor = new NoiseFloor(format.rateHz());
    }

    /** From now on the system is asked whether the input is still the same one; the sound need not be judged. */
    void askedOtherwise() {
        asked = true;
    }

    void start() throws IOException {
        input.start();
        startedNanos = nanoClock.getAsLong();
        lookedNanos = startedNanos;
    }

    /** Ends after the block under way, unless it has ended already. */
    synchronized void end(Ending why, Value reason) {
        if (ending == null) {
            detail = reason;
            ending = why;
        }
    }

    @Override
    public int channels() {
        return format.channels();
    }

    @Override
    public double rateHz() {
        return format.rateHz();
    }

    @Override
    public int read(float[] into, int wanted) {
        int room = (int) Math.min(wanted, mostFrames - frames);
        if (room == 0) {
            end(Ending.LENGTH_REACHED, CaptureFact.none());
        }
        if (bytes.length < wanted * format.frameBytes()) {
            bytes = new byte[wanted * format.frameBytes()];
        }
        while (ending == null) {
            int got = readInput(room);
            if (got > 0) {
                return take(got, into);
            }
        }
        return -1;
    }

    private int readInput(int room) {
        try {
            int got = input.read(bytes, room);
            long now = nanoClock.getAsLong();
            silentS = got > 0 ? 0 : silentS + Math.min(LOOK_S, (now - lookedNanos) / 1e9);
            lookedNanos = now;
            if (got < 0) {
                end(Ending.DEVICE_GONE, CaptureFact.none());
            } else if (silentS > PATIENCE_S) {
                end(Ending.DEVICE_GONE, Fact.of(CaptureFact.SILENT_FOR, Measure.TIME.of(PATIENCE_S)));
            }
            return got;
        } catch (IOException e) {
            end(Ending.DEVICE_GONE, CaptureFact.said(e));
            return -1;
        }
    }

    private int take(int got, float[] into) {
        tape.accept(Arrays.copyOf(bytes, got * format.frameBytes()));
        format.coding().decode(bytes, 0, into, got * format.channels());
        frames += got;
        floor.take(into, format.channels(), got);
        Optional<Gap> gap = clock.note(frames, (nanoClock.getAsLong() - startedNanos) / 1e9);
        if (!asked) {
            gap.flatMap(at -> floor.stepAt(at.frame())).ifPresent(step -> end(Ending.INPUT_CHANGED, step));
        }
        return got;
    }

    long frames() {
        return frames;
    }

    ArrivalClock clock() {
        return clock;
    }

    Ending ending() {
        return ending == null ? Ending.STOPPED : ending;
    }

    Value detail() {
        return detail;
    }
}
