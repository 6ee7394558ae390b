package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import evenblade.judge.tracking.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * What layouts of weighed blades leave on the hub: |Σ M_p·e^{jθ_p}| with θ_p = 360°·(p − 1)/B, hub position 1 at 0°.
 *
 * <p>Track is shown beside it and never mixed in: a heavy blade and a bent blade move together, and neither may be
 * credited with the other's shaking.
 */
public final class HubMoments {
    private HubMoments() {}

    /** The unbalance of a layout, hub position 1 at 0°, positions counted towards rising angles. */
    public static Unbalance unbalance(Layout layout, Map<String, BladeMoment> blades) {
        Phasor sum = Phasor.ZERO;
        for (int p = 1; p <= layout.positions(); p++) {
            BladeMoment blade = blades.get(layout.at(p));
            sum = sum.plus(Phasor.ofDegrees(blade.gmm(), 360.0 * (p - 1) / layout.positions()));
        }
        return new Unbalance(sum);
    }

    /** Standard error of each part of that vector: √(Σ σ²/2), the same for every layout of three or more blades. */
    public static double standardErrorGmm(Map<String, BladeMoment> blades) {
        double squares = blades.values().stream()
                .mapToDouble(b -> b.standardErrorGmm() * b.standardErrorGmm())
                .sum();
        return Math.sqrt(squares / 2);
    }

    /**
     * One layout with what it leaves.
     *
     * @param unbalance by the blades' moments
     * @param trackSpreadMm predicted track spread, where track was measured well enough
     */
    public record Option(Layout layout, Unbalance unbalance, Optional<Double> trackSpreadMm) {
        private boolean betteredBy(Option other) {
            if (trackSpreadMm.isPresent() != other.trackSpreadMm.isPresent()) {
                return false;
            }
            double mine = trackSpreadMm.orElse(0.0);
            double its = other.trackSpreadMm.orElse(0.0);
            boolean noWorse = other.unbalance.gmm() <= unbalance.gmm() && its <= mine;
            return noWorse && (other.unbalance.gmm() < unbalance.gmm() || its < mine);
        }
    }

    /**
     * All layouts worth choosing between: for each one no other is better in mass and no worse in track, or the other way
     * round; one whose track can't be told is held against its like only. Least unbalance first. Layouts that are the same turned round the hub appear once, as the one with the
     * present first blade on position 1.
     *
     * @param now the layout as it stands
     * @param blades moment of every blade in it
     * @param trackMm predicted track spread of a layout in mm, empty where it can't be told
     */
    public static List<Option> choices(
            Layout now, Map<String, BladeMoment> blades, Function<Layout, Optional<Double>> trackMm) {
        List<Option> all = new ArrayList<>();
        for (List<String> order : orders(now.blades().subList(1, now.positions()))) {
            List<String> names = new ArrayList<>(List.of(now.at(1)));
            names.addAll(order);
            Layout layout = new Layout(names);
            all.add(new Option(layout, unbalance(layout, blades), trackMm.apply(layout)));
        }
        return all.stream()
                .filter(o -> all.stream().noneMatch(o::betteredBy))
                .sorted(Comparator.comparingDouble((Option o) -> o.unbalance().gmm())
                        .thenComparing(o -> o.layout().text()))
                .toList();
    }

    private static List<List<String>> orders(List<String> names) {
        if (names.isEmpty()) {
            return List.of(List.of());
        }
        List<List<String>> all = new ArrayList<>();
        for (String first : names) {
            List<String> rest = new ArrayList<>(names);
            rest.remove(first);
            for (List<String> order : orders(rest)) {
                List<String> one = new ArrayList<>(List.of(first));
                one.addAll(order);
                all.add(one);
            }
        }
        return all;
    }

    /**
     * How heavy a blade is about the hub: mass × arm on pivot and scale.
     *
     * @param blade its mark
     * @param gmm mean of the weighings, in g·mm
     * @param standardErrorGmm of that mean
     */
    public record BladeMoment(String blade, double gmm, double standardErrorGmm) {
        /**
         * From repeated weighings of one blade. Their scatter counts beside the error that was stated, which weighs as much as
         * one repeat: two readings that happen to be alike don't make the scale exact.
         *
         * @param weighingsGmm scale reading × arm of each; at least one
         * @param usualErrorGmm standard error of one weighing, as stated
         */
        public static BladeMoment of(String blade, List<Double> weighingsGmm, double usualErrorGmm) {
            int n = weighingsGmm.size();
            double mean = weighingsGmm.stream().mapToDouble(d -> d).average().orElseThrow();
            double squares = weighingsGmm.stream()
                    .mapToDouble(d -> (d - mean) * (d - mean))
                    .sum();
            double single = Math.sqrt((usualErrorGmm * usualErrorGmm + squares) / n);
            return new BladeMoment(blade, mean, single / Math.sqrt(n));
        }
    }
}
