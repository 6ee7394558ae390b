package evenblade.judge.tracking;

import evenblade.machine.installation.Limit;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The one number made from readings round the hub that a limit is held against. Limits differ in which number they
 * mean, and the same marks can pass one and fail another.
 */
public final class MarkStatistics {
    private MarkStatistics() {}

    /**
     * The number that a limit of this kind is held against, in the unit of the readings.
     *
     * @param byPosition readings in the order of the hub positions, one each, at least 2
     * @return nothing for {@code OPPOSITE_BLADE} where the number of blades is odd: no blade has one opposite
     */
    public static OptionalDouble measure(Limit.Statistic statistic, List<Double> byPosition) {
        return switch (statistic) {
            case SPREAD -> OptionalDouble.of(spread(byPosition));
            case ABOUT_MIDDLE -> OptionalDouble.of(spread(byPosition) / 2);
            case ABOUT_MEAN -> {
                double mean = mean(byPosition);
                yield byPosition.stream()
                        .mapToDouble(mark -> Math.abs(mark - mean))
                        .max();
            }
            case OPPOSITE_BLADE -> oppositeBlade(byPosition);
        };
    }

    static double spread(List<Double> byPosition) {
        return Collections.max(byPosition) - Collections.min(byPosition);
    }

    static double mean(List<Double> byPosition) {
        return byPosition.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    private static OptionalDouble oppositeBlade(List<Double> byPosition) {
        int half = byPosition.size() / 2;
        if (byPosition.size() % 2 != 0) {
            return OptionalDouble.empty();
        }
        double largest = 0;
        for (int i = 0; i < half; i++) {
            largest = Math.max(largest, Math.abs(byPosition.get(i) - byPosition.get(i + half)));
        }
        return OptionalDouble.of(largest);
    }
}
