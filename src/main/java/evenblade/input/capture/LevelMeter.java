package evenblade.input.capture;

import evenblade.input.recording.BlockSink;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Watches the level of every channel as sound passes; fed by one thread, read by any. */
public final class LevelMeter implements BlockSink {
    /** Samples at full scale in a row that make clipping. */
    static final int FLAT_RUN = 2;

    private static final double HOLD_S = 2; // long enough to be read
    private static final double SHOWN_S = 0.2; // five times a second: steady to the eye
    /** Samples from here on count as full scale: the largest whole number of 16 bits, and all above. */
    private static final float FULL = 1 - 1.5f / (1 << 15);

    private final double rateHz;
    private final List<Lane> lanes;
    private volatile List<ChannelLevel> levels;
    private volatile boolean silent = true;
    private volatile double zeroS;

    public LevelMeter(double rateHz, int channels) {
        this.rateHz = rateHz;
        this.lanes = IntStream.range(0, channels).mapToObj(i -> new Lane()).toList();
        this.levels = lanes.stream().map(Lane::level).toList();
    }

    /** The levels now, one per channel. */
    public List<ChannelLevel> levels() {
        return levels;
    }

    /** Whether every sample so far was zero. */
    public boolean silent() {
        return silent;
    }

    /** For how long, up to now, every sample was exactly zero, seconds. */
    public double zeroS() {
        return zeroS;
    }

    @Override
    public void accept(float[] interleaved, int frames) {
        boolean zero = true;
        for (int i = 0; i < frames * lanes.size() && zero; i++) {
            zero = interleaved[i] == 0;
        }
        zeroS = zero ? zeroS + frames / rateHz : 0;
        List<ChannelLevel> now = new ArrayList<>();
        for (int c = 0; c < lanes.size(); c++) {
            lanes.get(c).take(interleaved, c, lanes.size(), frames, frames / rateHz);
            now.add(lanes.get(c).level());
        }
        levels = List.copyOf(now);
        silent &= now.stream().allMatch(level -> level.peakDb() <= ChannelLevel.SILENCE_DB);
    }

    private static final class Lane {
        private double shown;
        private double shownAgeS;
        private double held;
        private double heldAgeS;
        private long clipped;
        private int run;

        void take(float[] x, int lane, int lanes, int frames, double seconds) {
            float peak = 0;
            for (int i = 0, at = lane; i < frames; i++, at += lanes) {
                float size = Math.abs(x[at]);
                peak = Math.max(peak, size);
                if (size >= FULL) {
                    run++;
                    clipped += run == FLAT_RUN ? FLAT_RUN : run > FLAT_RUN ? 1 : 0;
                } else {
                    run = 0;
                }
            }
            shownAgeS += seconds;
            heldAgeS += seconds;
            if (peak >= shown || shownAgeS > SHOWN_S) {
                shown = peak;
                shownAgeS = 0;
            }
            if (peak >= held || heldAgeS > HOLD_S) {
                held = peak;
                heldAgeS = 0;
            }
        }

        ChannelLevel level() {
            return new ChannelLevel(decibel(shown), decibel(held), clipped);
        }

        private static double decibel(double share) {
            return Math.max(ChannelLevel.SILENCE_DB, 20 * Math.log10(Math.max(share, 1e-9)));
        }
    }
}
