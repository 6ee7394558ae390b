package evenblade.tell.report;

import evenblade.judge.comparison.Basis;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ChangeVerdict;
import evenblade.judge.comparison.ChannelComparison;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.DwellComparison;
import evenblade.judge.comparison.Figure.Kind;
import evenblade.judge.comparison.Reason;
import evenblade.judge.comparison.RunComparison;
import evenblade.machine.installation.Shaft;
import evenblade.tell.chart.Caption;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What came of holding one run against another, in a technician's words. */
final class ComparisonParts {
    private static final double ALL_GONE = -100;

    private ComparisonParts() {}

    static ComparisonPart of(ReportedComparison compared) {
        RunComparison outcome = compared.outcome();
        return new ComparisonPart(
                compared.title(),
                compared.between(),
                sentences(outcome),
                compared.tables() ? tables(outcome) : List.of(),
                outcome.reasons().stream()
                        .map(Reason::fact)
                        .map(Phrases.of(Face.PAPER)::text)
                        .map(RunParts::capital)
                        .toList(),
                outcome.warnings().stream()
                        .map(Phrases.of(Face.PAPER)::text)
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

    /** The pair whose later dwell lasted longest. */
    static Optional<DwellComparison> mainPair(RunComparison outcome) {
        return outcome.channels().stream()
                .limit(1)
                .flatMap(channel -> channel.dwells().stream())
                .max(Comparator.comparingDouble(pair -> pair.after().durationS()));
    }

    private static boolean tellsMost(Change change) {
        return change.figure().kind() == Kind.UNEVENNESS
                || change.figure().name().equals("blade pass")
                || (change.figure().of().filter(Shaft.PROPELLER::equals).isPresent()
                        && change.figure().order() == 1);
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
            return " by " + size(change.percent().getAsDouble()) + " (95 % interval " + interval(change) + ")";
        }
        if (change.verdict() == ChangeVerdict.LOWER && change.ciHighPercent().isPresent()) {
            return " by at least " + size(change.ciHighPercent().getAsDouble())
                    + ": it no longer stands out of the noise";
        }
        if (change.ciLowPercent().isPresent()) {
            return " by at least " + size(change.ciLowPercent().getAsDouble())
                    + ": it did not stand out of the noise before";
        }
        return "";
    }

    private static String size(double percent) {
        String signed = Amounts.percent(percent);
        return signed.startsWith("+") || signed.startsWith("−") ? signed.substring(1) : signed;
    }

    private static String within(Change change) {
        return change.percent().isPresent()
                ? " (95 % interval " + interval(change) + ")"
                : " (hidden by noise in one of the runs)";
    }

    private static String interval(Change change) {
        if (change.ciLowPercent().isEmpty() && change.ciHighPercent().isEmpty()) {
            return "not known";
        }
        if (change.ciHighPercent().isEmpty()) {
            return Amounts.percent(change.ciLowPercent().getAsDouble()) + " or more";
        }
        String high = Amounts.percent(change.ciHighPercent().getAsDouble());
        return change.ciLowPercent().isEmpty() || change.ciLowPercent().getAsDouble() <= ALL_GONE
                ? high + " or lower"
                : Amounts.percent(change.ciLowPercent().getAsDouble()) + " to " + high;
    }

    /** The longest pair of dwells in full; of what noise hides in both runs only the names. */
    private static List<ComparisonPart.Table> tables(RunComparison outcome) {
        return mainPair(outcome)
                .map(pair -> List.of(table(outcome.channels().get(0), pair)))
                .orElse(List.of());
    }

    private static ComparisonPart.Table table(ChannelComparison channel, DwellComparison pair) {
        String unit = channel.basis() == Basis.GAIN_FREE
                ? "ratios that no gain can change"
                : "peak, " + channel.unit().display();
        List<ComparisonPart.Row> rows = new ArrayList<>();
        List<String> hidden = new ArrayList<>();
        for (Change change : pair.changes()) {
            if (change.before() instanceof ComparedValue.Below && change.after() instanceof ComparedValue.Below) {
                hidden.add(change.figure().name());
            } else {
                rows.add(row(change));
            }
        }
        String title = RunParts.capital(Caption.channel(channel.channel())) + ", engine "
                + Amounts.fixed(pair.engineRpmBefore(), 0) + " and " + Amounts.fixed(pair.engineRpmAfter(), 0)
                + " rpm ("
                + unit + ")";
        return new ComparisonPart.Table(
                title,
                rows,
                hidden.isEmpty() ? "" : "In neither run out of the noise: " + String.join(", ", hidden) + ".");
    }

    private static ComparisonPart.Row row(Change change) {
        String shared = change.sharedWith().isEmpty() ? "" : " = " + String.join(", ", change.sharedWith());
        return new ComparisonPart.Row(
                change.figure().name() + shared,
                value(change.before()),
                value(change.after()),
                changeWords(change),
                words(change.verdict()),
                change.verdict() != ChangeVerdict.NO_CHANGE_SHOWN);
    }

    /** The change in one cell, as a picture or a table has room for. */
    static String changeWords(Change change) {
        if (change.percent().isEmpty()) {
            return change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? "hidden by noise" : interval(change);
        }
        return Amounts.percent(change.percent().getAsDouble()) + " (" + interval(change) + ")";
    }

    private static String value(ComparedValue value) {
        return value instanceof ComparedValue.Below below
                ? "below " + Amounts.plain(below.limit())
                : Amounts.plain(value.size());
    }

    static String words(ChangeVerdict verdict) {
        return switch (verdict) {
            case LOWER -> "lower";
            case HIGHER -> "higher";
            case NO_CHANGE_SHOWN -> "no change shown";
        };
    }
}
