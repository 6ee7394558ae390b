package evenblade.judge.comparison;

import evenblade.base.problem.Warning;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether two runs were measured alike, all channels of them.
 *
 * @param reasons against comparing them; empty where they may be
 * @param warnings what to keep in mind where they are
 */
record Likeness(List<Reason> reasons, List<Warning> warnings) {
    /** Two statements of the reduction ratio further apart than this are two installations. */
    private static final double SAME_RATIO = 0.005;

    Likeness {
        reasons = List.copyOf(reasons);
        warnings = List.copyOf(warnings);
    }

    static Likeness of(MeasuredRun one, MeasuredRun other) {
        List<Reason> reasons = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        placed(reasons, Reason.Code.SENSOR_DIFFERS, "sensor", one, a.sensor(), other, b.sensor());
        placed(reasons, Reason.Code.PLACE_DIFFERS, "place", one, a.place(), other, b.place());
        placed(reasons, Reason.Code.DIRECTION_DIFFERS, "direction", one, a.direction(), other, b.direction());
        if (one.lossy() != other.lossy()) {
            MeasuredRun lossy = one.lossy() ? one : other;
            reasons.add(new Reason(
                    Reason.Code.LOSSY_AGAINST_LOSSLESS,
                    "'" + lossy.name() + "' was stored with loss, the other run without"));
        }
        if (one.lossy() && other.lossy()) {
            warnings.add(new Warning(
                    "lossy", "both runs were stored with loss, which takes quiet lines away: for a look only"));
        }
        for (MeasuredRun run : List.of(one, other)) {
            run.speedDoubt()
                    .ifPresent(doubt -> reasons.add(new Reason(
                            Reason.Code.SPEED_NOT_CONFIRMED,
                            "the speed of '" + run.name() + "' isn't confirmed: " + doubt)));
        }
        if (one.blades() != other.blades() || Math.abs(one.ratio() / other.ratio() - 1) > SAME_RATIO) {
            reasons.add(new Reason(
                    Reason.Code.INSTALLATION_DIFFERS,
                    String.format(
                            Locale.ROOT,
                            "'%s' has %d blades at a ratio of %.4g, '%s' %d at %.4g",
                            one.name(),
                            one.blades(),
                            one.ratio(),
                            other.name(),
                            other.blades(),
                            other.ratio())));
        }
        noted(warnings, one, other);
        return new Likeness(reasons, warnings);
    }

    private static void placed(
            List<Reason> reasons,
            Reason.Code code,
            String what,
            MeasuredRun one,
            Optional<String> a,
            MeasuredRun other,
            Optional<String> b) {
        if (RunConditions.differ(a, b)) {
            reasons.add(new Reason(
                    code,
                    "the " + what + " was '" + a.orElseThrow() + "' in '" + one.name() + "' and '" + b.orElseThrow()
                            + "' in '" + other.name() + "'"));
        }
    }

    private static void noted(List<Warning> warnings, MeasuredRun one, MeasuredRun other) {
        RunConditions a = one.conditions();
        RunConditions b = other.conditions();
        List<String> unknown = new ArrayList<>();
        unknown(unknown, "sensor", a.sensor(), b.sensor());
        unknown(unknown, "place", a.place(), b.place());
        unknown(unknown, "direction", a.direction(), b.direction());
        if (!unknown.isEmpty()) {
            warnings.add(new Warning(
                    "conditions-not-noted",
                    String.join(", ", unknown)
                            + (unknown.size() == 1 ? " isn't" : " aren't")
                            + " noted for both runs; taken to be the same"));
        }
        different(warnings, "wind", a.wind(), b.wind());
        different(warnings, "temperature", a.temperature(), b.temperature());
        different(warnings, "fuel", a.fuel(), b.fuel());
        different(warnings, "recorder", a.device(), b.device());
    }

    private static void unknown(List<String> unknown, String what, Optional<String> a, Optional<String> b) {
        if (a.isEmpty() || b.isEmpty()) {
            unknown.add(what);
        }
    }

    private static void different(List<Warning> warnings, String what, Optional<String> a, Optional<String> b) {
        if (RunConditions.differ(a, b)) {
            warnings.add(new Warning(
                    "conditions-differ",
                    "the " + what + " was '" + a.orElseThrow() + "' before and '" + b.orElseThrow() + "' after"));
        }
    }
}
