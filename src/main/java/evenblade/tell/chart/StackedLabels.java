package evenblade.tell.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Lays labels out one above the other beside a plot, as near as can be to what each belongs to. */
final class StackedLabels {
    /**
     * A label to place.
     *
     * @param wanted where its middle should be, in pixels
     * @param rank which is kept when there isn't room for all: the highest
     */
    record Label(double wanted, double rank) {}

    private StackedLabels() {}

    /**
     * The middles of the labels, in their order; empty where there was no room.
     *
     * @param labels in any order
     * @param top end of the room, in pixels
     * @param bottom end of the room, larger than top
     * @param height of one label
     */
    static List<Optional<Double>> layOut(List<Label> labels, double top, double bottom, double height) {
        int room = (int) Math.max(0, Math.floor((bottom - top) / height));
        List<Integer> kept = IntStream.range(0, labels.size())
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -labels.get(i).rank()))
                .limit(room)
                .sorted(Comparator.comparingDouble(i -> labels.get(i).wanted()))
                .toList();
        double[] middle = new double[kept.size()];
        for (int i = 0; i < middle.length; i++) {
            double lowest = i == 0 ? top + height / 2 : middle[i - 1] + height;
            middle[i] = Math.max(lowest, labels.get(kept.get(i)).wanted());
        }
        for (int i = middle.length - 1; i >= 0; i--) {
            double highest = i == middle.length - 1 ? bottom - height / 2 : middle[i + 1] - height;
            middle[i] = Math.min(highest, middle[i]);
        }
        List<Optional<Double>> places = new ArrayList<>();
        labels.forEach(l -> places.add(Optional.empty()));
        for (int i = 0; i < middle.length; i++) {
            places.set(kept.get(i), Optional.of(middle[i]));
        }
        return places;
    }
}
