package evenblade.face.app;

import evenblade.judge.findings.Direction;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Answers where in a job a piece of evidence can be seen. */
public final class SeeEvidence {
    private static final Pattern AT_RPM = Pattern.compile("\\bat (\\d+) engine rpm");

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

    /** Which side of a run shows it. */
    public enum Side {
        ORDERS,
        SPECTRUM,
        SPEED,
        REMARKS
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
            Page page, Optional<Event> entry, Side side, OptionalDouble engineRpm, Optional<Direction> direction) {
        private static Sight of(Page page) {
            return new Sight(page, Optional.empty(), Side.ORDERS, OptionalDouble.empty(), Optional.empty());
        }

        private static Sight of(Event entry) {
            return new Sight(Page.ENTRY, Optional.of(entry), Side.ORDERS, OptionalDouble.empty(), Optional.empty());
        }

        /** Place of the channel to look at among those of a run's answer, from 0. */
        public int channel(RunOrders orders) {
            Optional<String> noted = entry.map(Event::detail)
                    .filter(Detail.Run.class::isInstance)
                    .flatMap(run -> ((Detail.Run) run).conditions().get(Conditions.Condition.DIRECTION));
            Map<String, Direction> felt = ChannelDirections.of(orders.source().channels(), noted);
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

    /**
     * Where a piece of a finding's evidence can be seen; a run that it doesn't name is the latest of those
     * that the finding's other evidence names, else the latest of all.
     */
    public static Sight of(JobRecord record, Finding finding, EvidenceItem piece) {
        String text = piece.text();
        if (piece.origin() == EvidenceItem.Origin.STANDING) {
            return standing(record, text);
        }
        if (text.startsWith("over the runs")) {
            return Sight.of(Page.ALL_RUNS);
        }
        Optional<Event> run = named(record, text).or(() -> finding.speaksFor().stream()
                .map(EvidenceItem::text)
                .flatMap(other -> named(record, other).stream())
                .reduce((one, later) -> later));
        Matcher rpm = AT_RPM.matcher(text);
        return run.or(() -> last(record, Kind.RUN))
                .map(event -> new Sight(
                        Page.ENTRY,
                        Optional.of(event),
                        side(text),
                        rpm.find() ? OptionalDouble.of(Double.parseDouble(rpm.group(1))) : OptionalDouble.empty(),
                        direction(text)))
                .orElse(Sight.of(Page.ALL_RUNS));
    }

    private static Sight standing(JobRecord record, String text) {
        Optional<Kind> kind = text.startsWith("blade angles")
                ? Optional.of(Kind.PITCH)
                : text.startsWith("flange face") ? Optional.of(Kind.RUN_OUT) : Optional.empty();
        return kind.flatMap(each -> last(record, each)).map(Sight::of).orElse(Sight.of(Page.TRACK));
    }

    private static Side side(String text) {
        if (text.contains("lie flat") || text.contains("equal samples") || text.contains("lost in")) {
            return Side.REMARKS;
        }
        if (text.contains("isn't borne out")) {
            return Side.SPEED;
        }
        return text.contains("lines beside it") ? Side.SPECTRUM : Side.ORDERS;
    }

    private static Optional<Direction> direction(String text) {
        return Arrays.stream(Direction.values())
                .filter(each -> text.toLowerCase(Locale.ROOT).contains(" " + each.word() + " at "))
                .findFirst();
    }

    private static Optional<Event> named(JobRecord record, String text) {
        return record.standing(Kind.RUN).stream()
                .filter(run -> run.label()
                        .filter(label -> text.contains("'" + label + "'"))
                        .or(() -> Optional.of(run.id()).filter(id -> text.contains("'" + id + "'")))
                        .isPresent())
                .findFirst();
    }

    private static Optional<Event> last(JobRecord record, Kind kind) {
        return record.standing(kind).stream().reduce((one, later) -> later);
    }
}
