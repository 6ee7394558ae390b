package evenblade.judge.tracking;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Search for the best of all ways to put the blades on the hub.
 *
 * <p>Up to {@value #ALL_TRIED_UP_TO} blades every one of the permutations (720 for six) is tried. Above that: the
 * layout as it stands moved round as a whole, then exchanges of two blades as long as one of them betters the best so
 * far. That is a bounded search whose result may not be the best of all.
 */
public final class Permutations {
    static final int ALL_TRIED_UP_TO = 6; // 720 layouts; seven blades have 5040

    private Permutations() {}

    /** Whether all layouts of so many blades are tried. */
    public static boolean allTried(Layout layout) {
        return layout.positions() <= ALL_TRIED_UP_TO;
    }

    /**
     * The layout with the least score.
     *
     * @param <S> what a layout is judged by
     * @param start the layout as it stands
     * @param score judges a layout
     * @param order which score is less; layouts that tie are decided by fewest blades moved, then by name
     */
    public static <S> Judged<S> least(Layout start, Function<Layout, S> score, Comparator<S> order) {
        Comparator<Judged<S>> best = Comparator.<Judged<S>, S>comparing(Judged::score, order)
                .thenComparing(j -> j.layout().movedFrom(start))
                .thenComparing(j -> String.join("\n", j.layout().blades()));
        Function<Layout, Judged<S>> judge = layout -> new Judged<>(layout, score.apply(layout));
        if (allTried(start)) {
            return all(start).stream().map(judge).min(best).orElseThrow();
        }
        Judged<S> least = IntStream.range(0, start.positions())
                .mapToObj(by -> judge.apply(turnedOn(start, by)))
                .min(best)
                .orElseThrow();
        while (true) {
            Judged<S> better =
                    exchanges(least.layout()).stream().map(judge).min(best).orElseThrow();
            if (best.compare(better, least) >= 0) {
                return least;
            }
            least = better;
        }
    }

    static List<Layout> all(Layout layout) {
        List<Layout> found = new ArrayList<>();
        extend(new ArrayList<>(), new ArrayList<>(layout.blades()), found);
        return found;
    }

    private static void extend(List<String> placed, List<String> left, List<Layout> found) {
        if (left.isEmpty()) {
            found.add(new Layout(placed));
            return;
        }
        for (int i = 0; i < left.size(); i++) {
            List<String> rest = new ArrayList<>(left);
            List<String> more = new ArrayList<>(placed);
            more.add(rest.remove(i));
            extend(more, rest, found);
        }
    }

    private static Layout turnedOn(Layout layout, int by) {
        int n = layout.positions();
        return new Layout(IntStream.range(0, n)
                .mapToObj(p -> layout.blades().get(Math.floorMod(p - by, n)))
                .toList());
    }

    private static List<Layout> exchanges(Layout layout) {
        List<Layout> found = new ArrayList<>();
        for (int i = 0; i < layout.positions(); i++) {
            for (int j = i + 1; j < layout.positions(); j++) {
                List<String> blades = new ArrayList<>(layout.blades());
                Collections.swap(blades, i, j);
                found.add(new Layout(blades));
            }
        }
        return found;
    }

    /** A layout and what it scores. */
    public record Judged<S>(Layout layout, S score) {}
}
