package evenblade.tell.document;

import evenblade.judge.tracking.LimitCheck;
import evenblade.judge.tracking.UsualFigure;
import evenblade.machine.installation.Limit;

/** Readings held against a limit, in words: the numbers, the statistic, the source. */
public final class LimitWords {
    private LimitWords() {}

    /** One line for one check. */
    public static String of(LimitCheck check, FigureFormat format) {
        String what = statistic(check.statistic());
        if (check.measured().isEmpty()) {
            return "The limit holds blades " + what + ", and with an odd number of blades none has one opposite ("
                    + check.source() + ").";
        }
        return amount(check, check.measured().getAsDouble(), format) + " " + what + ", " + outcome(check, format) + ".";
    }

    /** How it comes out, with limit and source. */
    public static String outcome(LimitCheck check, FigureFormat format) {
        return (check.outcome() == LimitCheck.Outcome.WITHIN ? "within" : "BEYOND") + " the limit of "
                + amount(check, check.allowed(), format) + " (" + check.source() + ")";
    }

    private static String amount(LimitCheck check, double value, FigureFormat format) {
        return check.unit().equals("mm") ? format.both(value) : FigureFormat.fixed(value, 2) + check.unit();
    }

    /** A figure that people use where the maker's isn't at hand, marked as what it is. */
    public static String usual(UsualFigure figure, FigureFormat format) {
        String held = format.both(figure.measuredMm())
                + (figure.kept() ? " keeps to " : " is MORE than ")
                + format.both(figure.allowedMm());
        return switch (figure.figure()) {
            case ACCEPTED_IN_PRACTICE ->
                "spread " + held + ", accepted in common practice (no source; not the maker's figure).";
            case MOST_IN_PRACTICE ->
                "spread " + held + ", the most in common practice (no source; not the maker's figure).";
            case HANDBOOK_OPPOSITE_BLADE ->
                "against the opposite blade " + held
                        + ", the general figure of FAA-H-8083-32, read in a restatement; the maker's figure governs.";
        };
    }

    /** Which number of the readings a limit is meant for. */
    public static String statistic(Limit.Statistic statistic) {
        return switch (statistic) {
            case SPREAD -> "largest minus smallest";
            case ABOUT_MIDDLE -> "furthest from the middle between largest and smallest";
            case ABOUT_MEAN -> "furthest from the mean";
            case OPPOSITE_BLADE -> "against the opposite blade";
        };
    }
}
