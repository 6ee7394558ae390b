package evenblade.judge.tracking;

import evenblade.base.numeric.PositiveDefinite;
import java.util.Arrays;
import java.util.List;

/**
 * How much a set of layouts tells about hub positions and blades, before anything is read: the information matrix of h
 * and t with each session's own zero taken out, Σ w·xxᵀ − (Σ w·x)(Σ w·x)ᵀ/Σ w with w = n/σ².
 *
 * <p>Adding ones among the positions and among the blades fixes the two sums that no mark can tell; the matrix is
 * then invertible exactly when every difference can be told, and the variances of differences aren't changed by it.
 */
final class Information {
    private final int positions;
    private final List<String> blades;
    private final double[][] matrix;

    Information(int positions, List<String> blades) {
        this.positions = positions;
        this.blades = blades;
        matrix = new double[positions + blades.size()][positions + blades.size()];
    }

    void add(TrackingSession session, double sigmaMm) {
        double[] weights = new double[positions];
        for (int p = 0; p < positions; p++) {
            weights[p] = session.readings().get(p).size() / (sigmaMm * sigmaMm);
        }
        add(session.layout(), weights);
    }

    /** With one more mark per blade in a layout. */
    Information with(Layout layout, double sigmaMm) {
        Information more = new Information(positions, blades);
        for (int i = 0; i < matrix.length; i++) {
            more.matrix[i] = matrix[i].clone();
        }
        double[] weights = new double[positions];
        Arrays.fill(weights, 1 / (sigmaMm * sigmaMm));
        more.add(layout, weights);
        return more;
    }

    /** Largest variance in mm² of a difference between two positions or two blades; infinite if one can't be told. */
    double worstVariance() {
        int n = matrix.length;
        double scale = 0;
        for (int i = 0; i < n; i++) {
            scale = Math.max(scale, matrix[i][i]);
        }
        double[][] fixed = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                fixed[i][j] = matrix[i][j] + ((i < positions) == (j < positions) ? scale : 0);
            }
        }
        return PositiveDefinite.inverse(fixed)
                .map(inverse -> Math.max(worst(inverse, 0, positions), worst(inverse, positions, n)))
                .orElse(Double.POSITIVE_INFINITY);
    }

    private static double worst(double[][] covariance, int from, int to) {
        double worst = 0;
        for (int i = from; i < to; i++) {
            for (int j = i + 1; j < to; j++) {
                worst = Math.max(worst, covariance[i][i] + covariance[j][j] - 2 * covariance[i][j]);
            }
        }
        return worst;
    }

    private void add(Layout layout, double[] weights) {
        double total = 0;
        double[] sum = new double[matrix.length];
        for (int p = 0; p < positions; p++) {
            int blade = positions + blades.indexOf(layout.blades().get(p));
            matrix[p][p] += weights[p];
            matrix[blade][blade] += weights[p];
            matrix[p][blade] += weights[p];
            matrix[blade][p] += weights[p];
            sum[p] += weights[p];
            sum[blade] += weights[p];
            total += weights[p];
        }
        for (int i = 0; i < sum.length; i++) {
            for (int j = 0; j < sum.length; j++) {
                matrix[i][j] -= sum[i] * sum[j] / total;
            }
        }
    }
}
