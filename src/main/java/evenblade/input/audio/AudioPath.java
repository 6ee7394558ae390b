package evenblade.input.audio;

import be.tarsos.dsp.AudioEvent;
import be.tarsos.dsp.AudioGenerator;
import be.tarsos.dsp.AudioProcessor;
import evenblade.input.recording.BlockSink;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;

/**
 * The one way sound takes through the program, from a file as from a live input: a source's frames
 * through the audio library's chain to a sink, every frame once and in order, as the numbers that they are.
 *
 * <p>The chain is made for one lane. Frames of any channel count go through it as one lane of
 * interleaved samples, and a block always holds whole frames; the last block is as short as what is
 * left and is not filled up with zeros.
 */
public final class AudioPath {
    private final FrameSource source;
    private final int framesPerBlock;
    private final float[] part;
    private volatile boolean ended;

    /**
     * @param source is read from the thread that calls {@link #deliverTo}
     * @param framesPerBlock frames in every block but the last
     */
    public AudioPath(FrameSource source, int framesPerBlock) {
        this.source = source;
        this.framesPerBlock = framesPerBlock;
        this.part = new float[framesPerBlock * source.channels()];
    }

    /**
     * Carries everything to the sink; returns when the source has ended or {@link #stop} was called.
     * What the sink or the source throws comes out of here; an {@code IOException} of the source comes
     * wrapped as {@link java.io.UncheckedIOException}.
     *
     * @return the number of frames delivered
     */
    public long deliverTo(BlockSink sink) {
        AudioGenerator chain = new AudioGenerator(part.length, 0);
        long[] delivered = {0};
        chain.addAudioProcessor(new AudioProcessor() {
            @Override
            public boolean process(AudioEvent event) {
                float[] block = event.getFloatBuffer();
                int frames = fill(block);
                if (frames > 0) {
                    boolean whole = frames == framesPerBlock;
                    sink.accept(whole ? block : Arrays.copyOf(block, frames * source.channels()), frames);
                    delivered[0] += frames;
                }
                if (frames < framesPerBlock) {
                    chain.stop();
                }
                return true;
            }

            @Override
            public void processingFinished() {}
        });
        chain.run();
        return delivered[0];
    }

    /** As many frames as there are, up to a whole block: a source may give a block in parts. */
    private int fill(float[] block) {
        int frames = 0;
        while (frames < framesPerBlock && !ended) {
            int more;
            try {
                more = source.read(part, framesPerBlock - frames);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            if (more < 0) {
                break;
            }
            System.arraycopy(part, 0, block, frames * source.channels(), more * source.channels());
            frames += more;
        }
        return frames;
    }

    /** Ends the delivery after the block under way; may be called from any thread. */
    public void stop() {
        ended = true;
    }
}
