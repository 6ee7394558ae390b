package evenblade.input.capture;

import evenblade.input.audio.AudioPath;
import evenblade.input.recording.BlockSink;
import java.io.IOException;
import java.util.OptionalDouble;

/** Hears a live input without keeping it: its sound goes to whoever listens, and to no file. */
public final class Listening {
    private final LiveSource input;
    private final TeeSource source;

    /**
     * Prepares; the input isn't started yet.
     *
     * @param input belongs to this from now on
     * @param seconds how long; until stopped, where empty
     */
    public Listening(LiveSource input, OptionalDouble seconds) {
        this.input = input;
        long most = seconds.isPresent()
                ? Math.round(seconds.getAsDouble() * input.format().rateHz())
                : Long.MAX_VALUE;
        this.source = new TeeSource(input, bytes -> {}, most, System::nanoTime);
    }

    public InputFormat format() {
        return input.format();
    }

    public String device() {
        return input.name();
    }

    /** Sound heard so far, seconds. */
    public double heardS() {
        return (double) source.frames() / format().rateHz();
    }

    /**
     * Listens until the length is reached, {@link #stop} is called or the input gives out, and closes it. May be
     * called once.
     *
     * @param listener gets the sound as it comes, on this thread
     */
    public Ending listen(BlockSink listener) {
        try (input) {
            source.start();
            new AudioPath(source, Recorder.framesPerBlock(format())).deliverTo(listener);
        } catch (IOException e) {
            source.end(Ending.DEVICE_GONE, CaptureFact.said(e));
        }
        return source.ending();
    }

    /** Ends soon; from any thread, also before it runs. */
    public void stop() {
        source.end(Ending.STOPPED, CaptureFact.none());
    }
}
