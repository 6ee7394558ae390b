package evenblade.judge.comparison;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.ChannelOrders;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * All runs of a job, for the scatter of repeats. What comes out is the same for every run measured alike, and is worked out
 * once: a job of three hundred runs is compared three hundred times. May be asked from several threads.
 */
public final class Repeats {
    private final List<TrendStage> stages;
    private final Map<Alike, RunScatter> known = new ConcurrentHashMap<>();

    public Repeats(List<TrendStage> stages) {
        this.stages = List.copyOf(stages);
    }

    /** All of a run that {@link RunScatter} looks at; neither its name nor its amplitudes are. */
    private record Alike(
            RunConditions conditions,
            Optional<String> lossyCoding,
            boolean doubted,
            int blades,
            double ratio,
            List<Channel> channels,
            String channel,
            Basis basis) {
        private record Channel(String name, SignalUnit unit) {}

        /** Wind, air and fuel are noted, and part no runs; nor does what was said of the run before one. */
        private static RunConditions asMeasured(RunConditions noted) {
            return new RunConditions(
                    noted.sensor(),
                    noted.place(),
                    noted.direction(),
                    noted.gain(),
                    noted.device(),
                    noted.fullScale(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    false);
        }

        static Alike of(MeasuredRun run, ChannelOrders channel, Basis basis) {
            return new Alike(
                    asMeasured(run.conditions()),
                    run.lossyCoding(),
                    run.speedDoubt().isPresent(),
                    run.blades(),
                    run.ratio(),
                    run.channels().stream()
                            .map(each -> new Channel(each.channel(), each.unit()))
                            .toList(),
                    channel.channel(),
                    basis);
        }
    }

    /** The scatter of a channel, from the runs that are measured like a given one. */
    RunScatter scatter(MeasuredRun like, ChannelOrders channel, Basis basis) {
        return known.computeIfAbsent(
                Alike.of(like, channel, basis), alike -> RunScatter.of(stages, like, channel, basis));
    }
}
