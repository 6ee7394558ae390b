package evenblade.base.numeric;

import java.util.Optional;
import java.util.function.Function;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/** Least squares fit of a curved model from a start, by Levenberg and Marquardt with a numerical Jacobian. */
public final class CurveFit {
    private static final int MOST_STEPS = 200; // ours: a bound, so that it always ends
    /** Near the square root of a double's precision, where rounding and curvature weigh alike. */
    private static final double STEP = 1e-6;

    private final double[] parameters;
    private final double sumOfSquares;

    private CurveFit(double[] parameters, double sumOfSquares) {
        this.parameters = parameters;
        this.sumOfSquares = sumOfSquares;
    }

    /**
     * Fits.
     *
     * @param model from parameters to predictions, as many as observations; smooth near the start
     * @param observed observations of equal weight
     * @param start parameters to start from
     * @return nothing where the search doesn't settle
     */
    public static Optional<CurveFit> from(Function<double[], double[]> model, double[] observed, double[] start) {
        MultivariateJacobianFunction function = point -> values(model, point);
        try {
            LeastSquaresOptimizer.Optimum optimum = new LevenbergMarquardtOptimizer()
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .target(observed)
                            .model(function)
                            .lazyEvaluation(false)
                            .maxEvaluations(MOST_STEPS)
                            .maxIterations(MOST_STEPS)
                            .build());
            double cost = optimum.getCost();
            return Optional.of(new CurveFit(optimum.getPoint().toArray(), cost * cost));
        } catch (MathRuntimeException unsettled) {
            return Optional.empty();
        }
    }

    /** The fitted parameters; a copy. */
    public double[] parameters() {
        return parameters.clone();
    }

    /** Sum of the squared residuals. */
    public double sumOfSquares() {
        return sumOfSquares;
    }

    private static Pair<RealVector, RealMatrix> values(Function<double[], double[]> model, RealVector point) {
        double[] at = point.toArray();
        double[] here = model.apply(at);
        RealMatrix jacobian = new Array2DRowRealMatrix(here.length, at.length);
        for (int j = 0; j < at.length; j++) {
            double step = STEP * Math.max(1e-3, Math.abs(at[j]));
            double[] up = at.clone();
            double[] down = at.clone();
            up[j] += step;
            down[j] -= step;
            double[] above = model.apply(up);
            double[] below = model.apply(down);
            for (int i = 0; i < here.length; i++) {
                jacobian.setEntry(i, j, (above[i] - below[i]) / (up[j] - down[j]));
            }
        }
        return new Pair<>(new ArrayRealVector(here, false), jacobian);
    }
}
