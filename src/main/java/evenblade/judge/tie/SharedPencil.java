package evenblade.judge.tie;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Errors of runs that hang together: runs after one marking share the pencil's error of its marks, each has its own beside
 * it. The covariance over the runs of one marking is Σ = D + a·11ᵀ, D = diag(σ²), a the square of what the pencil's error
 * makes of shaking; with s = Σ 1/σ² and the unit vector u = D^(−½)·1/√s
 *
 * <p>Σ^(−½) = (I − (1 − 1/√(1 + a·s))·uuᵀ)·D^(−½).
 *
 * <p>Errors so scaled are independent and of size 1.
 */
final class SharedPencil {
    private final List<TieRun> runs;
    private final double perMillimetre;
    private final List<int[]> markings;

    /** @param perMillimetre shaking per mm of track, in the unit of the runs' errors, 0 or more */
    SharedPencil(List<TieRun> runs, double perMillimetre) {
        this.runs = List.copyOf(runs);
        this.perMillimetre = perMillimetre;
        Map<String, List<Integer>> byMarks = new LinkedHashMap<>();
        IntStream.range(0, runs.size())
                .forEach(r -> byMarks.computeIfAbsent(runs.get(r).marks(), m -> new ArrayList<>())
                        .add(r));
        markings = byMarks.values().stream()
                .map(all -> all.stream().mapToInt(Integer::intValue).toArray())
                .toList();
    }

    /** Places of the runs of each marking. */
    List<int[]> markings() {
        return markings;
    }

    /** s = Σ 1/σ² of the runs of a marking. */
    double weight(int[] marking) {
        double sum = 0;
        for (int r : marking) {
            sum += 1 / (error(r) * error(r));
        }
        return sum;
    }

    /** 1 + a·s: by how much the pencil makes the variance of a marking's mean larger. */
    double widening(int[] marking) {
        return 1 + Math.pow(pencil(marking), 2) * weight(marking);
    }

    /** √a: what the pencil's error in a marking makes of shaking. */
    double pencil(int[] marking) {
        return perMillimetre * runs.get(marking[0]).trackErrorMm();
    }

    /** Σ^(−½)·values, one value for each run. */
    double[] whitened(double[] values) {
        double[] all = new double[values.length];
        for (int[] marking : markings) {
            double less = 1 - 1 / Math.sqrt(widening(marking));
            double root = Math.sqrt(weight(marking));
            double along = 0;
            for (int r : marking) {
                along += values[r] / (error(r) * error(r)) / root;
            }
            for (int r : marking) {
                all[r] = values[r] / error(r) - less * along / (error(r) * root);
            }
        }
        return all;
    }

    /**
     * The part of whitened residuals that lies between markings, Σ (uᵀr)². How the runs of one marking scatter is left out:
     * their stated errors were made from that already.
     */
    double between(double[] whitened) {
        double squares = 0;
        for (int[] marking : markings) {
            double along = 0;
            for (int r : marking) {
                along += whitened[r] / error(r) / Math.sqrt(weight(marking));
            }
            squares += along * along;
        }
        return squares;
    }

    private double error(int run) {
        return runs.get(run).standardError();
    }
}
