package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.StampQuality;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import java.util.List;
import java.util.Optional;

/**
 * What findings need of a run's answer; nothing that has to be measured again to be known.
 *
 * @param fileChannels names of all channels of the file, in its order
 * @param durationS of the file
 * @param speedDoubt why the speed isn't confirmed; empty where it is
 * @param ratio engine revolutions per propeller revolution
 * @param channels measured amplitudes, the channel to look at first comes first
 * @param quality of every channel of the file
 * @param stamps quality of the time stamps, where the file has them
 */
public record RunNumbers(
        List<String> fileChannels,
        double durationS,
        Optional<Fact> speedDoubt,
        double ratio,
        List<ChannelOrders> channels,
        List<ChannelQuality> quality,
        Optional<StampQuality> stamps) {
    public RunNumbers {
        fileChannels = List.copyOf(fileChannels);
        channels = List.copyOf(channels);
        quality = List.copyOf(quality);
    }

    /** The numbers of an answer, without channels whose sensor rattles. */
    public static RunNumbers of(RunOrders orders) {
        return new RunNumbers(
                orders.source().channels(),
                orders.source().durationS(),
                orders.speed().doubt(),
                orders.ratio(),
                orders.channels().stream()
                        .filter(channel -> orders.warnings().stream()
                                .noneMatch(w -> w.code() == WarningCode.SENSOR_RATTLES
                                        && w.subject().equals(new Subject.Channel(channel.channel()))))
                        .toList(),
                orders.quality(),
                orders.stamps());
    }

    /** Whether signal or mark bear the speed out. */
    public boolean confirmed() {
        return speedDoubt.isEmpty();
    }

    /** Number of dwells. */
    int dwells() {
        return channels.isEmpty() ? 0 : channels.get(0).dwells().size();
    }
}
