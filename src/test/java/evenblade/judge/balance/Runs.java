package evenblade.judge.balance;

import java.util.List;
import java.util.OptionalDouble;

/** Shorthand for runs in tests. */
final class Runs {
    static final double RADIUS_MM = 60;

    private Runs() {}

    static BalanceAnswer answer(WeightedReading... runs) {
        return Balancing.balance(request(List.of(runs)));
    }

    static BalanceRequest request(List<WeightedReading> runs) {
        return new BalanceRequest(runs, RunsTogether.typedIn(), List.of(), OptionalDouble.empty(), List.of());
    }

    /** One run without weights, then one weight at 0°, 120° and 240°. */
    static WeightedReading[] fourRuns(double o, double massG, double t0, double t120, double t240) {
        return new WeightedReading[] {
            WeightedReading.withoutPhase(o, 0.01),
            WeightedReading.withoutPhase(t0, 0.01, Weight.of(massG, RADIUS_MM, 0)),
            WeightedReading.withoutPhase(t120, 0.01, Weight.of(massG, RADIUS_MM, 120)),
            WeightedReading.withoutPhase(t240, 0.01, Weight.of(massG, RADIUS_MM, 240))
        };
    }
}
