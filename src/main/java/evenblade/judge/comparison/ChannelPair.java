package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Value.SignalValue;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.ChannelOrders;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * One channel in two runs.
 *
 * @param before of the first run
 * @param after of the second
 * @param basis what of them may be compared
 * @param reasons against comparing them
 * @param warnings what to keep in mind
 */
record ChannelPair(
        ChannelOrders before, ChannelOrders after, Basis basis, List<Warning> reasons, List<Warning> warnings) {
    ChannelPair {
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
    }

    /** The factor that brings the second run's amplitudes to the first one's unit. */
    double unitFactor() {
        return after.unit().siFactor() / before.unit().siFactor();
    }

    /**
     * Channels of the same name; where each run has just one, those. The one with most propeller 1× in the
     * first run comes first, whatever the order in the files.
     */
    static List<ChannelPair> of(MeasuredRun before, MeasuredRun after) {
        List<ChannelPair> pairs = new ArrayList<>();
        for (ChannelOrders channel : before.channels()) {
            named(after, channel.channel()).ifPresent(same -> pairs.add(pair(before, channel, after, same)));
        }
        if (pairs.isEmpty()
                && before.channels().size() == 1
                && after.channels().size() == 1
                && (unnamed(before.channels().get(0))
                        || unnamed(after.channels().get(0)))) {
            pairs.add(pair(
                    before, before.channels().get(0), after, after.channels().get(0)));
        }
        Map<ChannelPair, Double> strongest = new IdentityHashMap<>();
        pairs.forEach(p -> strongest.put(p, MeasuredRun.strongestOnce(p.before())));
        pairs.sort(Comparator.comparingDouble((ChannelPair p) -> -strongest.get(p))
                .thenComparing(p -> p.before().channel()));
        return pairs;
    }

    private static Optional<ChannelOrders> named(MeasuredRun run, String name) {
        return run.channels().stream()
                .filter(c -> c.channel().equalsIgnoreCase(name))
                .findFirst();
    }

    /** Whether the reader had to give the channel a name. */
    private static boolean unnamed(ChannelOrders channel) {
        return channel.channel().toLowerCase(Locale.ROOT).matches("channel \\d+|left|mono|sound");
    }

    private static ChannelPair pair(MeasuredRun one, ChannelOrders before, MeasuredRun other, ChannelOrders after) {
        List<Warning> reasons = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        boolean scaleless = uncalibrated(before) && uncalibrated(after);
        boolean microphone = a.microphone() || b.microphone();
        boolean fixedGain = RunConditions.same(a.gain(), b.gain()) && !a.automaticGain();
        Basis basis = microphone || scaleless && !fixedGain ? Basis.GAIN_FREE : Basis.ABSOLUTE;
        if (basis == Basis.GAIN_FREE) {
            warnings.add(Warning.of(
                    WarningCode.GAIN_FREE_ONLY,
                    new Subject.Channel(before.channel()),
                    microphone
                            ? Fact.of(ComparisonFact.MICROPHONE)
                            : Fact.of(ComparisonFact.SCALE_UNKNOWN, new Quoted(before.channel()))));
        } else {
            scaled(reasons, one, before, other, after);
        }
        return new ChannelPair(before, after, basis, reasons, warnings);
    }

    private static void scaled(
            List<Warning> reasons, MeasuredRun one, ChannelOrders before, MeasuredRun other, ChannelOrders after) {
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        boolean calibration = uncalibrated(before) != uncalibrated(after);
        if (calibration || before.unit().quantity() != after.unit().quantity()) {
            reasons.add(Warning.of(
                    calibration ? WarningCode.CALIBRATION_DIFFERS : WarningCode.UNIT_DIFFERS,
                    Subject.Whole.COMPARISON,
                    new Quoted(one.name()),
                    new Quoted(before.unit().display()),
                    new Quoted(other.name()),
                    new Quoted(after.unit().display())));
        }
        Likeness.noted(reasons, WarningCode.GAIN_DIFFERS, one, a.gain(), other, b.gain());
        if (!a.fullScale().equals(b.fullScale())) {
            reasons.add(Warning.of(
                    WarningCode.FULL_SCALE_DIFFERS,
                    Subject.Whole.COMPARISON,
                    fullScale(a),
                    new Quoted(one.name()),
                    fullScale(b),
                    new Quoted(other.name())));
        }
    }

    private static Fact fullScale(RunConditions conditions) {
        return conditions
                .fullScale()
                .map(f -> Fact.of(ComparisonFact.FULL_SCALE_ENTERED, new SignalValue(f.value(), f.unit())))
                .orElseGet(() -> Fact.of(ComparisonFact.FULL_SCALE_OF_FILE));
    }

    private static boolean uncalibrated(ChannelOrders channel) {
        return channel.unit().quantity() == SignalUnit.Quantity.UNCALIBRATED;
    }
}
