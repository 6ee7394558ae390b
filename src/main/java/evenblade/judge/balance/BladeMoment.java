package evenblade.judge.balance;

import java.util.List;

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
        double squares =
                weighingsGmm.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
        double single = Math.sqrt((usualErrorGmm * usualErrorGmm + squares) / n);
        return new BladeMoment(blade, mean, single / Math.sqrt(n));
    }
}
