package evenblade.tell.document;

import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What no analysis can tell apart at any speed, since its lines lie on each other: listed once, with all names.
 *
 * @param all at least one, in the order in which they came
 * @param name of them together: {@code propeller 1× = crank 1×}
 */
public record OnePlace<T>(List<T> all, String name) {
    public OnePlace {
        all = List.copyOf(all);
    }

    /**
     * Gathers by place, each where its first stood.
     *
     * @param line of a thing; a thing without one stands alone
     * @param kind things of two kinds stay apart
     */
    public static <T> List<OnePlace<T>> of(
            List<T> things, Function<T, Optional<OrderLine>> line, Function<T, Object> kind, Function<T, String> name) {
        List<List<T>> places = new ArrayList<>();
        for (T thing : things) {
            places.stream()
                    .filter(place -> together(line.apply(place.get(0)), line.apply(thing)))
                    .filter(place -> kind.apply(place.get(0)).equals(kind.apply(thing)))
                    .findFirst()
                    .ifPresentOrElse(place -> place.add(thing), () -> places.add(new ArrayList<>(List.of(thing))));
        }
        return places.stream()
                .map(place -> new OnePlace<>(place, place.stream().map(name).collect(Collectors.joining(" = "))))
                .toList();
    }

    /** Of lines, or of what has exactly one. */
    public static <T> List<OnePlace<T>> of(List<T> things, Function<T, OrderLine> line) {
        return of(things, line.andThen(Optional::of), thing -> "", line.andThen(OrderLine::name));
    }

    private static boolean together(Optional<OrderLine> one, Optional<OrderLine> other) {
        return one.isPresent() && other.isPresent() && OrderTable.coincide(one.get(), other.get());
    }

    /** The one that stands for all. */
    public T first() {
        return all.get(0);
    }
}
