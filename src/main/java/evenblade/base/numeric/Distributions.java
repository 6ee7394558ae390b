package evenblade.base.numeric;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Erf;
import org.hipparchus.special.Gamma;

/** Quantiles and tail areas of the distributions that intervals and tests rest on. */
public final class Distributions {
    /** Where the middle 95 of 100 end. */
    private static final double UPPER_95 = 0.975;

    private Distributions() {}

    /** Value that a standard normal variable stays below with this probability (0 to 1, ends excluded). */
    public static double normalQuantile(double probability) {
        return new NormalDistribution().inverseCumulativeProbability(probability);
    }

    /** Probability that a standard normal variable stays below a value. */
    public static double normalBelow(double value) {
        return 0.5 * Erf.erfc(-value / Math.sqrt(2));
    }

    /** Value that Student's t stays below with this probability; degrees of freedom above 0. */
    public static double studentQuantile(double probability, double degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /** Half the width of a 95 % interval in standard errors that so many degrees of freedom stand behind. */
    public static double reach95(double degreesOfFreedom) {
        return studentQuantile(UPPER_95, degreesOfFreedom);
    }

    /** Half the width of a 95 % interval in standard errors that are known. */
    public static double reach95() {
        return normalQuantile(UPPER_95);
    }

    /** Probability that Fisher's F exceeds a value: the p-value of an F-test. */
    public static double fTail(double value, double numerator, double denominator) {
        if (value <= 0) {
            return 1;
        }
        // Through the tail of the beta distribution, so that small p-values keep their digits.
        return Beta.regularizedBeta(denominator / (denominator + numerator * value), denominator / 2, numerator / 2);
    }

    /**
     * The p-value of an F-test: probability of so large a part if it meant nothing.
     *
     * @param sumOfSquares what the part takes out of the residual sum of squares
     * @param numerator degrees of freedom of the part, above 0
     * @param variance variance of the scatter, above 0
     * @param denominator degrees of freedom of that variance, above 0
     */
    public static double fTest(double sumOfSquares, double numerator, double variance, double denominator) {
        return fTail(Math.max(0, sumOfSquares) / numerator / variance, numerator, denominator);
    }

    /** Probability that χ² stays below a value. */
    public static double chiSquareBelow(double value, double degreesOfFreedom) {
        return new ChiSquaredDistribution(degreesOfFreedom).cumulativeProbability(value);
    }

    /**
     * Probability that the noncentral F stays below a value, as the Poisson mixture of beta distributions
     * Σⱼ e^{−λ/2}(λ/2)ʲ/j! · I_x(n/2 + j, d/2), x = n·f/(n·f + d) (Johnson, Kotz &amp; Balakrishnan 1995, chapter 30;
     * from memory).
     *
     * @param noncentrality λ, 0 or more
     */
    public static double noncentralFBelow(double value, double numerator, double denominator, double noncentrality) {
        if (value <= 0) {
            return 0;
        }
        double x = numerator * value / (numerator * value + denominator);
        double half = noncentrality / 2;
        double b = denominator / 2;
        if (half == 0) {
            return Beta.regularizedBeta(x, numerator / 2, b);
        }
        // Eight standard deviations of the Poisson weights: what lies outside is below 1e-14 of all.
        int reach = (int) (8 * Math.sqrt(half + 1)) + 20;
        int first = Math.max(0, (int) half - reach);
        int last = (int) half + reach;
        double a = numerator / 2 + first;
        double weight = Math.exp(-half + first * Math.log(half) - Gamma.logGamma(first + 1.0));
        double below = Beta.regularizedBeta(x, a, b);
        // I_x(a + 1, b) = I_x(a, b) − xᵃ(1 − x)ᵇ/(a·B(a, b)): one beta function serves all terms.
        double drop = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - Math.log(a) - Beta.logBeta(a, b));
        double sum = 0;
        for (int j = first; j <= last; j++) {
            sum += weight * Math.max(0, below);
            below -= drop;
            drop *= x * (a + b) / (a + 1);
            a += 1;
            weight *= half / (j + 1);
        }
        return Math.min(1, sum);
    }
}
