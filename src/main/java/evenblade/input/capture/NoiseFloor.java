package evenblade.input.capture;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.Optional;

/**
 * Follows level and noise floor of the last seconds, to tell whether a gap in the sound parts two inputs: another
 * microphone has another gain and another floor, and both step at once.
 *
 * <p>Level is the middle, floor the twentieth percentile, of the rms of first differences over short blocks, all
 * channels together. Blind where two inputs are alike within {@value #LEAST_STEP_DB} dB.
 */
final class NoiseFloor {
    static final double LEAST_STEP_DB = 6; // below it wind and throttle step too; ours
    private static final double KEPT_S = 16; // both looks and the time it takes to be sure of a gap
    private static final double LOOKED_AT_S = 4; // some tens of blocks to take a floor from; ours
    /** A gap is placed to a second. */
    private static final double UNSURE_S = 1.2;

    private static final double FLOOR_SHARE = 0.2; // a low share, so that bangs don't count; ours
    private static final int LEAST_BLOCKS = 10; // fewer give no share of a fifth

    /** The rms of one block that ends at a frame. */
    private record Block(long endFrame, double rms) {}

    private final double rateHz;
    private final Deque<Block> blocks = new ArrayDeque<>();
    private long frames;

    NoiseFloor(double rateHz) {
        this.rateHz = rateHz;
    }

    /** Takes the next block of interleaved sound. */
    void take(float[] x, int channels, int count) {
        double squares = 0;
        for (int i = channels; i < count * channels; i++) {
            double step = x[i] - x[i - channels];
            squares += step * step;
        }
        frames += count;
        blocks.addLast(new Block(frames, Math.sqrt(squares / Math.max(1, (count - 1) * channels))));
        while (blocks.peekFirst().endFrame() < frames - KEPT_S * rateHz) {
            blocks.removeFirst();
        }
    }

    /** By how much both step at a gap; empty where they don't. */
    Optional<Fact> stepAt(long gapFrame) {
        double[] before = between(gapFrame - (LOOKED_AT_S + UNSURE_S) * rateHz, gapFrame - UNSURE_S * rateHz);
        // The first tenth of a second behind it may be the gap itself.
        double[] behind = between(gapFrame + 0.1 * rateHz, gapFrame + (LOOKED_AT_S + 0.1) * rateHz);
        if (before.length < LEAST_BLOCKS || behind.length < LEAST_BLOCKS) {
            return Optional.empty();
        }
        double level = decibel(behind[behind.length / 2] / before[before.length / 2]);
        double floor =
                decibel(behind[(int) (FLOOR_SHARE * behind.length)] / before[(int) (FLOOR_SHARE * before.length)]);
        boolean steps = Math.abs(level) >= LEAST_STEP_DB
                && Math.abs(floor) >= LEAST_STEP_DB
                && Math.signum(level) == Math.signum(floor);
        return steps
                ? Optional.of(Fact.of(CaptureFact.NOISE_STEPPED, Measure.LEVEL.of(level), Measure.LEVEL.of(floor)))
                : Optional.empty();
    }

    private static double decibel(double ratio) {
        return Double.isFinite(ratio) && ratio > 0 ? 20 * Math.log10(ratio) : 0;
    }

    private double[] between(double from, double to) {
        double[] some = blocks.stream()
                .filter(block -> block.endFrame() >= from && block.endFrame() <= to)
                .mapToDouble(Block::rms)
                .toArray();
        Arrays.sort(some);
        return some;
    }
}
