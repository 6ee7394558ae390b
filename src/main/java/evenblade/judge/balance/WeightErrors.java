package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What wrong masses and places of weights do to the sum of weights of each run. Each source of error is a list with one
 * vector per run, one standard deviation long: masses of the same figure share one source, a weight left in place another.
 */
final class WeightErrors {
    private static final Phasor QUARTER_TURN = new Phasor(0, 1);

    private WeightErrors() {}

    /** All sources, in g·mm. */
    static List<List<Phasor>> of(List<WeightedReading> runs) {
        Map<Double, List<Phasor>> masses = new LinkedHashMap<>();
        Map<Weight, List<Phasor>> places = new LinkedHashMap<>();
        for (int i = 0; i < runs.size(); i++) {
            for (Weight weight : runs.get(i).weights()) {
                Phasor vector = weight.vectorGmm();
                add(masses.computeIfAbsent(weight.massG(), m -> still(runs.size())), i, massError(weight, vector));
                add(places.computeIfAbsent(weight, w -> still(runs.size())), i, placingError(vector));
            }
        }
        List<List<Phasor>> all = new ArrayList<>(masses.values());
        all.addAll(places.values());
        return all;
    }

    static Phasor massError(Weight weight, Phasor vector) {
        return vector.times(weight.massErrorG() / weight.massG());
    }

    static Phasor placingError(Phasor vector) {
        return vector.times(QUARTER_TURN).times(Math.toRadians(Weight.PLACING_ERROR_DEG));
    }

    private static List<Phasor> still(int runs) {
        List<Phasor> all = new ArrayList<>();
        for (int i = 0; i < runs; i++) {
            all.add(Phasor.ZERO);
        }
        return all;
    }

    private static void add(List<Phasor> source, int run, Phasor error) {
        source.set(run, source.get(run).plus(error));
    }
}
