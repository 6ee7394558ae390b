package evenblade.input.recording;

/**
 * Measures a {@link ChannelQuality} on samples as they pass, block by block, whatever the block size.
 *
 * <p><b>Clipping.</b> A smooth peak passes through the last δ below its top twice as fast as through
 * the last 4δ (it is a parabola there), so of the samples within 4δ of the extreme at most about half
 * lie within δ. A clipped peak is flat: nearly all of them do. With δ = 0.1 % of half the span (or
 * one quantum, if that is more), n₁ the samples within δ and n₄ those within 4δ, the clipped number is
 * estimated as 2n₁ − n₄ where n₁ exceeds ¾ n₄ and a tenth of those within δ sit in runs (or many pile
 * up there one by one), and 0 otherwise. So a clean sine, which spends 3 % of its time within 0.1 % of
 * its extremes, is not called clipped, nor is noise, whose largest samples stand alone.
 *
 * <p><b>When it is wrong.</b> Peaks of which less than about 0.5 % was cut off, or that are clipped for
 * fewer samples than the run length in use, are not seen; a square wave or a switch signal is flat by
 * nature and reads as clipped.
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
    /** Samples further than {@link #near} from here may be extremes and are looked at one by one. */
    private float middle;

    private float near = -1;

    /**
     * @param channel name to report under
     * @param quantum the smallest difference two samples can have, 0 where it isn't known
     * @param run how many neighbouring samples at an extreme make a flat top, 2 or more
     */
    public QualityMeter(String channel, double quantum, int run) {
        this.channel = channel;
        this.top = new CrestCounter(quantum, run);
        this.bottom = new CrestCounter(quantum, run);
    }

    /**
     * Takes the samples of one channel from interleaved sound.
     *
     * @param lane which sample of each frame
     * @param lanes samples per frame
     */
    public void add(float[] interleaved, int lane, int lanes, int frames) {
        addMoments(interleaved, lane, lanes, frames);
        stuck.add(interleaved, lane, lanes, frames);
        count += frames;
    }

    /** Four samples at a time, so that the sums don't wait for each other. */
    private void addMoments(float[] x, int lane, int lanes, int frames) {
        double sumA = 0;
        double sumB = 0;
        double squareA = 0;
        double squareB = 0;
        double squareC = 0;
        double squareD = 0;
        int i = 0;
        int at = lane;
        for (; i + 4 <= frames; i += 4, at += 4 * lanes) {
            float a = x[at];
            float b = x[at + lanes];
            float c = x[at + 2 * lanes];
            float d = x[at + 3 * lanes];
            sumA += (double) a + b;
            sumB += (double) c + d;
            squareA += (double) a * a;
            squareB += (double) b * b;
            squareC += (double) c * c;
            squareD += (double) d * d;
            float m = middle;
            if (Math.abs(a - m) > near || Math.abs(b - m) > near || Math.abs(c - m) > near || Math.abs(d - m) > near) {
                lookAt(a, count + i);
                lookAt(b, count + i + 1);
                lookAt(c, count + i + 2);
                lookAt(d, count + i + 3);
            }
        }
        for (; i < frames; i++, at += lanes) {
            float a = x[at];
            sumA += a;
            squareA += (double) a * a;
            lookAt(a, count + i);
        }
        sum += sumA + sumB;
        sumOfSquares += squareA + squareB + squareC + squareD;
    }

    private void lookAt(float value, long index) {
        if (value > max || value < min) {
            max = Math.max(max, value);
            min = Math.min(min, value);
            double span = (double) max - min;
            top.grow(max, span);
            bottom.grow(-min, span);
            double high = top.level();
            double low = -bottom.level();
            middle = (float) (0.5 * (high + low));
            // A hair less than half, so that rounding lets no extreme slip by.
            near = (float) ((0.5 - 1e-6) * (high - low) - 1e-6 * Math.abs(middle));
        }
        top.look(value, index);
        bottom.look(-value, index);
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
