package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Follows every figure over the runs of a job. */
public final class TrendOverJob {
    private final List<TrendStage> stages;
    private final List<MeasuredRun> runs;

    private TrendOverJob(List<TrendStage> stages) {
        this.stages = stages;
        this.runs = stages.stream().flatMap(s -> s.runs().stream()).toList();
    }

    /** A dwell of a run, and the pair of channels that ties it to the reference run. */
    private record Seen(MeasuredRun run, ChannelPair channels, DwellOrders dwell) {}

    /**
     * The trend of every channel; the channel to look at first comes first.
     *
     * <p>The runs followed are those that can be compared with the run that most others can be compared
     * with; of several such the earliest. Runs without a dwell, or not measured like it, are left out by
     * name.
     *
     * @param stages all runs of the job
     * @return empty where there is no run with a dwell
     */
    public static List<Trend> of(List<TrendStage> stages) {
        return new TrendOverJob(List.copyOf(stages)).trends();
    }

    private List<Trend> trends() {
        Optional<MeasuredRun> reference = runs.stream()
                .filter(r -> !r.dwells().isEmpty() && r.speedDoubt().isEmpty())
                .max(Comparator.comparingLong(this::alike)
                        .thenComparing(Comparator.<MeasuredRun>comparingInt(runs::indexOf)
                                .reversed()));
        if (reference.isEmpty()) {
            return List.of();
        }
        return reference.get().channels().stream()
                .sorted(Comparator.comparingDouble((ChannelOrders c) -> -MeasuredRun.strongestOnce(c))
                        .thenComparing(ChannelOrders::channel))
                .map(channel -> trend(reference.get(), channel))
                .toList();
    }

    private long alike(MeasuredRun reference) {
        return runs.stream()
                .filter(r -> against(reference, reference.channels().get(0), r)
                        .reasons()
                        .isEmpty())
                .count();
    }

    /** How a run's channel relates to the reference run's. */
    private record Relation(Optional<ChannelPair> pair, List<Warning> reasons) {}

    private static Relation against(MeasuredRun reference, ChannelOrders channel, MeasuredRun run) {
        List<Warning> reasons = new ArrayList<>(Likeness.of(reference, run).reasons());
        if (run.dwells().isEmpty()) {
            reasons.add(Warning.of(
                    WarningCode.NO_DWELL_AT_SAME_RPM,
                    Subject.Whole.COMPARISON,
                    Fact.of(ComparisonFact.NO_DWELL, new Quoted(run.name()))));
        }
        Optional<ChannelPair> pair = ChannelPair.of(reference, run).stream()
                .filter(p -> p.before().channel().equals(channel.channel()))
                .findFirst();
        if (pair.isEmpty()) {
            reasons.add(Warning.of(
                    WarningCode.NO_COMMON_CHANNEL,
                    Subject.Whole.COMPARISON,
                    Fact.of(ComparisonFact.NO_SUCH_CHANNEL, new Quoted(run.name()), new Quoted(channel.channel()))));
        }
        pair.ifPresent(p -> reasons.addAll(p.reasons()));
        return new Relation(pair, reasons);
    }

    private Trend trend(MeasuredRun reference, ChannelOrders channel) {
        Map<MeasuredRun, ChannelPair> followed = new LinkedHashMap<>();
        List<Trend.RunEntry> entries = new ArrayList<>();
        Set<Warning> warnings = new LinkedHashSet<>();
        Basis basis = Basis.ABSOLUTE;
        List<String> changes = new ArrayList<>();
        for (TrendStage stage : stages) {
            changes.addAll(stage.changes());
            for (MeasuredRun run : stage.runs()) {
                Relation relation = against(reference, channel, run);
                if (relation.reasons().isEmpty()) {
                    ChannelPair pair = relation.pair().orElseThrow();
                    followed.put(run, pair);
                    basis = pair.basis() == Basis.GAIN_FREE ? Basis.GAIN_FREE : basis;
                    warnings.addAll(pair.warnings());
                }
                entries.add(new Trend.RunEntry(run.name(), changes, relation.reasons()));
                changes.clear();
            }
        }
        RunScatter scatter = RunScatter.of(stages, reference, channel, basis);
        warnings.addAll(scatter.warnings());
        return new Trend(
                channel.channel(),
                channel.unit(),
                basis,
                entries,
                groups(reference, followed, basis, scatter),
                List.copyOf(warnings));
    }

    private List<Trend.SpeedGroup> groups(
            MeasuredRun reference, Map<MeasuredRun, ChannelPair> followed, Basis basis, RunScatter scatter) {
        List<DwellOrders> anchors = new ArrayList<>();
        followed.values().forEach(pair -> pair.after().dwells().stream()
                .filter(d -> anchors.stream()
                        .noneMatch(a -> MeasuredRun.sameSpeed(
                                a.dwell().propellerHz(), d.dwell().propellerHz())))
                .forEach(anchors::add));
        anchors.sort(Comparator.comparingDouble(a -> a.dwell().propellerHz()));
        return anchors.stream()
                .map(anchor -> group(anchor, reference, followed, basis, scatter))
                .toList();
    }

