package evenblade.base.fact;

import java.util.List;

/**
 * Several things of a kind.
 *
 * @param items in the order shown
 */
public record Listed(List<Value> items) implements Value {
    public Listed {
        items = List.copyOf(items);
    }

    /** Names that a user or a file gave. */
    public static Listed quoted(List<String> texts) {
        return new Listed(texts.stream().<Value>map(Quoted::new).toList());
    }
}
