package evenblade.input.capture;

/**
 * How loud one channel is. 0 dB is a sine that just reaches full scale; silence reads {@value #SILENCE_DB}.
 *
 * @param peakDb highest sample of the last fifth of a second or so
 * @param heldPeakDb highest sample of the last two seconds
 * @param clipped samples at full scale in runs of {@value LevelMeter#FLAT_RUN} or more, since the start
 */
public record ChannelLevel(double peakDb, double heldPeakDb, long clipped) {
    /** Shown for silence. */
    public static final double SILENCE_DB = -120;
}
