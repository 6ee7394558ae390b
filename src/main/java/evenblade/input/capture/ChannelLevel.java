package evenblade.input.capture;

/**
 * How loud one channel is. 0 dB is a sine that just reaches full scale; silence reads {@value #SILENCE_DB}.
 *
 * @param channel its name
 * @param peakDb highest sample of the last fifth of a second or so
 * @param heldPeakDb highest sample of the last two seconds
 * @param clipped samples at full scale in runs of {@value LevelMeter#FLAT_RUN} or more, since the start
 * @param clip whether tops were cut off in the last two seconds, and where
 */
public record ChannelLevel(String channel, double peakDb, double heldPeakDb, long clipped, Clip clip) {
    /** Shown for silence. */
    public static final double SILENCE_DB = -120;

    /** Where tops are cut off, which says what can be done about it. */
    public enum Clip {
        NONE,
        /** At full scale: the gain of the input is too high. */
        FULL_SCALE,
        /** Flat below full scale: what comes before the gain is overdriven, and the gain changes nothing. */
        BELOW_FULL_SCALE
    }
}
