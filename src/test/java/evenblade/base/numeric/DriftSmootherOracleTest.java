package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/**
 * The same model as one dense problem, without any filter: y = β₀ + β₁·t + g(t) + e, g an integrated Wiener process of
 * covariance q·m²(3M − m)/6 (m the earlier time, M the later), var e = s²·r. Best linear unbiased prediction, restricted
 * likelihood, scale s² = (6 + residual squares)/(6 + n − 2).
 */
class DriftSmootherOracleTest {
    private static final double PRIOR = 6;

    private final double[] time;
    private final RealVector reading;
    private final RealMatrix noise;
    private final RealMatrix straight;

    DriftSmootherOracleTest() {
        Random random = new Random(7);
        int n = 24;
        time = new double[n];
        reading = new ArrayRealVector(n);
        noise = new Array2DRowRealMatrix(n, n);
        straight = new Array2DRowRealMatrix(n, 2);
        for (int i = 0; i < n; i++) {
            time[i] = 0.4 * i + 0.2 * random.nextDouble();
            double variance = 1e-4 * (0.5 + random.nextDouble());
            noise.setEntry(i, i, variance);
            straight.setEntry(i, 0, 1);
            straight.setEntry(i, 1, time[i] - time[0]);
        }
    }

    private DriftSmoother.Smoothed smoothed() {
        double[] variance = new double[time.length];
        for (int i = 0; i < variance.length; i++) {
            variance[i] = noise.getEntry(i, i);
        }
        return DriftSmoother.smooth(time, reading.toArray(), variance, time[0], time[time.length - 1]);
    }

    private static double walk(double a, double b) {
        double m = Math.min(a, b);
        return m * m * (3 * Math.max(a, b) - m) / 6;
    }

    /** Covariance of the walk's rate at one time with the walk at another. */
    private static double rateWalk(double at, double other) {
        return at <= other ? at * other - at * at / 2 : other * other / 2;
    }

    /** What is known once q is. */
    private final class Dense {
        final double q;
        final RealMatrix inverse;
        final RealMatrix covariance;
        final RealVector beta;
        final double scale;
        final double likelihood;

        Dense(double q) {
            this.q = q;
            int n = time.length;
            RealMatrix sigma = noise.copy();
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    sigma.addToEntry(i, j, q * walk(time[i] - time[0], time[j] - time[0]));
                }
            }
            LUDecomposition lu = new LUDecomposition(sigma);
            inverse = lu.getSolver().getInverse();
            LUDecomposition information =
                    new LUDecomposition(straight.transpose().multiply(inverse).multiply(straight));
            covariance = information.getSolver().getInverse();
            beta = covariance.operate(straight.transpose().operate(inverse.operate(reading)));
            RealVector rest = rest();
            double squares = rest.dotProduct(inverse.operate(rest));
            scale = (PRIOR + squares) / (PRIOR + n - 2);
            likelihood = -0.5
                    * (Math.log(lu.getDeterminant())
                            + Math.log(information.getDeterminant())
                            + (n - 2 + PRIOR) * Math.log(scale));
        }

        private RealVector rest() {
            return reading.subtract(straight.operate(beta));
        }

        /** Prediction of a combination of β plus a part of g, by its covariance with g at the readings. */
        double predicted(double level, double rate, RealVector withWalk) {
            return level * beta.getEntry(0)
                    + rate * beta.getEntry(1)
                    + q * withWalk.dotProduct(inverse.operate(rest()));
        }

        /** Standard error of the mean rate from first to last reading. */
        double meanRateError() {
            double length = time[time.length - 1] - time[0];
            RealVector with = walkAt(time[time.length - 1]).mapMultiply(q);
            RealVector part = new ArrayRealVector(new double[] {0, length})
                    .subtract(straight.transpose().operate(inverse.operate(with)));
            double variance = q * walk(length, length)
                    - with.dotProduct(inverse.operate(with))
                    + part.dotProduct(covariance.operate(part));
            return Math.sqrt(scale * variance) / length;
        }
    }

    private RealVector walkAt(double at) {
        RealVector all = new ArrayRealVector(time.length);
        for (int i = 0; i < time.length; i++) {
            all.setEntry(i, walk(at - time[0], time[i] - time[0]));
        }
        return all;
    }

    private RealVector rateWalkAt(double at) {
        RealVector all = new ArrayRealVector(time.length);
        for (int i = 0; i < time.length; i++) {
            all.setEntry(i, rateWalk(at - time[0], time[i] - time[0]));
        }
        return all;
    }

    /** Most likely q, by thirds in its logarithm. */
    private Dense mostLikely() {
        double low = Math.log(1e-8);
        double high = Math.log(10);
        for (int i = 0; i < 80; i++) {
            double a = low + (high - low) / 3;
            double b = high - (high - low) / 3;
            if (new Dense(Math.exp(a)).likelihood < new Dense(Math.exp(b)).likelihood) {
                low = a;
            } else {
                high = b;
            }
        }
        return new Dense(Math.exp(low));
    }

    /** The search for q stops within a hundredth of it: a hundredth of the error may be off by that. */
    @Test
    void aDriftingRateIsTheBestUnbiasedPredictionOfTheSameModel() {
        Random random = new Random(11);
        for (int i = 0; i < time.length; i++) {
            double t = time[i] - time[0];
            reading.setEntry(
                    i,
                    30 * t
                            + 0.4 * Math.sin(2 * Math.PI * t / 7)
                            + Math.sqrt(noise.getEntry(i, i)) * random.nextGaussian());
        }
        Dense dense = mostLikely();
        DriftSmoother.Smoothed smooth = smoothed();
        double error = dense.meanRateError();
        double length = time[time.length - 1] - time[0];

        assertThat(smooth.drifts()).isTrue();
        double mean = dense.predicted(0, length, walkAt(time[time.length - 1])) / length;
        assertThat(smooth.meanRate()).isCloseTo(mean, within(0.01 * error));
        assertThat(smooth.meanRateStandardError()).isCloseTo(error, within(0.01 * error));
        for (int i = 1; i < time.length; i++) {
            double t = time[i] - time[0];
            assertThat(smooth.level().get(i)).isCloseTo(dense.predicted(1, t, walkAt(time[i])), within(2e-4));
            assertThat(smooth.rate().get(i)).isCloseTo(dense.predicted(0, 1, rateWalkAt(time[i])), within(2e-3));
        }
    }

    /** q = 0: weighted straight line; its error in closed form, no estimate of the program's own in the tolerance. */
    @Test
    void aSteadyRateHasTheErrorOfTheWeightedStraightLine() {
        for (double times : new double[] {0.5, 1, 3}) {
            Random random = new Random(5);
            for (int i = 0; i < time.length; i++) {
                reading.setEntry(
                        i, 30 * (time[i] - time[0]) + times * Math.sqrt(noise.getEntry(i, i)) * random.nextGaussian());
            }
            Dense line = new Dense(0);
            DriftSmoother.Smoothed smooth = smoothed();
            assertThat(smooth.drifts()).isFalse();
            assertThat(smooth.meanRate()).isCloseTo(line.beta.getEntry(1), within(1e-9));
            double error = Math.sqrt(line.scale * line.covariance.getEntry(1, 1));
            assertThat(smooth.meanRateStandardError()).isCloseTo(error, within(1e-6 * error));
        }
    }
}
