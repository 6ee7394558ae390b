package evenblade.input.capture;

import evenblade.input.audio.SampleCoding;
import java.io.IOException;

/** A live input that hands over what a test tells it to, as fast as it is read. */
final class ScriptedInput implements LiveSource {
    /** What a read gives, by its count from 0: frames of a running count, 0 for nothing yet, -1 for the end. */
    interface Script {
        int frames(long read, int most) throws IOException;
    }

    private final InputFormat format;
    private final Script script;
    private long reads;
    private long next;
    private boolean closed;

    ScriptedInput(InputFormat format, Script script) {
        this.format = format;
        this.script = script;
    }

    static InputFormat mono16() {
        return new InputFormat(8000, 1, SampleCoding.SIGNED_16_LITTLE);
    }

    @Override
    public String name() {
        return "invented input";
    }

    @Override
    public InputFormat format() {
        return format;
    }

    @Override
    public void start() {}

    @Override
    public int read(byte[] into, int mostFrames) throws IOException {
        int frames = script.frames(reads++, mostFrames);
        for (int i = 0; i < frames * format.frameBytes(); i++) {
            into[i] = byteAt(next++);
        }
        return frames;
    }

    /** The byte that this input hands over at a place. */
    static byte byteAt(long place) {
        return (byte) (place * 31 + (place >> 8));
    }

    boolean closed() {
        return closed;
    }

    @Override
    public void close() {
        closed = true;
    }
}