    private Trend.SpeedGroup group(
            DwellOrders anchor,
            MeasuredRun reference,
            Map<MeasuredRun, ChannelPair> followed,
            Basis basis,
            RunScatter scatter) {
        List<Seen> seen = new ArrayList<>();
        List<String> without = new ArrayList<>();
        double anchorHz = anchor.dwell().propellerHz();
        followed.forEach((run, pair) -> pair.after().dwells().stream()
                .filter(d -> MeasuredRun.sameSpeed(d.dwell().propellerHz(), anchorHz))
                .min(Comparator.comparingDouble(d -> Math.abs(d.dwell().propellerHz() - anchorHz)))
                .ifPresentOrElse(d -> seen.add(new Seen(run, pair, d)), () -> without.add(run.name())));
        Map<Figure, List<Trend.Point>> points = new LinkedHashMap<>();
        List<Map<Figure, Measured>> past = new ArrayList<>();
        for (Seen one : seen) {
            Map<Figure, Measured> now = Measured.of(one, basis);
            now.keySet().forEach(figure -> points.computeIfAbsent(figure, f -> new ArrayList<>())
                    .add(point(figure, now, past, basis, scatter)));
            past.add(now);
        }
        return new Trend.SpeedGroup(
                reference.ratio() * anchor.dwell().propellerRpm(),
                points.entrySet().stream()
                        .map(e -> new Trend.FigureLine(e.getKey(), e.getValue()))
                        .toList(),
                without);
    }

    /** A figure of one run in the trend's unit. */
    private record Measured(Seen seen, DwellFigures.Entry entry, ComparedValue value) {
        static Map<Figure, Measured> of(Seen seen, Basis basis) {
            Map<Figure, Measured> all = new LinkedHashMap<>();
            DwellFigures.of(seen.dwell(), basis).entries().forEach((figure, entry) -> {
                double factor =
                        figure.kind() == Figure.Kind.AMPLITUDE ? seen.channels().unitFactor() : 1;
                all.put(figure, new Measured(seen, entry, entry.value().times(factor)));
            });
            return all;
        }

        double propellerHz() {
            return seen.dwell().dwell().propellerHz();
        }
    }

    private static Trend.Point point(
            Figure figure,
            Map<Figure, Measured> now,
            List<Map<Figure, Measured>> past,
            Basis basis,
            RunScatter scatter) {
        Measured own = now.get(figure);
        List<Map<Figure, Measured>> before =
                past.stream().filter(run -> run.containsKey(figure)).toList();
        double low = 0;
        double high = own.value().size();
        if (own.value() instanceof ComparedValue.Known known) {
            double seat = CommonPart.in(figure, List.of()).reach() / Math.sqrt(2);
            double half = Math.hypot(scatter.of(figure).with(known.reach(), 1), seat);
            low = known.value() * Math.exp(-half);
            high = known.value() * Math.exp(half);
        }
        return new Trend.Point(
                own.seen().run().name(),
                own.seen().run().engineRpm(own.seen().dwell().dwell()),
                own.value(),
                low,
                high,
                before.isEmpty()
                        ? Optional.empty()
                        : change(figure, before.get(before.size() - 1), now, basis, scatter),
                before.isEmpty() ? Optional.empty() : change(figure, before.get(0), now, basis, scatter));
    }

    /** Empty where in one run the line can't be separated from another. */
    private static Optional<Change> change(
            Figure figure, Map<Figure, Measured> one, Map<Figure, Measured> other, Basis basis, RunScatter scatter) {
        List<String> shared = one.get(figure).entry().sharedWith();
        if (!shared.equals(other.get(figure).entry().sharedWith())) {
            return Optional.empty();
        }
        List<CommonPart.Step> apart = one.keySet().stream()
                .filter(f -> other.containsKey(f)
                        && one.get(f).entry().sharedWith().isEmpty()
                        && other.get(f).entry().sharedWith().isEmpty())
                .map(f -> step(f, one.get(f), other.get(f), basis, scatter))
                .toList();
        return Optional.of(Change.of(
                step(figure, one.get(figure), other.get(figure), basis, scatter),
                CommonPart.in(figure, apart),
                shared));
    }

    private static CommonPart.Step step(Figure figure, Measured one, Measured other, Basis basis, RunScatter scatter) {
        SpeedLaw law = SpeedLaw.between(
                Math.log(other.propellerHz() / one.propellerHz()),
                basis,
                figure.kind(),
                one.seen().channels().before().unit());
        return new CommonPart.Step(figure, one.value(), other.value(), law, scatter.of(figure));
    }
}
