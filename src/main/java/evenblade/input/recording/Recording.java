package evenblade.input.recording;

import evenblade.base.fact.Warning;
import java.util.List;
import java.util.Optional;

/**
 * Times and channels, ready to be analysed: the whole of a stamped file, or sound reduced to a rate
 * at which every order of interest still lies inside the range.
 *
 * @param source the file it came from
 * @param time when each sample was taken
 * @param channels at least one, each with one value per stamp
 * @param quality per channel, in the same order, measured on the samples as they came
 * @param stamps quality of the time stamps; empty where the file has an even clock
 * @param warnings what the reader had to assume or repair
 */
public record Recording(
        Source source,
        TimeBase time,
        List<Channel> channels,
        List<ChannelQuality> quality,
        Optional<StampQuality> stamps,
        List<Warning> warnings) {

    /** Nothing above this share of the sample rate is measured. */
    public static final double USABLE_SHARE_OF_RATE = 0.45;

    public Recording {
        channels = List.copyOf(channels);
        quality = List.copyOf(quality);
        warnings = List.copyOf(warnings);
        for (Channel channel : channels) {
            if (channel.values().size() != time.size()) {
                throw new IllegalArgumentException("channel '" + channel.name() + "' has "
                        + channel.values().size() + " values for " + time.size() + " stamps");
            }
        }
    }

    /** The highest frequency at which the file as recorded can be measured, in hertz. */
    public double usableUpToHz() {
        return USABLE_SHARE_OF_RATE * source.sampleRateHz();
    }
}
