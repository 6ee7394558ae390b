package evenblade.measure.live;

import evenblade.input.recording.BlockSink;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * The bounded queue between capture and analysis. Whoever records never waits: where the queue is full
 * the block is left out of the live view, and counted.
 */
final class SoundBacklog implements BlockSink {
    private final int channels;
    private final BlockingQueue<Block> waiting;
    private final AtomicLong skipped = new AtomicLong();
    private long next;

    /**
     * A block on its way.
     *
     * @param samples its own copy
     */
    static final class Block {
        final long firstFrame;
        final float[] samples;
        final int frames;

        private Block(long firstFrame, float[] samples, int frames) {
            this.firstFrame = firstFrame;
            this.samples = samples;
            this.frames = frames;
        }
    }

    SoundBacklog(int channels, int mostBlocks) {
        this.channels = channels;
        this.waiting = new ArrayBlockingQueue<>(mostBlocks);
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        Block block = new Block(next, Arrays.copyOf(interleaved, frames * channels), frames);
        next += frames;
        if (!waiting.offer(block)) {
            skipped.addAndGet(frames);
        }
    }

    /** The next block; empty where none came in time. */
    Optional<Block> take(long patienceMs) throws InterruptedException {
        return Optional.ofNullable(waiting.poll(patienceMs, TimeUnit.MILLISECONDS));
    }

    /** Frames that were left out so far. */
    long skippedFrames() {
        return skipped.get();
    }

    boolean empty() {
        return waiting.isEmpty();
    }
}
