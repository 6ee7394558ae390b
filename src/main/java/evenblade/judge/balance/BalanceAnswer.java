package evenblade.judge.balance;

import evenblade.base.fact.Worded;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What runs with and without weights call for.
 *
 * @param method with a mark on the shaft or without
 * @param refusals why there is no correction; empty where there is one
 * @param warnings what to know beside it
 * @param advice the correction; empty where refused
 * @param closure without phase, where it could be reckoned: how well the readings agree, 1 at best
 */
public record BalanceAnswer(
        Method method,
        List<Objection> refusals,
        List<Objection> warnings,
        Optional<Advice> advice,
        OptionalDouble closure) {
    /** How the correction was found. */
    public enum Method implements Worded {
        WITH_PHASE,
        WITHOUT_PHASE
    }

    public BalanceAnswer {
        refusals = List.copyOf(refusals);
        warnings = List.copyOf(warnings);
    }

    /** Whether no correction is given. */
    public boolean refused() {
        return advice.isEmpty();
    }

    /**
     * A correction and how to put it on.
     *
     * @param influence what the runs say about the machine; for further predictions and check runs
     * @param correction the correction
     * @param radiusMm the radius that its mass is given for
     * @param exact over the two nearest places, where places were given that reach
     * @param split what to put on: from the stock where one was given, else as {@code exact}
     * @param residual what the next run will read with that on
     */
    public record Advice(
            Influence influence,
            Correction correction,
            double radiusMm,
            Optional<Split> exact,
            Optional<Split> split,
            Residual residual) {
        public double massG() {
            return correction.value().gramsAt(radiusMm);
        }
    }
}
