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
 * @param stretches through which one clock ran without a break, in order of time, at least one
 */
public record Recording(
        Source source,
        TimeBase time,
        List<Channel> channels,
        List<ChannelQuality> quality,
        Optional<StampQuality> stamps,
        List<Warning> warnings,
        List<Stretch> stretches) {

    /** Nothing above this share of the sample rate is measured. */
    public static final double USABLE_SHARE_OF_RATE = 0.45;

    public Recording {
        channels = List.copyOf(channels);
        quality = List.copyOf(quality);
        warnings = List.copyOf(warnings);
        stretches = List.copyOf(stretches);
        if (stretches.isEmpty()) {
            throw new IllegalArgumentException("a recording without a stretch");
        }
        for (Channel channel : channels) {
            if (channel.values().size() != time.size()) {
                throw new IllegalArgumentException("channel '" + channel.name() + "' has "
                        + channel.values().size() + " values for " + time.size() + " stamps");
            }
        }
    }

    /** A recording with one clock from the first sample to the last. */
    public Recording(
            Source source,
            TimeBase time,
            List<Channel> channels,
            List<ChannelQuality> quality,
            Optional<StampQuality> stamps,
            List<Warning> warnings) {
        this(source, time, channels, quality, stamps, warnings, List.of(whole(time)));
    }

    private static Stretch whole(TimeBase time) {
        return time.size() == 0 ? new Stretch(0, 0) : new Stretch(time.at(0), time.at(time.size() - 1));
    }

    /** The longest stretch; the first of several as long. */
    public Stretch longestStretch() {
        Stretch longest = stretches.get(0);
        for (Stretch each : stretches) {
            longest = each.durationS() > longest.durationS() ? each : longest;
        }
        return longest;
    }

    /** What lies within a stretch, at the same times; the quality stays that of the whole. */
    public Recording within(Stretch stretch) {
        if (stretches.equals(List.of(stretch))) {
            return this;
        }
        int first = time.firstFrom(stretch.fromS());
        int size = time.firstFrom(Math.nextUp(stretch.toS())) - first;
        List<Channel> parts = channels.stream()
                .map(each -> new Channel(each.name(), each.unit(), each.values().part(first, size), each.axis()))
                .toList();
        return new Recording(source, time.part(first, size), parts, quality, stamps, warnings, List.of(stretch));
    }

    /** The highest frequency at which the file as recorded can be measured, in hertz. */
    public double usableUpToHz() {
        return USABLE_SHARE_OF_RATE * source.sampleRateHz();
    }
}
