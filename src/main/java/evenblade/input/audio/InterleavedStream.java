package evenblade.input.audio;

import be.tarsos.dsp.io.TarsosDSPAudioFloatConverter;
import be.tarsos.dsp.io.TarsosDSPAudioFormat;
import be.tarsos.dsp.io.TarsosDSPAudioInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Shows a frame source to the audio library as one lane of 32-bit floats, the one format its
 * converter passes through bit for bit.
 */
final class InterleavedStream implements TarsosDSPAudioInputStream {
    private static final int FLOAT_BITS = 32; // bits of a float

    private final FrameSource source;
    private final TarsosDSPAudioFormat format;
    private final float[] samples;
    private volatile boolean ended;

    InterleavedStream(FrameSource source, int framesPerBlock) {
        this.source = source;
        this.samples = new float[framesPerBlock * source.channels()];
        float lanesPerSecond = (float) (source.rateHz() * source.channels());
        this.format = new TarsosDSPAudioFormat(
                TarsosDSPAudioFloatConverter.PCM_FLOAT,
                lanesPerSecond,
                FLOAT_BITS,
                1,
                Float.BYTES,
                lanesPerSecond,
                false);
    }

    void end() {
        ended = true;
    }

    /** The dispatcher asks for whole blocks, and for the rest of one after a short answer. */
    @Override
    public int read(byte[] bytes, int offset, int length) {
        int frames;
        try {
            frames = ended ? -1 : source.read(samples, length / (Float.BYTES * source.channels()));
        } catch (IOException e) {
            // The dispatcher would turn it into a java.lang.Error.
            throw new UncheckedIOException(e);
        } catch (IndexOutOfBoundsException e) {
            // The dispatcher would take it for the end of the stream and lose the rest in silence.
            throw new IllegalStateException("frame source failed", e);
        }
        if (frames < 0) {
            return -1;
        }
        int count = frames * source.channels();
        ByteBuffer.wrap(bytes, offset, length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .asFloatBuffer()
                .put(samples, 0, count);
        return count * Float.BYTES;
    }

    @Override
    public TarsosDSPAudioFormat getFormat() {
        return format;
    }

    /** Not known to the lane; nothing on our path asks. */
    @Override
    public long getFrameLength() {
        return -1;
    }

    @Override
    public long skip(long bytes) {
        throw new UnsupportedOperationException("sound is delivered whole");
    }

    /** The source belongs to the caller, who closes it. */
    @Override
    public void close() {}
}
