package evenblade.base.numeric;

import java.util.Optional;

/**
 * Inverse of small symmetric matrices, with 'there is none' as an answer. Not by Hipparchus: its Cholesky decomposition
 * throws where there is none, and took 1.8 times as long for 6 unknowns, 1.2 times for 20 and as long for 40, measured side
 * by side.
 */
public final class PositiveDefinite {
    /** A pivot below this share of the largest diagonal entry counts as zero. */
    private static final double PIVOT_TOLERANCE = 1e-10;

    private PositiveDefinite() {}

    /** The lower triangle L of M = L·Lᵀ (Cholesky). */
    private static Optional<double[][]> lowerFactor(double[][] matrix) {
        int n = matrix.length;
        double largest = 0;
        for (int i = 0; i < n; i++) {
            largest = Math.max(largest, matrix[i][i]);
        }
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i > j) {
                    lower[i][j] = sum / lower[j][j];
                } else if (sum > PIVOT_TOLERANCE * largest) {
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(lower);
    }

    /**
     * M⁻¹, or nothing where M is not positive definite.
     *
     * @param matrix square and symmetric; only its lower triangle is read; not changed
     */
    public static Optional<double[][]> inverse(double[][] matrix) {
        return lowerFactor(matrix).map(PositiveDefinite::inverseFromFactor);
    }

    private static double[][] inverseFromFactor(double[][] lower) {
        int n = lower.length;
        double[][] factorInverse = new double[n][n];
        for (int j = 0; j < n; j++) {
            factorInverse[j][j] = 1 / lower[j][j];
            for (int i = j + 1; i < n; i++) {
                double sum = 0;
                for (int k = j; k < i; k++) {
                    sum -= lower[i][k] * factorInverse[k][j];
                }
                factorInverse[i][j] = sum / lower[i][i];
            }
        }
        double[][] inverse = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = i; k < n; k++) {
                    sum += factorInverse[k][i] * factorInverse[k][j];
                }
                inverse[i][j] = sum;
                inverse[j][i] = sum;
            }
        }
        return inverse;
    }
}
