package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RobustLineTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void withNormalScatterTheSlopeIsAsGoodAsHuberPromises(long seed) {
        Random random = new Random(seed);
        int n = 20_000;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = i;
            y[i] = 5 + 0.0024 * i + 4e-4 * random.nextGaussian();
        }
        RobustLine line = RobustLine.fit(x, y);
        // Least squares: standard error sigma sqrt(12 / n^3); 95 % efficient, five standard errors allowed.
        assertThat(line.slope()).isCloseTo(0.0024, within(5 * 4e-4 * Math.sqrt(12 / Math.pow(n, 3)) / 0.97));
        assertThat(line.scale()).isCloseTo(4e-4, within(2e-5));
        assertThat(line.at(0)).isCloseTo(5, within(5e-5));
    }

    @Test
    void oneInTenPointsFarOffHardlyTurnsIt() {
        Random random = new Random(9);
        double[] x = new double[5000];
        double[] y = new double[5000];
        for (int i = 0; i < x.length; i++) {
            x[i] = i;
            y[i] = 2 * i + random.nextGaussian() + (i % 10 == 0 ? 300 : 0);
        }
        assertThat(RobustLine.fit(x, y).slope()).isCloseTo(2, within(1e-4));
    }

    @Test
    void pointsOnALineGiveThatLine() {
        RobustLine line = RobustLine.fit(new double[] {1, 2, 3, 7}, new double[] {3, 5, 7, 15});
        assertThat(line.slope()).isCloseTo(2, within(1e-12));
        assertThat(line.intercept()).isCloseTo(1, within(1e-12));
    }

    @Test
    void tooFewOrEqualPointsAreRefused() {
        assertThatThrownBy(() -> RobustLine.fit(new double[] {1}, new double[] {1}))
                .hasMessageContaining("at least 2");
        assertThatThrownBy(() -> RobustLine.fit(new double[] {1, 1}, new double[] {1, 2}))
                .hasMessageContaining("all x are equal");
    }

    /** Residuals ±1 and ±3 of a level line through pairs: half way between 1 and 3 as normal noise would have it. */
    @Test
    void anEvenNumberOfDeviationsHasItsMedianHalfWay() {
        RobustLine line = RobustLine.fit(new double[] {-1, -1, 1, 1}, new double[] {-1, 1, -3, 3});
        assertThat(line.slope()).isCloseTo(0, within(1e-12));
        assertThat(line.intercept()).isCloseTo(0, within(1e-12));
        // 1/0.67449, the upper quartile of the normal distribution in any table, to the four places used.
        assertThat(line.scale()).isCloseTo(2 / 0.67449, within(2e-4));
    }
}
