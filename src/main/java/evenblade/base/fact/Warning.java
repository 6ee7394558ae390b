package evenblade.base.fact;

import java.util.List;

/**
 * Something a reader of a result has to know about it, carried along with the result.
 *
 * @param code what it says
 * @param subject what it is about
 * @param values what it rests on, in the order that the code's phrase names them
 */
public record Warning(WarningCode code, Subject subject, List<Value> values) {
    public Warning {
        values = List.copyOf(values);
    }

    public static Warning of(WarningCode code, Subject subject, Value... values) {
        return new Warning(code, subject, List.of(values));
    }

    /** What it says without its subject, to be put into words. */
    public Fact fact() {
        return new Fact(code, values);
    }
}
