package evenblade.input.audio;

import be.tarsos.dsp.AudioDispatcher;
import be.tarsos.dsp.AudioEvent;
import be.tarsos.dsp.AudioProcessor;
import evenblade.input.recording.BlockSink;

/**
 * The one way sound takes through the program, from a file as from a live input: a source's frames
 * through the audio library's dispatcher to a sink, every frame once and in order.
 *
 * <p>The dispatcher is made for one lane. Frames of any channel count are shown to it as one lane of
 * interleaved samples, and a block always holds whole frames; the last block is as short as what is
 * left and is not filled up with zeros.
 */
public final class AudioPath {
    private final InterleavedStream lane;
    private final AudioDispatcher dispatcher;
    private final int channels;

    /**
     * @param source is read from the thread that calls {@link #deliverTo}
     * @param framesPerBlock frames in every block but the last
     */
    public AudioPath(FrameSource source, int framesPerBlock) {
        this.channels = source.channels();
        this.lane = new InterleavedStream(source, framesPerBlock);
        this.dispatcher = new AudioDispatcher(lane, framesPerBlock * channels, 0);
        dispatcher.setZeroPadLastBuffer(false);
    }

    /**
     * Carries everything to the sink; returns when the source has ended or {@link #stop} was called.
     * What the sink or the source throws comes out of here; an {@code IOException} of the source comes
     * wrapped as {@link java.io.UncheckedIOException}.
     *
     * @return the number of frames delivered
     */
    public long deliverTo(BlockSink sink) {
        long[] delivered = {0};
        dispatcher.addAudioProcessor(new AudioProcessor() {
            @Override
            public boolean process(AudioEvent event) {
                float[] samples = event.getFloatBuffer();
                int frames = samples.length / channels;
                sink.accept(samples, frames);
                delivered[0] += frames;
                return true;
            }

            @Override
            public void processingFinished() {}
        });
        dispatcher.run();
        return delivered[0];
    }

    /** Ends the delivery after the block under way; may be called from any thread. */
    public void stop() {
        lane.end();
    }
}
