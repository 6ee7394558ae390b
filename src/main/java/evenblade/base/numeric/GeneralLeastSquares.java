package evenblade.base.numeric;

import java.util.Optional;

/**
 * Least squares for observations whose errors differ and hang together: y = X·β + ε, cov ε = Σ.
 *
 * <p>β̂ = G·y with G = (XᵀΣ⁻¹X)⁻¹XᵀΣ⁻¹ (Aitken 1935; from memory). The gain G carries any part of Σ through to β̂:
 * a part P of the errors makes the part G·P·Gᵀ of the covariance.
 */
public final class GeneralLeastSquares {
    private final double[] parameters;
    private final double[][] gain;
    private final double sumOfSquares;

    private GeneralLeastSquares(double[] parameters, double[][] gain, double sumOfSquares) {
        this.parameters = parameters;
        this.gain = gain;
        this.sumOfSquares = sumOfSquares;
    }

    /**
     * Fits.
     *
     * @param rows X, one row per observation
     * @param observed y
     * @param errors Σ, positive definite
     * @return nothing where Σ or XᵀΣ⁻¹X can't be inverted: the observations don't tell the parameters apart
     */
    public static Optional<GeneralLeastSquares> fit(double[][] rows, double[] observed, double[][] errors) {
        return inverse(errors).flatMap(weights -> {
            double[][] weighted = times(transposed(rows), weights);
            return inverse(times(weighted, rows)).map(covariance -> {
                double[][] gain = times(covariance, weighted);
                double[] beta = times(gain, observed);
                double[] rest = observed.clone();
                double[] fitted = times(rows, beta);
                for (int i = 0; i < rest.length; i++) {
                    rest[i] -= fitted[i];
                }
                return new GeneralLeastSquares(beta, gain, LinearDesign.dot(rest, times(weights, rest)));
            });
        });
    }

    /** β̂; a copy. */
    public double[] parameters() {
        return parameters.clone();
    }

    /** Residuals weighted by Σ⁻¹; on average observations less parameters, if Σ is right. */
    public double sumOfSquares() {
        return sumOfSquares;
    }

    /** G·P·Gᵀ: what a part of the errors does to β̂. */
    public double[][] carried(double[][] part) {
        return times(times(gain, part), transposed(gain));
    }

    /** Inverse after bringing the diagonal to 1, so that units don't matter. */
    private static Optional<double[][]> inverse(double[][] matrix) {
        int n = matrix.length;
        double[] scale = new double[n];
        for (int i = 0; i < n; i++) {
            if (!(matrix[i][i] > 0)) {
                return Optional.empty();
            }
            scale[i] = 1 / Math.sqrt(matrix[i][i]);
        }
        return PositiveDefinite.inverse(scaled(matrix, scale)).map(inverse -> scaled(inverse, scale));
    }

    private static double[][] scaled(double[][] matrix, double[] scale) {
        double[][] all = new double[matrix.length][matrix.length];
        for (int i = 0; i < matrix.length; i++) {
            for (int j = 0; j < matrix.length; j++) {
                all[i][j] = matrix[i][j] * scale[i] * scale[j];
            }
        }
        return all;
    }

    private static double[][] transposed(double[][] a) {
        double[][] all = new double[a[0].length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a[0].length; j++) {
                all[j][i] = a[i][j];
            }
        }
        return all;
    }

    private static double[][] times(double[][] a, double[][] b) {
        double[][] all = new double[a.length][b[0].length];
        for (int i = 0; i < a.length; i++) {
            for (int k = 0; k < b.length; k++) {
                for (int j = 0; j < b[0].length; j++) {
                    all[i][j] += a[i][k] * b[k][j];
                }
            }
        }
        return all;
    }

    private static double[] times(double[][] a, double[] x) {
        double[] all = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            all[i] = LinearDesign.dot(a[i], x);
        }
        return all;
    }
}
