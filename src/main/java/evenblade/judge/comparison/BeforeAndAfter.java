package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.judge.comparison.RunComparison.ChannelComparison;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.speed.Dwell;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Holds one run against another. */
public final class BeforeAndAfter {
    private static final double SPEED_STEP_TOLD = 0.002; // ours: 10 rpm of 5000, more than a throttle's creep
    private static final double SEAT_TOLD = 0.01; // ours: less doesn't show in the figures

    private final MeasuredRun before;
    private final MeasuredRun after;
    private final Repeats repeats;
    private final List<Warning> reasons = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();
    private final Map<String, RunScatter> scatters = new HashMap<>();

    private BeforeAndAfter(MeasuredRun before, MeasuredRun after, Repeats repeats) {
        this.before = before;
        this.after = after;
        this.repeats = repeats;
    }

    /**
     * Compares two runs.
     *
     * @param stages all runs of the job, for the scatter of repeats; may be empty
     */
    public static RunComparison compare(MeasuredRun before, MeasuredRun after, List<TrendStage> stages) {
        return compare(before, after, new Repeats(stages));
    }

    /** Compares two runs, one pair of many. */
    public static RunComparison compare(MeasuredRun before, MeasuredRun after, Repeats repeats) {
        return new BeforeAndAfter(before, after, repeats).compare();
    }

    private RunComparison compare() {
        Likeness likeness = Likeness.of(before, after);
        reasons.addAll(likeness.reasons());
        warnings.addAll(likeness.warnings());
        List<ChannelComparison> channels = new ArrayList<>();
        if (speedsPair()) {
            channels.addAll(channels());
        }
        boolean comparable = likeness.reasons().isEmpty() && !channels.isEmpty();
        if (comparable) {
            unpaired(before, after, channels.get(0), true);
            unpaired(after, before, channels.get(0), false);
            warnings.addAll(scatters.get(channels.get(0).channel()).warnings());
            speedSteps(channels.get(0));
            seats(channels.get(0));
        }
        return new RunComparison(
                before.name(),
                after.name(),
                reasons.stream().distinct().toList(),
                comparable ? channels : List.of(),
                comparable ? warnings.stream().distinct().toList() : List.of());
    }

    private boolean speedsPair() {
        boolean any = before.dwells().stream().anyMatch(a -> after.dwells().stream()
                .anyMatch(b -> MeasuredRun.sameSpeed(a.propellerHz(), b.propellerHz())));
        if (!any) {
            reasons.add(Warning.of(
                    WarningCode.NO_DWELL_AT_SAME_RPM,
                    Subject.Whole.COMPARISON,
                    Fact.of(ComparisonFact.NO_SAME_SPEED, speeds(before), speeds(after))));
        }
        return any;
    }

    private static Fact speeds(MeasuredRun run) {
        Quoted name = new Quoted(run.name());
        if (run.dwells().isEmpty()) {
            return Fact.of(ComparisonFact.NO_DWELL, name);
        }
        List<Value> speeds = run.dwells().stream()
                .<Value>map(d -> Measure.ENGINE_RPM.of(run.engineRpm(d)))
                .toList();
        return Fact.of(ComparisonFact.HAS_SPEEDS, name, new Listed(speeds));
    }

    private List<ChannelComparison> channels() {
        List<ChannelPair> pairs = ChannelPair.of(before, after);
        if (pairs.isEmpty()) {
            reasons.add(Warning.of(
                    WarningCode.NO_COMMON_CHANNEL,
                    Subject.Whole.COMPARISON,
                    Fact.of(ComparisonFact.NO_SAME_CHANNEL, names(before), names(after))));
        }
        List<ChannelComparison> channels = new ArrayList<>();
        for (ChannelPair pair : pairs) {
            reasons.addAll(pair.reasons());
            if (pair.reasons().isEmpty()) {
                ChannelComparison compared = compare(pair);
                if (compared.dwells().stream().allMatch(d -> d.changes().isEmpty())) {
                    reasons.add(Warning.of(
                            WarningCode.BLADE_PASS_NOT_DETECTED,
                            Subject.Whole.COMPARISON,
                            new Quoted(pair.before().channel())));
                } else {
                    warnings.addAll(pair.warnings());
                    channels.add(compared);
                }
            }
        }
        return channels;
    }

    private static Fact names(MeasuredRun run) {
        List<String> names = run.channels().stream().map(ChannelOrders::channel).toList();
        return Fact.of(ComparisonFact.HAS_CHANNELS, new Quoted(run.name()), Listed.quoted(names));
    }

    private ChannelComparison compare(ChannelPair pair) {
        RunScatter scatter = repeats.scatter(before, pair.before(), pair.basis());
        scatters.putIfAbsent(pair.before().channel(), scatter);
        return new ChannelComparison(
                pair.before().channel(),
                pair.before().unit(),
                pair.basis(),
                scatter.repeats(),
                DwellPair.of(pair.before(), pair.after()).stream()
                        .map(dwells -> DwellComparison.of(dwells, pair, scatter, before.ratio(), after.ratio()))
                        .toList());
    }

    private void unpaired(MeasuredRun run, MeasuredRun other, ChannelComparison channel, boolean first) {
        List<Dwell> paired = channel.dwells().stream()
                .map(d -> first ? d.before() : d.after())
                .toList();
        run.channels().get(0).dwells().stream()
                .map(DwellOrders::dwell)
                .filter(d -> !paired.contains(d))
                .forEach(d -> warnings.add(Warning.of(
                        WarningCode.DWELL_NOT_PAIRED,
                        new Subject.Dwell(run.engineRpm(d)),
                        new Quoted(other.name()),
                        Measure.ENGINE_RPM.of(run.engineRpm(d)),
                        new Quoted(run.name()))));
    }

    private void speedSteps(ChannelComparison channel) {
        channel.dwells().stream()
                .filter(d -> Math.abs(d.engineRpmAfter() / d.engineRpmBefore() - 1) > SPEED_STEP_TOLD)
                .forEach(d -> warnings.add(Warning.of(
                        WarningCode.RPM_DIFFERS,
                        new Subject.Dwell(d.engineRpmBefore()),
                        Measure.ENGINE_RPM.of(d.engineRpmAfter()),
                        Measure.ENGINE_RPM.of(d.engineRpmBefore()))));
    }

    private void seats(ChannelComparison channel) {
        channel.dwells().stream()
                .filter(d -> Math.abs(d.takenOutShare()) > SEAT_TOLD)
                .forEach(d -> warnings.add(Warning.of(
                        WarningCode.SEAT_TAKEN_OUT,
                        new Subject.Dwell(d.engineRpmBefore()),
                        Measure.ENGINE_RPM.of(d.engineRpmBefore()),
                        Measure.SHARE.of(Math.abs(d.takenOutShare())),
                        Fact.of(d.takenOutShare() > 0 ? ComparisonFact.HIGHER : ComparisonFact.LOWER))));
    }
}
