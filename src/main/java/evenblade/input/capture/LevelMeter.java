package evenblade.input.capture;

import evenblade.input.recording.BlockSink;
import evenblade.input.recording.ChannelQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Watches the level of every channel as sound passes; fed by one thread, read by any. */
public final class LevelMeter implements BlockSink {
    /** Samples at full scale in a row that make clipping. */
    static final int FLAT_RUN = 2;

    private static final double HOLD_S = 2; // long enough to be read
    private static final double SHOWN_S = 0.2; // five times a second: steady to the eye
    /** Samples from here on count as full scale: the largest whole number of 16 bits, and all above. */
    private static final float FULL = 1 - 1.5f / (1 << 15);

    /** One step of 16 bits, with room for rounding. */
    private static final float QUANTUM = 1.1f / (1 << 15);
    /** Equal samples in a row that make a flat top. */
    private static final int PLATEAU = 3;
    /** Step beside a flat top: a round one of three samples has less than two quanta there. */
    private static final float STEEP = 6f / (1 << 15);
    /** A flat top lies this near the highest sample of late, as a share. */
    private static final float NEAR_PEAK = 0.98f;
    /** Flat tops within a second from which on it is no chance. */
    private static final int LEAST_TOPS = 4;

    private static final double COUNTED_S = 1; // a second is soon enough for the eye

    private final double rateHz;
    private final List<Lane> lanes;
    private volatile List<ChannelLevel> levels;
    private volatile boolean silent = true;
    private volatile double zeroS;

    /**
     * @param channels names of the channels
     * @param mark the channel with a mark, whose pulses are flat by nature
     */
    public LevelMeter(double rateHz, List<String> channels, Optional<String> mark) {
        this.rateHz = rateHz;
        this.lanes = channels.stream()
                .map(name -> new Lane(name, mark.filter(name::equals).isPresent()))
                .toList();
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
        private final String channel;
        private final boolean pulses;
        private double shown;
        private double shownAgeS;
        private double held;
        private double heldAgeS;
        private long clipped;
        private int run;
        private double clippedAgeS = HOLD_S;
        private double flatAgeS = HOLD_S;
        private float plateau;
        private int plateauRun;
        private boolean steepIn;
        private int flatTops;
        private double countedS;

        Lane(String channel, boolean pulses) {
            this.channel = channel;
            this.pulses = pulses;
        }

        void take(float[] x, int lane, int lanes, int frames, double seconds) {
            float peak = 0;
            long clippedBefore = clipped;
            for (int i = 0, at = lane; i < frames; i++, at += lanes) {
                float size = Math.abs(x[at]);
                peak = Math.max(peak, size);
                if (size >= FULL) {
                    run++;
                    clipped += run == FLAT_RUN ? FLAT_RUN : run > FLAT_RUN ? 1 : 0;
                } else {
                    run = 0;
                }
                look(size);
            }
            shownAgeS += seconds;
            heldAgeS += seconds;
            clippedAgeS = clipped > clippedBefore ? 0 : clippedAgeS + seconds;
            countedS += seconds;
            flatAgeS = flatTops >= LEAST_TOPS ? 0 : flatAgeS + seconds;
            if (flatTops >= LEAST_TOPS || countedS > COUNTED_S) {
                flatTops = 0;
                countedS = 0;
            }
            if (peak >= shown || shownAgeS > SHOWN_S) {
                shown = peak;
                shownAgeS = 0;
            }
            if (peak >= held || heldAgeS > HOLD_S) {
                held = peak;
                heldAgeS = 0;
            }
        }

        /**
         * Counts tops that are flat and steep on both sides: where a run of n equal samples is the top of anything
         * round, the steps beside it are smaller than {@code 4(n + 1)/n²} of the smallest difference.
         */
        private void look(float size) {
            if (Math.abs(size - plateau) <= QUANTUM) {
                plateauRun++;
            } else {
                boolean steepOut = plateau - size > STEEP;
                if (plateauRun >= PLATEAU && steepIn && steepOut && plateau < FULL && plateau >= NEAR_PEAK * held) {
                    flatTops++;
                }
                steepIn = size - plateau > STEEP;
                plateau = size;
                plateauRun = 1;
            }
        }

        ChannelLevel level() {
            return new ChannelLevel(channel, decibel(shown), decibel(held), clipped, clip());
        }

        private ChannelLevel.Clip clip() {
            boolean flat = flatAgeS < HOLD_S && !pulses;
            if (clippedAgeS < HOLD_S || flat && held >= ChannelQuality.AT_FULL_SCALE) {
                return ChannelLevel.Clip.FULL_SCALE;
            }
            return flat ? ChannelLevel.Clip.BELOW_FULL_SCALE : ChannelLevel.Clip.NONE;
        }

        private static double decibel(double share) {
            return Math.max(ChannelLevel.SILENCE_DB, 20 * Math.log10(Math.max(share, 1e-9)));
        }
    }
}
