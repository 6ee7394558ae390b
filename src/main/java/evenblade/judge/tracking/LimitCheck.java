package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Quoted;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Limit.PitchLimit;
import java.util.List;
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

    /** The numbers, the statistic and the source. */
    public Fact fact() {
        Fact what = Fact.of(
                switch (statistic) {
                    case SPREAD -> TrackingFact.LARGEST_MINUS_SMALLEST;
                    case ABOUT_MIDDLE -> TrackingFact.OFF_MIDDLE;
                    case ABOUT_MEAN -> TrackingFact.OFF_MEAN;
                    case OPPOSITE_BLADE -> TrackingFact.AGAINST_OPPOSITE;
                });
        return measured.isEmpty()
                ? Fact.of(TrackingFact.LIMIT_NOT_APPLICABLE, what, new Quoted(source))
                : Fact.of(
                        outcome == Outcome.WITHIN ? TrackingFact.LIMIT_WITHIN : TrackingFact.LIMIT_BEYOND,
                        amount(measured.getAsDouble()),
                        what,
                        amount(allowed),
                        new Quoted(source));
    }

    private Amount amount(double value) {
        return unit.equals("mm") ? Measure.LENGTH.of(value / 1000) : Measure.ANGLE.of(value);
    }
}
