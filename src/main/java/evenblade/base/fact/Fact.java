package evenblade.base.fact;

import java.util.List;

/**
 * Something that was found. No words: those are chosen where it is shown.
 *
 * @param code what it says
 * @param values what it rests on, in the order that the code's phrase names them
 */
public record Fact(Code code, List<Value> values) implements Value {
    public Fact {
        values = List.copyOf(values);
    }

    public static Fact of(Code code, Value... values) {
        return new Fact(code, List.of(values));
    }
}
