package evenblade.face.app;

import evenblade.judge.findings.EvidenceRef;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers where in a job a piece of evidence can be seen. */
public final class SeeEvidence {
    private SeeEvidence() {}

    /** What has to be opened. */
    public enum Page {
        /** All tip marks together. */
        TRACK,
        /** All runs, one after the other. */
        ALL_RUNS,
        /** One entry of the job. */
        ENTRY
    }

    /**
     * Where it is seen.
     *
     * @param page to open
     * @param entry on that page, where it shows one
     * @param side of a run
     * @param engineRpm of the dwell, where the evidence names one
     * @param direction that the channel feels, where it names one
     */
    public record Sight(
            Page page,
            Optional<Event> entry,
            EvidenceRef.Side side,
            OptionalDouble engineRpm,
            Optional<Direction> direction) {
        private static Sight of(Page page) {
            return new Sight(page, Optional.empty(), EvidenceRef.Side.ORDERS, OptionalDouble.empty(), Optional.empty());
        }

        private static Sight of(Event entry) {
            return new Sight(
                    Page.ENTRY, Optional.of(entry), EvidenceRef.Side.ORDERS, OptionalDouble.empty(), Optional.empty());
        }

        /** Place of the channel to look at among those of a run's answer, from 0. */
        public int channel(RunOrders orders) {
            Optional<String> noted = entry.map(Event::detail)
                    .filter(Detail.Run.class::isInstance)
                    .flatMap(run -> ((Detail.Run) run).conditions().get(Conditions.Condition.DIRECTION));
            Map<String, Direction> felt =
                    EvidenceOfJob.directions(orders.source().channels(), noted);
            List<ChannelOrders> channels = orders.channels();
            for (int i = 0; i < channels.size(); i++) {
                if (direction.isPresent()
                        && direction.equals(
                                Optional.ofNullable(felt.get(channels.get(i).channel())))) {
                    return i;
                }
            }
            return 0;
        }

        /** The dwell to look at: the one nearest to the speed named, else the longest. */
        public Optional<Dwell> dwell(RunOrders orders) {
            List<Dwell> dwells = orders.speed().dwells();
            return engineRpm.isEmpty()
                    ? orders.speed().main()
                    : dwells.stream()
                            .min(Comparator.comparingDouble(dwell ->
                                    Math.abs(dwell.propellerRpm() * orders.ratio() - engineRpm.getAsDouble())));
        }
    }

    /** Where evidence can be seen. */
    public static Sight of(JobRecord record, EvidenceRef ref) {
        if (ref instanceof EvidenceRef.Run run) {
            return record.standing(Kind.RUN).stream()
                    .filter(event -> event.id().equals(run.id()))
                    .findFirst()
                    .map(event ->
                            new Sight(Page.ENTRY, Optional.of(event), run.side(), run.engineRpm(), run.direction()))
                    .orElse(Sight.of(Page.ALL_RUNS));
        }
        return switch ((EvidenceRef.Whole) ref) {
            case ALL_RUNS -> Sight.of(Page.ALL_RUNS);
            case TIP_MARKS -> Sight.of(Page.TRACK);
            case BLADE_ANGLES -> last(record, Kind.PITCH).map(Sight::of).orElse(Sight.of(Page.TRACK));
            case FACE_RUN_OUT -> last(record, Kind.RUN_OUT).map(Sight::of).orElse(Sight.of(Page.TRACK));
        };
    }

    private static Optional<Event> last(JobRecord record, Kind kind) {
        return record.standing(kind).stream().reduce((one, later) -> later);
    }
}
