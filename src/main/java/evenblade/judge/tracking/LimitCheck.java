package evenblade.judge.tracking;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Worded;
import evenblade.machine.installation.Limit;
import evenblade.machine.installation.Limit.PitchLimit;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Readings held against a limit.
 *
 * @param statistic which number of the readings the limit is meant for
 * @param measured that number, in mm or degrees; nothing where these readings don't have it
 * @param allowed the limit, in mm or degrees
 * @param measure a length or an angle
 * @param source who sets the limit, as entered
 * @param outcome how it comes out
 */
public record LimitCheck(
        Limit.Statistic statistic,
        OptionalDouble measured,
        double allowed,
        Measure measure,
        String source,
        Outcome outcome) {
    /** How a check comes out. */
    public enum Outcome implements Worded {
        WITHIN,
        BEYOND,
        /** No blade has one opposite, because their number is odd. */
        NOT_APPLICABLE
    }

    /** So much of the limit may be rounding of inches to millimetres. */
    private static final double ROUNDING = 1e-9;

    /** Tip marks in mm, by hub position, against every limit on track among those entered. */
    public static List<LimitCheck> track(List<Limit> entered, List<Double> marksMm) {
        return of(entered, Limit.Subject.TRACK, marksMm);
    }

    /** Blade angles in degrees, by hub position, against every limit on pitch. */
    public static List<LimitCheck> pitch(List<PitchLimit> entered, List<Double> degrees) {
        return entered.stream()
                .map(limit -> of(limit.statistic(), degrees, limit.value().degrees(), Measure.ANGLE, limit.source()))
                .toList();
    }

    /** The face run-out of the flange, at the dial's radius, against every limit on it among those entered. */
    public static List<LimitCheck> runOut(List<Limit> entered, FaceRunOut runOut) {
        return of(
                entered, Limit.Subject.FACE_RUN_OUT, List.of(0.0, runOut.total().millimetres()));
    }

    private static List<LimitCheck> of(List<Limit> entered, Limit.Subject what, List<Double> mm) {
        return entered.stream()
                .filter(limit -> limit.what() == what)
                .map(limit -> of(limit.statistic(), mm, limit.value().millimetres(), Measure.LENGTH, limit.source()))
                .toList();
    }

    private static LimitCheck of(
            Limit.Statistic statistic, List<Double> byPosition, double allowed, Measure measure, String source) {
        OptionalDouble measured = MarkStatistics.measure(statistic, byPosition);
        Outcome outcome = measured.isEmpty()
                ? Outcome.NOT_APPLICABLE
                : measured.getAsDouble() <= allowed * (1 + ROUNDING) ? Outcome.WITHIN : Outcome.BEYOND;
        return new LimitCheck(statistic, measured, allowed, measure, source, outcome);
    }

    /** Whether the readings have the number that the limit is meant for. */
    public boolean applies() {
        return outcome != Outcome.NOT_APPLICABLE;
    }

    public boolean beyond() {
        return outcome == Outcome.BEYOND;
    }

    /** The numbers, the statistic and the source. */
    public Fact fact() {
        return measured.isEmpty()
                ? Fact.of(TrackingFact.LIMIT_NOT_APPLICABLE, Fact.of(statistic), new Quoted(source))
                : Fact.of(TrackingFact.AGAINST_LIMIT, amount(measured.getAsDouble()), Fact.of(statistic), against());
    }

    /** How it comes out, with limit and source; only where the limit applies. */
    public Fact against() {
        return Fact.of(
                beyond() ? TrackingFact.BEYOND_LIMIT : TrackingFact.WITHIN_LIMIT, amount(allowed), new Quoted(source));
    }

    private Amount amount(double value) {
        return measure == Measure.LENGTH ? Measure.LENGTH.of(value / 1000) : measure.of(value);
    }
}
