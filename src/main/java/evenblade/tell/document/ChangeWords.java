package evenblade.tell.document;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.Change.ChangeVerdict;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import java.util.List;

/** A change between two runs in a technician's words. */
public final class ChangeWords {
    /** A reach is half the width of a 95 % interval of the logarithm; half of it is about one standard error. */
    private static final double ERROR_PER_REACH = 0.5;

    private ChangeWords() {}

    /** Changes of lines that lie on each other are one change, with all their names. */
    public static List<OnePlace<Change>> places(List<Change> changes) {
        return OnePlace.of(
                changes,
                change -> change.figure().line(),
                change -> change.figure().kind(),
                change -> change.figure().name());
    }

    /** One sentence: {@code Propeller 1× at 4800 engine rpm: lower by 48 % (95 % interval −55 % to −40 %).} */
    public static String sentence(Change change, double engineRpm) {
        String outcome = verdict(change.verdict())
                + switch (change.verdict()) {
                    case LOWER, HIGHER -> by(change);
                    case NO_CHANGE_SHOWN ->
                        change.percent().isPresent()
                                ? " (95 % interval " + interval(change) + ")"
                                : " (hidden by noise in one of the runs)";
                };
        return FigureFormat.capital(change.figure().name()) + " at " + FigureFormat.rpm(engineRpm) + " engine rpm: "
                + outcome + ".";
    }

    private static String by(Change change) {
        if (change.percent().isPresent()) {
            return " by " + FigureFormat.change(change.percent().getAsDouble()) + " (95 % interval " + interval(change)
                    + ")";
        }
        if (change.verdict() == ChangeVerdict.LOWER) {
            return " by at least " + FigureFormat.change(change.ciHighPercent().orElseThrow())
                    + ": it no longer stands out of the noise";
        }
        return " by at least " + FigureFormat.change(change.ciLowPercent().orElseThrow())
                + ": it did not stand out of the noise before";
    }

    private static String interval(Change change) {
        return FigureFormat.percentRange(change.ciLowPercent(), change.ciHighPercent());
    }

    /** The change in one cell: {@code −48 % (−55 % to −40 %)}. */
    public static String cell(Change change) {
        if (change.percent().isPresent()) {
            return FigureFormat.percent(change.percent().getAsDouble()) + " (" + interval(change) + ")";
        }
        return change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? "hidden by noise" : interval(change);
    }

    /** What a step came to, short: {@code −48 % lower}. */
    public static String step(Change change) {
        String size = change.percent().isPresent()
                ? FigureFormat.percent(change.percent().getAsDouble()) + " "
                : "";
        return size + (change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? "in scatter" : verdict(change.verdict()));
    }

    /** What a change comes to. */
    public static String verdict(ChangeVerdict verdict) {
        return switch (verdict) {
            case LOWER -> "lower";
            case HIGHER -> "higher";
            case NO_CHANGE_SHOWN -> "no change shown";
        };
    }

    /** A value with the figures that its own error leaves, or what it lies below. */
    public static String value(ComparedValue value) {
        if (value instanceof ComparedValue.Known known) {
            return FigureFormat.value(known.value(), ERROR_PER_REACH * known.reach() * known.value());
        }
        return FigureFormat.below(value.size());
    }

    /** The unit of a figure, with a word on what it is; empty for a plain ratio. */
    static String unit(Figure figure, SignalUnit unit) {
        return figure.kind() == Figure.Kind.AMPLITUDE ? unit.display() + " peak" : "";
    }

    /** Whether noise hides a figure in both runs. */
    static boolean hidden(Change change) {
        return change.before() instanceof ComparedValue.Below && change.after() instanceof ComparedValue.Below;
    }
}
