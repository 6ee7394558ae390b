package evenblade.input.intake;

import evenblade.input.audio.FrameSource;
import java.io.IOException;
import java.io.InputStream;

/** Frames of an uncompressed file, from bytes that start at the first sample. */
final class PcmSource implements FrameSource {
    private final PcmLayout layout;
    private final InputStream bytes;
    private byte[] raw = new byte[0];
    private long left;
    private long notNumbers;

    PcmSource(PcmLayout layout, InputStream bytes) {
        this.layout = layout;
        this.bytes = bytes;
        this.left = layout.frames();
    }

    @Override
    public int channels() {
        return layout.channels();
    }

    @Override
    public double rateHz() {
        return layout.rateHz();
    }

    @Override
    public int read(float[] into, int frames) throws IOException {
        int wanted = (int) Math.min(frames, left);
        int frameBytes = layout.frameBytes();
        if (raw.length < wanted * frameBytes) {
            raw = new byte[wanted * frameBytes];
        }
        int got = bytes.readNBytes(raw, 0, wanted * frameBytes) / frameBytes;
        if (got == 0) {
            return -1;
        }
        left -= got;
        int samples = got * layout.channels();
        layout.coding().decode(raw, 0, into, samples);
        if (layout.coding().floating()) {
            silenceNotNumbers(into, samples);
        }
        return got;
    }

    private void silenceNotNumbers(float[] samples, int count) {
        for (int i = 0; i < count; i++) {
            if (!Float.isFinite(samples[i])) {
                samples[i] = 0;
                notNumbers++;
            }
        }
    }

    /** Samples so far that were NaN or infinite and were replaced by 0. */
    long notNumbers() {
        return notNumbers;
    }
}
