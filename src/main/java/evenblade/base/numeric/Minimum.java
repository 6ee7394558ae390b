package evenblade.base.numeric;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;

/**
 * The least value of a function of one variable.
 *
 * @param at where
 * @param value there
 */
public record Minimum(double at, double value) {
    /** Far more than Brent's method takes, which is never worse than some golden sections squared. */
    private static final int MOST_EVALUATIONS = 1000;

    /** Tolerance as a share of the place: the square root of the precision of a double, finer can't be seen. */
    private static final double SHARE = 1.5e-8;

    /**
     * The least value between two ends, by Brent's method (Brent 1973, Algorithms for Minimization without Derivatives,
     * chapter 5); of several dips one is found.
     *
     * @param from lower end
     * @param to upper end
     * @param tolerance how near the place has to be
     */
    public static Minimum between(DoubleUnaryOperator f, double from, double to, double tolerance) {
        UnivariatePointValuePair found = new BrentOptimizer(SHARE, tolerance)
                .optimize(
                        new MaxEval(MOST_EVALUATIONS),
                        new UnivariateObjectiveFunction(f::applyAsDouble),
                        GoalType.MINIMIZE,
                        new SearchInterval(from, to));
        return new Minimum(found.getPoint(), found.getValue());
    }
}
