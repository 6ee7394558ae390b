package evenblade.report;

import evenblade.comparison.Basis;
import evenblade.comparison.Change;
import evenblade.comparison.ChannelComparison;
import evenblade.comparison.DwellComparison;
import evenblade.comparison.Figure.Kind;
import evenblade.comparison.Reason;
import evenblade.comparison.RunComparison;
import evenblade.comparison.Value;
import evenblade.comparison.Verdict;
import evenblade.installation.Shaft;
import evenblade.problem.Warning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What came of holding one run against another, in a technician's words. */
final class ComparisonParts {
    private ComparisonParts() {}

    static ComparisonPart of(ReportedComparison compared) {
        RunComparison outcome = compared.outcome();
        return new ComparisonPart(
                compared.title(),
                compared.between(),
                sentences(outcome),
                compared.tables() ? tables(outcome) : List.of(),
                outcome.reasons().stream()
                        .map(Reason::text)
                        .map(RunParts::capital)
                        .toList(),
                outcome.warnings().stream()
                        .map(Warning::message)
                        .map(RunParts::capital)
                        .toList(),
                compared.figures());
    }

    /** The figures that tell most, at the longest pair of dwells of the first channel. */
    static List<String> sentences(RunComparison outcome) {
        return mainPair(outcome)
                .map(pair -> pair.changes().stream()
                        .filter(ComparisonParts::tellsMost)
                        .map(change -> sentence(change, pair.engineRpmAfter()))
                        .toList())
                .orElse(List.of());
    }

    /** The pair of dwells that lasted longest. */
    static Optional<DwellComparison> mainPair(RunComparison outcome) {
        return outcome.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .max(Comparator.comparingDouble(
                        pair -> Math.min(pair.before().durationS(), pair.after().durationS())));
    }

    private static boolean tellsMost(Change change) {
        return change.figure().kind() == Kind.UNEVENNESS
                || change.figure().name().equals("blade pass")
                || (change.figure().of().filter(Shaft.PROPELLER::equals).isPresent() && change.figure().order() == 1);
    }

    private static String sentence(Change change, double engineRpm) {
        String what = RunParts.capital(change.figure().name()) + " at " + Amounts.fixed(engineRpm, 0) + " engine rpm: ";
        return what
                + switch (change.verdict()) {
                    case LOWER -> "lower" + by(change);
                    case HIGHER -> "higher" + by(change);
                    case NO_CHANGE_SHOWN -> "no change shown" + within(change);
                }
                + ".";
    }

    private static String by(Change change) {
        if (change.percent().isPresent()) {
            return " by " + Amounts.fixed(Math.abs(change.percent().getAsDouble()), 0) + " % (95 % interval "
                    + interval(change) + ")";
        }
        if (change.verdict() == Verdict.LOWER && change.ciHighPercent().isPresent()) {
            return " by at least " + Amounts.fixed(-change.ciHighPercent().getAsDouble(), 0)
                    + " %: it no longer stands out of the noise";
        }
        if (change.ciLowPercent().isPresent()) {
            return " by at least " + Amounts.fixed(change.ciLowPercent().getAsDouble(), 0)
                    + " %: it did not stand out of the noise before";
        }
        return "";
    }

    private static String within(Change change) {
        return change.percent().isPresent()
                ? " (95 % interval " + interval(change) + ")"
                : " (hidden by noise in one of the runs)";
    }

    private static String interval(Change change) {
        String low = change.ciLowPercent().isPresent() ? Amounts.percent(change.ciLowPercent().getAsDouble()) : "open";
        String high = change.ciHighPercent().isPresent() ? Amounts.percent(change.ciHighPercent().getAsDouble()) : "open";
        return low + " to " + high;
    }

    private static List<ComparisonPart.Table> tables(RunComparison outcome) {
        List<ComparisonPart.Table> tables = new ArrayList<>();
        if (outcome.channels().isEmpty()) {
            return tables;
        }
        ChannelComparison channel = outcome.channels().get(0);
        String unit = channel.basis() == Basis.GAIN_FREE
                ? "ratios that no gain can change"
                : "peak, " + channel.unit().display();
        for (DwellComparison pair : channel.dwells()) {
            tables.add(new ComparisonPart.Table(
                    "Channel " + channel.channel() + ", engine " + Amounts.fixed(pair.engineRpmBefore(), 0) + " and "
                            + Amounts.fixed(pair.engineRpmAfter(), 0) + " rpm (" + unit + ")",
                    pair.changes().stream().map(ComparisonParts::row).toList()));
        }
        return tables;
    }

    private static ComparisonPart.Row row(Change change) {
        String shared = change.sharedWith().isEmpty() ? "" : " = " + String.join(", ", change.sharedWith());
        return new ComparisonPart.Row(
                change.figure().name() + shared,
                value(change.before()),
                value(change.after()),
                changeWords(change),
                words(change.verdict()),
                change.verdict() != Verdict.NO_CHANGE_SHOWN);
    }

    /** The change in one cell, as a picture or a table has room for. */
    static String changeWords(Change change) {
        if (change.percent().isEmpty()) {
            return change.verdict() == Verdict.NO_CHANGE_SHOWN ? "hidden by noise" : interval(change);
        }
        return Amounts.percent(change.percent().getAsDouble()) + " (" + interval(change) + ")";
    }

    private static String value(Value value) {
        return value instanceof Value.Below below
                ? "below " + Amounts.plain(below.limit())
                : Amounts.plain(value.size());
    }

    static String words(Verdict verdict) {
        return switch (verdict) {
            case LOWER -> "lower";
            case HIGHER -> "higher";
            case NO_CHANGE_SHOWN -> "no change shown";
        };
    }
}
