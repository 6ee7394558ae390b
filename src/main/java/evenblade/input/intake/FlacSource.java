package evenblade.input.intake;

import evenblade.input.audio.FrameSource;
import java.io.IOException;
import java.io.InputStream;
import org.jflac.FLACDecoder;
import org.jflac.FrameListener;
import org.jflac.frame.Frame;
import org.jflac.metadata.Metadata;
import org.jflac.metadata.StreamInfo;

/** Frames of a FLAC file, decoded as they are asked for. */
final class FlacSource implements FrameSource {
    private final FLACDecoder decoder;
    private final StreamInfo info;
    private final float scale;
    private int damaged;
    private int blockFrames;
    private int taken;

    /**
     * @param bytes the file from its first byte on
     */
    FlacSource(InputStream bytes) throws IOException {
        decoder = new FLACDecoder(bytes);
        decoder.addFrameListener(new FrameListener() {
            @Override
            public void processMetadata(Metadata metadata) {}

            @Override
            public void processFrame(Frame frame) {}

            @Override
            public void processError(String message) {
                damaged++;
            }
        });
        decoder.readMetadata();
        info = decoder.getStreamInfo();
        if (info == null || info.getChannels() == 0 || info.getSampleRate() == 0) {
            throw new IOException("the FLAC stream information is missing or empty");
        }
        scale = Math.scalb(1f, 1 - info.getBitsPerSample());
    }

    @Override
    public int channels() {
        return info.getChannels();
    }

    @Override
    public double rateHz() {
        return info.getSampleRate();
    }

    int bitsPerSample() {
        return info.getBitsPerSample();
    }

    /** Frames by the header; 0 where the header doesn't say. */
    long totalFrames() {
        return info.getTotalSamples();
    }

    /** Places where the stream was damaged; the decoder gives silence there or finds no block at all. */
    int damagedPlaces() {
        return damaged;
    }

    @Override
    public int read(float[] into, int frames) throws IOException {
        int done = 0;
        while (done < frames) {
            if (taken == blockFrames && !nextBlock()) {
                break;
            }
            int count = Math.min(frames - done, blockFrames - taken);
            int channels = channels();
            for (int channel = 0; channel < channels; channel++) {
                int[] samples = decoder.getChannelData()[channel].getOutput();
                for (int i = 0, at = done * channels + channel; i < count; i++, at += channels) {
                    into[at] = samples[taken + i] * scale;
                }
            }
            taken += count;
            done += count;
        }
        return done == 0 ? -1 : done;
    }

    private boolean nextBlock() throws IOException {
        Frame block = decoder.readNextFrame();
        if (block == null) {
            return false;
        }
        blockFrames = block.header.blockSize;
        taken = 0;
        return true;
    }
}
