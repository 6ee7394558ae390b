package evenblade.tell.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Lays labels out in rows above a plot, each flying like a flag from a staff at its own place, so
 * that none lies on another and as few as can be are crossed by a staff of another.
 */
final class FlagRows {
    /**
     * A label to place.
     *
     * @param staff where it points to, in pixels
     * @param width in pixels
     * @param rank which is kept when there isn't room for all: the highest
     */
    record Flag(double staff, double width, double rank) {}

    /**
     * Where a label went.
     *
     * @param row 0 is nearest the plot
     * @param left its left end in pixels
     * @param leftward whether it flies to the left of its staff
     */
    record Place(int row, double left, boolean leftward) {}

    /**
     * All labels placed.
     *
     * @param rows how many rows are used
     * @param places one per label, in their order; empty where there was no room
     */
    record Layout(int rows, List<Optional<Place>> places) {
        long leftOut() {
            return places.stream().filter(Optional::isEmpty).count();
        }
    }

    private FlagRows() {}

    /**
     * Places the labels in as few rows as hold them.
     *
     * @param flags the labels, in any order
     * @param left end of the room, in pixels
     * @param right end of the room, in pixels
     * @param gap least distance between two labels of a row
     * @param mostRows labels of the lowest rank are left out until this many rows hold the rest
     */
    static Layout layOut(List<Flag> flags, double left, double right, double gap, int mostRows) {
        List<Integer> kept =
                new ArrayList<>(IntStream.range(0, flags.size()).boxed().toList());
        while (true) {
            for (int rows = 1; rows <= mostRows; rows++) {
                Optional<List<Optional<Place>>> places = inRows(flags, kept, left, right, gap, rows);
                if (places.isPresent()) {
                    int used = places.get().stream()
                            .flatMap(Optional::stream)
                            .mapToInt(p -> p.row() + 1)
                            .max()
                            .orElse(0);
                    return new Layout(used, places.get());
                }
            }
            kept.remove(kept.stream()
                    .min(Comparator.comparingDouble(i -> flags.get(i).rank()))
                    .orElseThrow());
        }
    }

    private static Optional<List<Optional<Place>>> inRows(
            List<Flag> flags, List<Integer> kept, double left, double right, double gap, int rows) {
        List<Optional<Place>> places = new ArrayList<>();
        flags.forEach(f -> places.add(Optional.empty()));
        List<Integer> inOrder = kept.stream()
                .sorted(Comparator.comparingDouble(
                        i -> leftEnd(flags.get(i), left, right).left()))
                .toList();
        List<Integer> done = new ArrayList<>();
        for (int i : inOrder) {
            Flag flag = flags.get(i);
            Place end = leftEnd(flag, left, right);
            int best = -1;
            int fewest = Integer.MAX_VALUE;
            for (int row = rows - 1; row >= 0; row--) {
                int crossings = 0;
                boolean free = true;
                for (int other : done) {
                    Place placed = places.get(other).orElseThrow();
                    double placedRight = placed.left() + flags.get(other).width();
                    free &= placed.row() != row || placedRight + gap <= end.left();
                    if (placed.row() < row && flag.staff() > placed.left() && flag.staff() < placedRight) {
                        crossings++;
                    }
                }
                if (free && crossings < fewest) {
                    fewest = crossings;
                    best = row;
                }
            }
            if (best < 0) {
                return Optional.empty();
            }
            places.set(i, Optional.of(new Place(best, end.left(), end.leftward())));
            done.add(i);
        }
        return Optional.of(places);
    }

    private static Place leftEnd(Flag flag, double left, double right) {
        boolean leftward = flag.staff() + flag.width() > right;
        double wanted = leftward ? flag.staff() - flag.width() : flag.staff();
        return new Place(0, Math.max(left, wanted), leftward);
    }
}
