package evenblade.base.numeric;

/**
 * The length of a two-component vector that was measured with equal normal noise in each component.
 *
 * <p>With true length A, observed length R and noise standard deviation s per component, R follows
 * Rice's distribution and E R² = A² + 2s² (S. O. Rice, Mathematical analysis of random noise, Bell
 * System Technical Journal 1945, section 3.10): (R/s)² is a noncentral χ² with 2 degrees of freedom and
 * noncentrality (A/s)². Where s is itself estimated with ν degrees of freedom it is widened by the ratio
 * of Student's t to the normal quantile first. (A noncentral F would give the interval of A/σ, not of A,
 * and hold the truth far too often.)
 */
public final class Rice {
    /** Beyond this R/s the length is as good as normal and Student's t is used. */
    private static final double NORMAL_FROM = 12;

    /** Degrees of freedom of a noise that counts as known. */
    private static final double KNOWN = 1e5;

    private static final int HALVINGS = 40; // to 10⁻¹² of the bracket

    private Rice() {}

    /** √max(0, R² − 2s²): what is left of an observed length once the noise's share is taken out. */
    public static double corrected(double observed, double sigma) {
        return Math.sqrt(Math.max(0, observed * observed - 2 * sigma * sigma));
    }

    /**
     * The 95 % interval of the true length.
     *
     * @param low 0 where the observed length could come from noise alone
     */
    public record Interval(double low, double high) {}

    /**
     * The 95 % interval of the true length.
     *
     * @param observed R ≥ 0
     * @param sigma s ≥ 0, in the unit of R
     * @param dof ν, with which s was estimated
     */
    public static Interval interval95(double observed, double sigma, double dof) {
        if (sigma == 0) {
            return new Interval(observed, observed);
        }
        if (observed > NORMAL_FROM * sigma) {
            double reach = Distributions.reach95(dof) * sigma;
            double middle = corrected(observed, sigma / Math.sqrt(2));
            return new Interval(middle - reach, middle + reach);
        }
        double reach = Distributions.reach95(dof) * sigma;
        double widened = reach / Distributions.reach95();
        double f = observed * observed / (2 * widened * widened);
        // However small the observed length, the true one may lie as far off as noise reaches.
        return new Interval(lengthAt(f, widened, KNOWN, 0.975), Math.max(reach, lengthAt(f, widened, KNOWN, 0.025)));
    }

    /** The true length at which the observed one lies at a lower-tail probability; 0 where none does. */
    private static double lengthAt(double f, double sigma, double dof, double probability) {
        if (Distributions.noncentralFBelow(f, 2, dof, 0) <= probability) {
            return 0;
        }
        return sigma
                * Crossing.between(
                        length -> Distributions.noncentralFBelow(f, 2, dof, length * length) > probability,
                        0,
                        Math.sqrt(2 * f) + NORMAL_FROM,
                        HALVINGS);
    }
}
