package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.input.recording.Source;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What comparing needs to know of one run.
 *
 * @param name what the user calls it
 * @param conditions how it was measured
 * @param lossyCoding codec and settings, where its file threw away part of the signal; two are alike where they are equal
 * @param speedDoubt why the speed isn't confirmed; empty where it is
 * @param blades of the propeller
 * @param ratio engine revolutions per propeller revolution
 * @param channels measured amplitudes
 */
public record MeasuredRun(
        String name,
        RunConditions conditions,
        Optional<String> lossyCoding,
        Optional<Fact> speedDoubt,
        int blades,
        double ratio,
        List<ChannelOrders> channels) {
    /** Two dwells are at the same speed where they lie at most this share of the faster one apart. */
    public static final double SAME_SPEED = 0.02;

    public MeasuredRun {
        channels = List.copyOf(channels);
    }

    /** The run that a recording's answer describes. */
    public static MeasuredRun of(String name, RunConditions conditions, RunOrders orders) {
        Optional<Fact> doubt = orders.speed().doubt();
        return new MeasuredRun(
                name,
                conditions,
                lossyCoding(orders.source()),
                doubt,
                orders.installation().propeller().blades(),
                orders.ratio(),
                orders.channels());
    }

    private static Optional<String> lossyCoding(Source source) {
        return source.lossy()
                ? Optional.of(String.format(
                        Locale.ROOT,
                        "%s at %.0f Hz, channels: %d",
                        source.kind(),
                        source.sampleRateHz(),
                        source.channels().size()))
                : Optional.empty();
    }

    /** Whether its file threw away part of the signal. */
    public boolean lossy() {
        return lossyCoding.isPresent();
    }

    /** Engine speed of a dwell of this run, in revolutions per minute. */
    public double engineRpm(Dwell dwell) {
        return dwell.propellerRpm() * ratio;
    }

    /** The dwells, in order of time. */
    public List<Dwell> dwells() {
        return channels.isEmpty()
                ? List.of()
                : channels.get(0).dwells().stream().map(DwellOrders::dwell).toList();
    }

    /** This run with only its dwells near an engine speed. */
    public MeasuredRun near(double engineRpm) {
        return new MeasuredRun(
                name,
                conditions,
                lossyCoding,
                speedDoubt,
                blades,
                ratio,
                channels.stream()
                        .map(channel -> new ChannelOrders(
                                channel.channel(),
                                channel.unit(),
                                channel.dwells().stream()
                                        .filter(d -> sameSpeed(engineRpm(d.dwell()), engineRpm))
                                        .toList()))
                        .toList());
    }

    /** Whether two speeds count as the same. */
    public static boolean sameSpeed(double one, double other) {
        // A hair for the rounding of doubles.
        return Math.abs(one - other) <= SAME_SPEED * Math.max(one, other) * (1 + 1e-9);
    }

    /** The strongest propeller 1× of a channel over its dwells; the channel to look at first has most. */
    static double strongestOnce(ChannelOrders channel) {
        return channel.dwells().stream()
                .flatMap(dwell -> dwell.propellerOnce().stream())
                .mapToDouble(r ->
                        ComparedValue.of(r.level()).map(ComparedValue::size).orElse(0.0))
                .max()
                .orElse(0);
    }
}
