package evenblade.numeric;

import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;

/** Quantiles and tail areas of the distributions that intervals and tests rest on. */
public final class Distributions {
    private Distributions() {}

    /** Value that a standard normal variable stays below with this probability (0 to 1, ends excluded). */
    public static double normalQuantile(double probability) {
        return new NormalDistribution().inverseCumulativeProbability(probability);
    }

    /** Value that Student's t stays below with this probability; degrees of freedom above 0. */
    public static double studentQuantile(double probability, double degreesOfFreedom) {
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
    }

    /** Value that Fisher's F stays below with this probability. */
    public static double fQuantile(double probability, double numerator, double denominator) {
        return new FDistribution(numerator, denominator).inverseCumulativeProbability(probability);
    }

    /** Probability that Fisher's F exceeds a value: the p-value of an F-test. */
    public static double fTail(double value, double numerator, double denominator) {
        if (value <= 0) {
            return 1;
        }
        // Through the tail of the beta distribution, so that small p-values keep their digits.
        return Beta.regularizedBeta(denominator / (denominator + numerator * value), denominator / 2, numerator / 2);
    }

    /** Value that χ² stays below with this probability. */
    public static double chiSquareQuantile(double probability, double degreesOfFreedom) {
        return new ChiSquaredDistribution(degreesOfFreedom).inverseCumulativeProbability(probability);
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
        int centre = (int) Math.floor(half);
        int reach = (int) (12 * Math.sqrt(half + 1)) + 20;
        double sum = 0;
        for (int j = Math.max(0, centre - reach); j <= centre + reach; j++) {
            double logWeight = half > 0 ? -half + j * Math.log(half) - Gamma.logGamma(j + 1.0) : 0;
            if (half == 0 && j > 0) {
                break;
            }
            sum += Math.exp(logWeight) * Beta.regularizedBeta(x, numerator / 2 + j, denominator / 2);
        }
        return Math.min(1, sum);
    }
}
