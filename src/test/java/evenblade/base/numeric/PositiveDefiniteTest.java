package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Inverses known in closed form, and where there is none. */
class PositiveDefiniteTest {
    /** 2 on the diagonal, −1 beside it: (M⁻¹)ij = min(i, j)·(n + 1 − max(i, j))/(n + 1), i and j from 1. */
    @Test
    void theSecondDifferenceHasItsKnownInverse() {
        int n = 5;
        double[][] matrix = new double[n][n];
        for (int i = 0; i < n; i++) {
            matrix[i][i] = 2;
            if (i > 0) {
                matrix[i][i - 1] = -1;
                matrix[i - 1][i] = -1;
            }
        }
        double[][] inverse = PositiveDefinite.inverse(matrix).orElseThrow();
        for (int i = 1; i <= n; i++) {
            for (int j = 1; j <= n; j++) {
                double known = Math.min(i, j) * (n + 1.0 - Math.max(i, j)) / (n + 1);
                assertThat(inverse[i - 1][j - 1]).isCloseTo(known, within(1e-13));
            }
        }
    }

    /** The last pivot of [[1, 1], [1, 1 + e]] is e; the least that counts is 1e-10 of the largest diagonal entry. */
    @Test
    void aPivotCountsFromATenBillionthOfTheLargestEntry() {
        for (double scale : new double[] {1e-6, 1, 1e6}) {
            assertThat(inverse(scale, 4e-10)).isPresent();
            assertThat(inverse(scale, 0.25e-10)).isEmpty();
            assertThat(inverse(scale, -1e-3)).isEmpty();
        }
        double[][] known = inverse(1, 0.5).orElseThrow();
        assertThat(known[0][0]).isCloseTo(3, within(1e-12));
        assertThat(known[0][1]).isCloseTo(-2, within(1e-12));
        assertThat(known[1][1]).isCloseTo(2, within(1e-12));
    }

    private static Optional<double[][]> inverse(double scale, double e) {
        return PositiveDefinite.inverse(new double[][] {{scale, scale}, {scale, scale * (1 + e)}});
    }
}
