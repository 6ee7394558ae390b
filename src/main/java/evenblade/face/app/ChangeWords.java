package evenblade.face.app;

import evenblade.base.units.SignalUnit;
import evenblade.judge.comparison.Change;
import evenblade.judge.comparison.ChangeVerdict;
import evenblade.judge.comparison.ComparedValue;
import evenblade.judge.comparison.Figure;
import evenblade.tell.document.FigureFormat;
import java.util.Locale;

/** A change between two runs in a technician's words. */
public final class ChangeWords {
    private static final double ERROR_PER_REACH = 0.5;
    /** A change from next to nothing is told in times, not in percent. */
    private static final double TOLD_IN_TIMES_FROM = 1000;

    private ChangeWords() {}

    /** One sentence: {@code propeller 1× fell from 0.60 to 0.31 m/s² (-48 %, between -55 and -40 %): lower}. */
    public static String sentence(Change change, SignalUnit unit) {
        String measured = change.figure().kind() == Figure.Kind.AMPLITUDE ? " " + unit.display() : "";
        String levels =
                switch (change.verdict()) {
                    case LOWER -> " fell from " + value(change.before()) + " to " + value(change.after());
                    case HIGHER -> " rose from " + value(change.before()) + " to " + value(change.after());
                    case NO_CHANGE_SHOWN -> ": " + value(change.before()) + ", then " + value(change.after());
                };
        String sharing =
                change.sharedWith().isEmpty() ? "" : "; one line with " + String.join(", ", change.sharedWith());
        return change.figure().name() + levels + measured + interval(change) + ": " + verdict(change.verdict())
                + sharing;
    }

    private static String interval(Change change) {
        if (change.percent().isPresent()) {
            return " (" + percent(change.percent().getAsDouble()) + " %, between "
                    + percent(change.ciLowPercent().orElseThrow()) + " and "
                    + percent(change.ciHighPercent().orElseThrow()) + " %)";
        }
        return switch (change.verdict()) {
            case LOWER ->
                " (by at least "
                        + percent(-change.ciHighPercent().orElseThrow()).substring(1) + " %)";
            case HIGHER -> " (by at least " + atLeast(change.ciLowPercent().orElseThrow()) + ")";
            case NO_CHANGE_SHOWN -> "";
        };
    }

    private static String atLeast(double percent) {
        return percent < TOLD_IN_TIMES_FROM
                ? percent(percent).substring(1) + " %"
                : String.format(Locale.ROOT, "%.0f times", 1 + percent / 100);
    }

    /** What a step came to, short: {@code -48 % lower}. */
    public static String step(Change change) {
        String size = change.percent().isPresent() ? percent(change.percent().getAsDouble()) + " % " : "";
        return size + (change.verdict() == ChangeVerdict.NO_CHANGE_SHOWN ? "in scatter" : verdict(change.verdict()));
    }

    public static String verdict(ChangeVerdict verdict) {
        return verdict == ChangeVerdict.NO_CHANGE_SHOWN ? "no change shown" : verdict.word();
    }

    /** A value with the figures that its own error leaves. */
    public static String value(ComparedValue value) {
        if (value instanceof ComparedValue.Known known) {
            double error = ERROR_PER_REACH * known.reach() * known.value();
            int decimals = Math.min(FigureFormat.decimals(error), FigureFormat.decimals(known.value() / 10) + 1);
            return FigureFormat.fixed(known.value(), decimals);
        }
        return "below " + FigureFormat.fixed(value.size(), FigureFormat.decimals(value.size()));
    }

    private static String percent(double percent) {
        return String.format(Locale.ROOT, Math.abs(percent) < 9.95 ? "%+.1f" : "%+.0f", percent);
    }
}
