package evenblade.judge.tracking;

import evenblade.machine.installation.Limit;
import evenblade.machine.installation.PitchLimit;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Readings held against a limit.
 *
 * @param statistic which number of the readings the limit is meant for
 * @param measured that number, in the unit; nothing where these readings don't have it
 * @param allowed the limit, in the unit
 * @param unit {@code mm} or {@code °}
 * @param source who sets the limit, as entered
 * @param outcome how it comes out
 */
public record LimitCheck(
        Limit.Statistic statistic,
        OptionalDouble measured,
        double allowed,
        String unit,
        String source,
        Outcome outcome) {
    /** How a check comes out. */
    public enum Outcome {
        WITHIN,
        BEYOND,
        /** No blade has one opposite, because their number is odd. */
        NOT_APPLICABLE
    }

    /** So much of the limit may be rounding of inches to millimetres. */
    private static final double ROUNDING = 1e-9;

    /** Tip marks in mm, by hub position, against a limit on track. */
    public static LimitCheck track(Limit limit, List<Double> marksMm) {
        return of(limit.statistic(), marksMm, limit.value().millimetres(), "mm", limit.source());
    }

    /** Blade angles in degrees, by hub position, against a limit on pitch. */
    public static LimitCheck pitch(PitchLimit limit, List<Double> degrees) {
        return of(limit.statistic(), degrees, limit.value().degrees(), "°", limit.source());
    }

    /** The face run-out of the flange, at the dial's radius, against its limit. */
    public static LimitCheck runOut(Limit limit, FaceRunOut runOut) {
        return of(
                Limit.Statistic.SPREAD,
                List.of(0.0, runOut.total().millimetres()),
                limit.value().millimetres(),
                "mm",
                limit.source());
    }

    private static LimitCheck of(
            Limit.Statistic statistic, List<Double> byPosition, double allowed, String unit, String source) {
        OptionalDouble measured = MarkStatistics.measure(statistic, byPosition);
        Outcome outcome = measured.isEmpty()
                ? Outcome.NOT_APPLICABLE
                : measured.getAsDouble() <= allowed * (1 + ROUNDING) ? Outcome.WITHIN : Outcome.BEYOND;
        return new LimitCheck(statistic, measured, allowed, unit, source, outcome);
    }

    /** One line with the numbers, the statistic and the source. */
    public String text() {
        String what =
                switch (statistic) {
                    case SPREAD -> "largest minus smallest";
                    case ABOUT_MIDDLE -> "off the middle";
                    case ABOUT_MEAN -> "off the mean";
                    case OPPOSITE_BLADE -> "against the opposite blade";
                };
        if (measured.isEmpty()) {
            return "The limit holds blades " + what + ", and with an odd number of blades none has one opposite ("
                    + source + ").";
        }
        return String.format(
                Locale.ROOT,
                "%.2f %s %s, %s the limit of %.2f %s (%s).",
                measured.getAsDouble(),
                unit,
                what,
                outcome == Outcome.WITHIN ? "within" : "beyond",
                allowed,
                unit,
                source);
    }
}
