package evenblade.measure.signal;

import evenblade.input.recording.BlockSink;
import evenblade.input.recording.Series;
import java.util.ArrayList;
import java.util.List;

/**
 * Keeps the latest stretch of passing sound at a lower rate, to be looked at again and again: the live
 * counterpart of {@link Decimator}, with the same filters.
 *
 * <p>Kept sample n lies exactly at n / {@link #rateHz} seconds of the sound. The newest kept sample is as old as half the length of the filters,
 * some {@code 30 / rateHz} seconds. Used by one thread.
 */
public final class SlidingWindow implements BlockSink {
    private final DecimationPlan plan;
    private final int channels;
    private final List<Ring> rings = new ArrayList<>();
    private final List<List<DecimationStage>> stages = new ArrayList<>();
    private float[] single = new float[0];

    private SlidingWindow(DecimationPlan plan, int channels, int length) {
        this.plan = plan;
        this.channels = channels;
        for (int c = 0; c < channels; c++) {
            Ring ring = new Ring(length);
            rings.add(ring);
            stages.add(plan.stages(ring));
        }
    }

    /**
     * Plans the cheapest decimation that keeps the band.
     *
     * @param fromHz rate of the sound
     * @param keepUpToHz highest frequency to be kept true
     * @param channels channels in the sound, all of which are kept
     * @param seconds how much is kept
     */
    public static SlidingWindow plan(double fromHz, double keepUpToHz, int channels, double seconds) {
        DecimationPlan plan = DecimationPlan.cheapest(fromHz, keepUpToHz);
        return new SlidingWindow(plan, channels, (int) Math.ceil(seconds * plan.toHz()));
    }

    /** Samples per second that are kept. */
    public double rateHz() {
        return plan.toHz();
    }

    /** Samples in the window now. */
    public int size() {
        return rings.get(0).size();
    }

    /** Time of the window's first sample, seconds since the first of the sound. */
    public double fromS() {
        return (rings.get(0).taken - size()) / rateHz();
    }

    /** A copy of the latest samples of one channel, as shares of full scale; at most {@link #size}. */
    public Series latest(int channel, int count) {
        return rings.get(channel).copy(count);
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        for (int c = 0; c < channels; c++) {
            List<DecimationStage> chain = stages.get(c);
            if (chain.isEmpty()) {
                if (single.length < frames) {
                    single = new float[frames];
                }
                for (int n = 0; n < frames; n++) {
                    single[n] = interleaved[n * channels + c];
                }
                rings.get(c).accept(single, frames);
            } else {
                chain.get(0).accept(interleaved, c, channels, frames);
                chain.forEach(DecimationStage::giveReady);
            }
        }
    }

    private static final class Ring implements FloatSink {
        private final float[] values;
        private long taken;

        Ring(int length) {
            values = new float[length];
        }

        int size() {
            return (int) Math.min(taken, values.length);
        }

        @Override
        public void accept(float[] from, int count) {
            for (int i = 0; i < count; i++) {
                values[(int) ((taken + i) % values.length)] = from[i];
            }
            taken += count;
        }

        Series copy(int size) {
            float[] copy = new float[size];
            for (int i = 0; i < size; i++) {
                copy[i] = values[(int) ((taken - size + i) % values.length)];
            }
            return Series.ofFloats(copy, size);
        }
    }
}
