package evenblade.recording;

/**
 * Measures a {@link ChannelQuality} on samples as they pass, block by block, whatever the block size.
 *
 * <p><b>Clipping.</b> A smooth peak passes through the last δ below its top twice as fast as through
 * the last 4δ (it is a parabola there), so of the samples within 4δ of the extreme at most about half
 * lie within δ. A clipped peak is flat: nearly all of them do. With δ = 0.1 % of half the span (or
 * one quantum, if that is more), n₁ the samples within δ that sit in runs, and n₄ the samples within
 * 4δ, the clipped number is estimated as 2n₁ − n₄ where n₁ exceeds ¾ n₄, and 0 otherwise. So a clean
 * sine, which spends 3 % of its time within 0.1 % of its extremes, is not called clipped.
 *
 * <p><b>When it is wrong.</b> Peaks clipped for fewer samples than the run length in use are not
 * seen; a square wave or a switch signal is flat by nature and reads as clipped.
 */
public final class QualityMeter {
    private final String channel;
    private final CrestCounter top;
    private final CrestCounter bottom;
    private final StuckRun stuck = new StuckRun();
    private long count;
    private double sum;
    private double sumOfSquares;
    private float min = Float.POSITIVE_INFINITY;
    private float max = Float.NEGATIVE_INFINITY;

    /**
     * @param channel name to report under
     * @param quantum the smallest difference two samples can have, 0 where it isn't known
     * @param run how many neighbouring samples at an extreme make a flat top, 2 or more
     */
    public QualityMeter(String channel, double quantum, int run) {
        this.channel = channel;
        this.top = new CrestCounter(1, quantum, run);
        this.bottom = new CrestCounter(-1, quantum, run);
    }

    /**
     * Takes the samples of one channel from interleaved sound.
     *
     * @param lane which sample of each frame
     * @param lanes samples per frame
     */
    public void add(float[] interleaved, int lane, int lanes, int frames) {
        if (frames == 0) {
            return;
        }
        int end = lane + frames * lanes;
        addMoments(interleaved, lane, lanes, end);
        top.prepare(max, max - min);
        bottom.prepare(-min, max - min);
        top.add(interleaved, lane, lanes, end);
        bottom.add(interleaved, lane, lanes, end);
        stuck.add(interleaved, lane, lanes, frames);
        count += frames;
    }

    private void addMoments(float[] x, int from, int stride, int end) {
        double sumA = 0;
        double sumB = 0;
        double squareA = 0;
        double squareB = 0;
        float low = min;
        float high = max;
        int i = from;
        for (; i + stride < end; i += 2 * stride) {
            float a = x[i];
            float b = x[i + stride];
            sumA += a;
            sumB += b;
            squareA += (double) a * a;
            squareB += (double) b * b;
            float small = a < b ? a : b;
            float large = a < b ? b : a;
            if (small < low) {
                low = small;
            }
            if (large > high) {
                high = large;
            }
        }
        for (; i < end; i += stride) {
            float a = x[i];
            sumA += a;
            squareA += (double) a * a;
            low = Math.min(low, a);
            high = Math.max(high, a);
        }
        sum += sumA + sumB;
        sumOfSquares += squareA + squareB;
        min = low;
        max = high;
    }

    /** Whether every sample so far had the same value. */
    public boolean constant() {
        return count == 0 || min == max;
    }

    /**
     * What was measured so far.
     *
     * @param scale turns a sample into the channel's unit
     * @param offset added after scaling
     */
    public ChannelQuality quality(double scale, double offset) {
        if (count == 0) {
            return new ChannelQuality(channel, 0, 0, 0, 0, 0);
        }
        double mean = sum / count;
        double variance = Math.max(0, sumOfSquares / count - mean * mean);
        double peak = Math.max(Math.abs(max * scale + offset), Math.abs(min * scale + offset));
        double clipped = constant() ? 0 : (double) (top.clipped() + bottom.clipped()) / count;
        return new ChannelQuality(
                channel, clipped, stuck.longest(), peak, mean * scale + offset, Math.sqrt(variance) * Math.abs(scale));
    }
}
