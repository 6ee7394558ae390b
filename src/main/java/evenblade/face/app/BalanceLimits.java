package evenblade.face.app;

import evenblade.judge.balance.Objection;
import evenblade.judge.balance.Objection.Property;
import evenblade.judge.tracking.LimitCheck;
import evenblade.keep.job.JobRecord;
import java.util.ArrayList;
import java.util.List;

/** Track, pitch and run-out as read last, where past a limit. */
final class BalanceLimits {
    private BalanceLimits() {}

    static List<Objection> beyond(JobRecord record) {
        List<Objection> all = new ArrayList<>();
        last(JudgeTracking.sessions(record)).forEach(s -> add(all, Property.TRACK, s.checks()));
        last(JudgeTracking.pitches(record)).forEach(p -> add(all, Property.PITCH, p.checks()));
        last(JudgeTracking.runOuts(record)).forEach(r -> add(all, Property.RUN_OUT, r.checks()));
        return all;
    }

    private static <T> List<T> last(List<T> readings) {
        return readings.isEmpty() ? List.of() : List.of(readings.get(readings.size() - 1));
    }

    private static void add(List<Objection> all, Property property, List<LimitCheck> checks) {
        // Lengths are read in mm and told in m; angles stay in degrees.
        double scale = property == Property.PITCH ? 1 : 1e-3;
        checks.stream()
                .filter(check -> check.outcome() == LimitCheck.Outcome.BEYOND)
                .forEach(check -> all.add(Objection.beyondLimit(
                        property,
                        scale * check.measured().orElseThrow(),
                        scale * check.allowed())));
    }
}
