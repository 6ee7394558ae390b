package evenblade.judge.comparison;

import evenblade.base.problem.Warning;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.speed.Dwell;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Holds one run against another. */
public final class BeforeAndAfter {
    private static final double SPEED_STEP_TOLD = 0.002;

    private final MeasuredRun before;
    private final MeasuredRun after;
    private final List<TrendStage> stages;
    private final List<Reason> reasons = new ArrayList<>();
    private final List<Warning> warnings = new ArrayList<>();

    private BeforeAndAfter(MeasuredRun before, MeasuredRun after, List<TrendStage> stages) {
        this.before = before;
        this.after = after;
        this.stages = stages;
    }

    /**
     * Compares two runs.
     *
     * @param stages all runs of the job, for the scatter of repeats; may be empty
     */
    public static RunComparison compare(MeasuredRun before, MeasuredRun after, List<TrendStage> stages) {
        return new BeforeAndAfter(before, after, stages).compare();
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
            reasons.forEach(r -> warnings.add(new Warning(r.code().word(), "left out: " + r.text())));
            unpaired(before, after, channels.get(0), true);
            unpaired(after, before, channels.get(0), false);
            repeats(channels.get(0));
            speedSteps(channels.get(0));
        }
        return new RunComparison(
                before.name(),
                after.name(),
                comparable ? List.of() : reasons.stream().distinct().toList(),
                comparable ? channels : List.of(),
                comparable ? warnings.stream().distinct().toList() : List.of());
    }

    private boolean speedsPair() {
        boolean any = before.dwells().stream().anyMatch(a -> after.dwells().stream()
                .anyMatch(b -> MeasuredRun.sameSpeed(a.propellerHz(), b.propellerHz())));
        if (!any) {
            reasons.add(new Reason(
                    Reason.Code.NO_DWELL_AT_SAME_RPM,
                    "no dwell at the same speed within 2 %: " + speeds(before) + "; " + speeds(after)));
        }
        return any;
    }

    private static String speeds(MeasuredRun run) {
        if (run.dwells().isEmpty()) {
            return "'" + run.name() + "' has no dwell";
        }
        return run.dwells().stream()
                .map(d -> String.format(Locale.ROOT, "%.0f", run.engineRpm(d)))
                .collect(Collectors.joining(", ", "'" + run.name() + "' has ", " engine rpm"));
    }

    private List<ChannelComparison> channels() {
        List<ChannelPair> pairs = ChannelPair.of(before, after);
        if (pairs.isEmpty()) {
            reasons.add(new Reason(
                    Reason.Code.NO_COMMON_CHANNEL,
                    "no channel of the same name: " + names(before) + "; " + names(after)));
        }
        List<ChannelComparison> channels = new ArrayList<>();
        for (ChannelPair pair : pairs) {
            reasons.addAll(pair.reasons());
            if (pair.reasons().isEmpty()) {
                ChannelComparison compared = compare(pair);
                if (compared.dwells().stream().allMatch(d -> d.changes().isEmpty())) {
                    reasons.add(new Reason(
                            Reason.Code.BLADE_PASS_NOT_DETECTED,
                            "blade pass doesn't stand out of channel '"
                                    + pair.before().channel() + "' in both runs, so there is no ratio to compare"));
                } else {
                    warnings.addAll(pair.warnings());
                    channels.add(compared);
                }
            }
        }
        return channels;
    }

    private static String names(MeasuredRun run) {
        return run.channels().stream()
                .map(c -> "'" + c.channel() + "'")
                .collect(Collectors.joining(", ", "'" + run.name() + "' has ", ""));
    }

    private ChannelComparison compare(ChannelPair pair) {
        RunScatter scatter = RunScatter.of(stages, before, pair.before(), pair.basis());
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
                .forEach(d -> warnings.add(new Warning(
                        "dwell-not-paired",
                        String.format(
                                Locale.ROOT,
                                "'%s' has no dwell left at %.0f engine rpm to hold against that of '%s'",
                                other.name(),
                                run.engineRpm(d),
                                run.name()))));
    }

    private void repeats(ChannelComparison channel) {
        if (channel.repeatRuns() == 0) {
            warnings.add(NoRepeat.WARNING);
        }
    }

    private void speedSteps(ChannelComparison channel) {
        channel.dwells().stream()
                .filter(d -> Math.abs(d.engineRpmAfter() / d.engineRpmBefore() - 1) > SPEED_STEP_TOLD)
                .forEach(d -> warnings.add(new Warning(
                        "rpm-differs",
                        String.format(
                                Locale.ROOT,
                                "the second run turned %.0f instead of %.0f engine rpm; the changes are brought to the"
                                        + " same speed and their intervals widened for it",
                                d.engineRpmAfter(),
                                d.engineRpmBefore()))));
    }
}
