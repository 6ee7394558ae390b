package evenblade.judge.comparison;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import java.util.List;

/**
 * Why two runs can't be compared.
 *
 * @param code what differs
 * @param values what it rests on, in the order that the code's phrase names them
 */
public record Reason(ReasonCode code, List<Value> values) {
    public Reason {
        values = List.copyOf(values);
    }

    static Reason of(ReasonCode code, Value... values) {
        return new Reason(code, List.of(values));
    }

    public Fact fact() {
        return new Fact(code, values);
    }

    /** Said where the rest is compared all the same. */
    Warning leftOut() {
        return Warning.of(code.warning(), Subject.Whole.COMPARISON, fact());
    }
}
