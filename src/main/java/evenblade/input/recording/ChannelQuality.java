package evenblade.input.recording;

/**
 * What was measured about the trustworthiness of one channel, on the samples as they came.
 *
 * @param channel its name
 * @param clippedShare share (0 to 1) of samples that lie flat at the extremes, see {@link QualityMeter}
 * @param longestStuckRun longest run of equal samples, in samples; 1 where none is 8 or more long
 * @param peak largest absolute value, in the channel's unit
 * @param mean in the channel's unit
 * @param rms about the mean, in the channel's unit
 */
public record ChannelQuality(
        String channel, double clippedShare, int longestStuckRun, double peak, double mean, double rms) {
    /**
     * Share of full scale from which on a flat top counts as one at full scale: a converter may end a few steps short of
     * its range. A tenth of a decibel; ours.
     */
    public static final double AT_FULL_SCALE = 0.9886;

    /** This quality under another name of the channel. */
    public ChannelQuality called(String name) {
        return new ChannelQuality(name, clippedShare, longestStuckRun, peak, mean, rms);
    }
}
