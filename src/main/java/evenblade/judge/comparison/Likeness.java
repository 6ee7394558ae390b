package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether two runs were measured alike, all channels of them.
 *
 * @param reasons against comparing them; empty where they may be
 * @param warnings what to keep in mind where they are
 */
record Likeness(List<Warning> reasons, List<Warning> warnings) {
    /** Two statements of the reduction ratio further apart than this are two installations. */
    private static final double SAME_RATIO = 0.005;

    Likeness {
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
    }

    static Likeness of(MeasuredRun one, MeasuredRun other) {
        List<Warning> reasons = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        noted(reasons, WarningCode.SENSOR_DIFFERS, one, a.sensor(), other, b.sensor());
        noted(reasons, WarningCode.PLACE_DIFFERS, one, a.place(), other, b.place());
        noted(reasons, WarningCode.DIRECTION_DIFFERS, one, a.direction(), other, b.direction());
        if (one.lossy() != other.lossy()) {
            MeasuredRun lossy = one.lossy() ? one : other;
            reasons.add(
                    Warning.of(WarningCode.LOSSY_AGAINST_LOSSLESS, Subject.Whole.COMPARISON, new Quoted(lossy.name())));
        }
        if (one.lossy() && other.lossy() && !one.lossyCoding().equals(other.lossyCoding())) {
            reasons.add(Warning.of(
                    WarningCode.CODING_DIFFERS,
                    Subject.Whole.COMPARISON,
                    new Quoted(one.name()),
                    new Quoted(one.lossyCoding().orElseThrow()),
                    new Quoted(other.name()),
                    new Quoted(other.lossyCoding().orElseThrow())));
        } else if (one.lossy() && other.lossy()) {
            warnings.add(Warning.of(WarningCode.LOSSY, Subject.Whole.COMPARISON));
        }
        for (MeasuredRun run : List.of(one, other)) {
            run.speedDoubt()
                    .ifPresent(doubt -> reasons.add(Warning.of(
                            WarningCode.SPEED_NOT_CONFIRMED,
                            Subject.Whole.COMPARISON,
                            Fact.of(ComparisonFact.SPEED_DOUBTED, new Quoted(run.name()), doubt))));
        }
        if (one.blades() != other.blades() || Math.abs(one.ratio() / other.ratio() - 1) > SAME_RATIO) {
            reasons.add(Warning.of(
                    WarningCode.INSTALLATION_DIFFERS,
                    Subject.Whole.COMPARISON,
                    new Quoted(one.name()),
                    new Count(one.blades()),
                    Measure.NUMBER.of(one.ratio()),
                    new Quoted(other.name()),
                    new Count(other.blades()),
                    Measure.NUMBER.of(other.ratio())));
        }
        unlike(warnings, one, other);
        return new Likeness(reasons, warnings);
    }

    /** What a user noted of each, where it differs. */
    static void noted(
            List<Warning> reasons,
            WarningCode code,
            MeasuredRun one,
            Optional<String> a,
            MeasuredRun other,
            Optional<String> b) {
        if (RunConditions.differ(a, b)) {
            reasons.add(Warning.of(
                    code,
                    Subject.Whole.COMPARISON,
                    new Quoted(a.orElseThrow()),
                    new Quoted(one.name()),
                    new Quoted(b.orElseThrow()),
                    new Quoted(other.name())));
        }
    }

    private static void unlike(List<Warning> warnings, MeasuredRun one, MeasuredRun other) {
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        List<Value> unknown = new ArrayList<>();
        unknown(unknown, ComparisonFact.SENSOR, a.sensor(), b.sensor());
        unknown(unknown, ComparisonFact.PLACE, a.place(), b.place());
        unknown(unknown, ComparisonFact.DIRECTION, a.direction(), b.direction());
        if (!unknown.isEmpty()) {
            warnings.add(Warning.of(WarningCode.CONDITIONS_NOT_NOTED, Subject.Whole.COMPARISON, new Listed(unknown)));
        }
        different(warnings, ComparisonFact.WIND, a.wind(), b.wind());
        different(warnings, ComparisonFact.TEMPERATURE, a.temperature(), b.temperature());
        different(warnings, ComparisonFact.FUEL, a.fuel(), b.fuel());
        different(warnings, ComparisonFact.RECORDER, a.device(), b.device());
    }

    private static void unknown(List<Value> unknown, ComparisonFact what, Optional<String> a, Optional<String> b) {
        if (a.isEmpty() || b.isEmpty()) {
            unknown.add(Fact.of(what));
        }
    }

    private static void different(List<Warning> warnings, ComparisonFact what, Optional<String> a, Optional<String> b) {
        if (RunConditions.differ(a, b)) {
            warnings.add(Warning.of(
                    WarningCode.CONDITIONS_DIFFER,
                    Subject.Whole.COMPARISON,
                    Fact.of(what),
                    new Quoted(a.orElseThrow()),
                    new Quoted(b.orElseThrow())));
        }
    }
}
