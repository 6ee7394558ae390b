package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;

/** Least squares with rank, against the linear regression sets of the NIST Statistical Reference Datasets. */
class LinearDesignTest {
    private static final double[][] NORRIS = {
        {0.1, 0.2}, {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6}, {9.2, 10.1}, {228.1, 226.5}, {668.5, 666.3},
        {998.5, 996.3}, {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4}, {0.1, 0.6}, {778.1, 775.5},
        {668.8, 666.9}, {339.3, 338.0}, {448.9, 447.5}, {10.8, 11.6}, {557.7, 556.0}, {228.3, 228.1}, {998.0, 995.8},
        {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3}, {0.6, 0.3}, {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
        {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1}, {117.6, 118.3}, {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9},
        {0.2, 0.5}
    };

    private static final double[][] LONGLEY = {
        {60323, 83.0, 234289, 2356, 1590, 107608, 1947}, {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
        {60171, 88.2, 258054, 3682, 1616, 109773, 1949}, {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
        {63221, 96.2, 328975, 2099, 3099, 112075, 1951}, {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
        {64989, 99.0, 365385, 1870, 3547, 115094, 1953}, {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
        {66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
        {68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
        {68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
        {69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962}
    };

    private static double standardError(LinearFit fit, int parameter) {
        double[] unit = new double[fit.design().parameters()];
        unit[parameter] = 1;
        return Math.sqrt(fit.residualSumOfSquares()
                / fit.degreesOfFreedom()
                * fit.design().varianceFactor(unit));
    }

    @Test
    void norris_slope_and_intercept_with_their_errors() {
        // NIST StRD Norris, certified values (data from memory, they reproduce the certified values).
        double[][] rows = new double[NORRIS.length][];
        double[] y = new double[NORRIS.length];
        for (int i = 0; i < NORRIS.length; i++) {
            rows[i] = new double[] {1, NORRIS[i][1]};
            y[i] = NORRIS[i][0];
        }
        // In the set y is the first column and x the second.
        LinearFit fit = LinearDesign.of(rows).fit(y);
        assertThat(fit.parameter(1)).isCloseTo(1.00211681802045, Percentage.withPercentage(1e-9));
        assertThat(fit.parameter(0)).isCloseTo(-0.262323073774029, Percentage.withPercentage(1e-9));
        assertThat(standardError(fit, 1)).isCloseTo(0.000429796848200, Percentage.withPercentage(1e-8));
        assertThat(standardError(fit, 0)).isCloseTo(0.232818234301, Percentage.withPercentage(1e-8));
        assertThat(fit.degreesOfFreedom()).isEqualTo(34);
    }

    @Test
    void longley_whose_columns_almost_say_the_same() {
        // NIST StRD Longley, certified values (from memory).
        double[] certified = {
            -3482258.63459582,
            15.0618722713733,
            -0.358191792925910E-01,
            -2.02022980381683,
            -1.03322686717359,
            -0.511041056535807E-01,
            1829.15146461355
        };
        double[][] rows = new double[LONGLEY.length][];
        double[] y = new double[LONGLEY.length];
        for (int i = 0; i < LONGLEY.length; i++) {
            rows[i] = LONGLEY[i].clone();
            rows[i][0] = 1;
            y[i] = LONGLEY[i][0];
        }
        LinearFit fit = LinearDesign.of(rows).fit(y);
        assertThat(fit.design().rank()).isEqualTo(7);
        for (int j = 0; j < certified.length; j++) {
            assertThat(fit.parameter(j)).as("b" + j).isCloseTo(certified[j], Percentage.withPercentage(1e-7));
        }
        assertThat(standardError(fit, 0)).isCloseTo(890420.383607373, Percentage.withPercentage(1e-6));
        assertThat(standardError(fit, 6)).isCloseTo(455.478499142212, Percentage.withPercentage(1e-6));
    }

    @Test
    void noInt1_a_line_through_the_origin() {
        // NIST StRD NoInt1, certified values (from memory): y = 130…140, x = 60…70.
        double[][] rows = new double[11][];
        double[] y = new double[11];
        for (int i = 0; i < 11; i++) {
            rows[i] = new double[] {60 + i};
            y[i] = 130 + i;
        }
        LinearFit fit = LinearDesign.of(rows).fit(y);
        assertThat(fit.parameter(0)).isCloseTo(2.07438016528926, Percentage.withPercentage(1e-11));
        assertThat(standardError(fit, 0)).isCloseTo(0.165289256198347E-01, Percentage.withPercentage(1e-10));
    }

    @Test
    void wampler_polynomials_of_the_fifth_degree() {
        // NIST StRD Wampler1 (all coefficients 1) and Wampler2 (coefficients 0.1^k), x = 0…20, certified values.
        assertPolynomial(1, 1e-5);
        assertPolynomial(0.1, 1e-5);
    }

    private static void assertPolynomial(double base, double percent) {
        double[][] rows = new double[21][6];
        double[] y = new double[21];
        for (int x = 0; x <= 20; x++) {
            for (int k = 0; k <= 5; k++) {
                rows[x][k] = Math.pow(x, k);
                y[x] += Math.pow(base, k) * rows[x][k];
            }
        }
        LinearFit fit = LinearDesign.of(rows).fit(y);
        assertThat(fit.design().rank()).isEqualTo(6);
        for (int k = 0; k <= 5; k++) {
            assertThat(fit.parameter(k)).isCloseTo(Math.pow(base, k), Percentage.withPercentage(percent));
        }
    }

    @Test
    void what_the_design_cannot_tell_is_refused_and_what_it_can_tell_is_given() {
        // y = a + b1 or a + b2: the difference of the two is known, neither alone is.
        LinearFit fit = LinearDesign.of(new double[][] {{1, 1, 0}, {1, 0, 1}, {1, 0, 1}})
                .fit(new double[] {5, 2, 4});
        assertThat(fit.design().rank()).isEqualTo(2);
        assertThat(fit.estimate(new double[] {0, 1, -1})).isCloseTo(2, within(1e-12));
        assertThat(fit.design().varianceFactor(new double[] {0, 1, -1})).isCloseTo(1.5, within(1e-12));
        assertThatThrownBy(() -> fit.parameter(1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void estimates_do_not_depend_on_the_unit_of_a_parameter() {
        Random random = new Random(4);
        double[][] rows = new double[12][3];
        double[][] scaled = new double[12][3];
        double[] y = new double[12];
        DoubleUnaryOperator noise = s -> s * random.nextGaussian();
        for (int i = 0; i < 12; i++) {
            for (int j = 0; j < 3; j++) {
                rows[i][j] = noise.applyAsDouble(1);
                scaled[i][j] = rows[i][j] * (j == 1 ? 1e9 : 1);
            }
            y[i] = noise.applyAsDouble(1);
        }
        double[] second = {0, 1, 0};
        LinearFit plain = LinearDesign.of(rows).fit(y);
        LinearFit inOtherUnit = LinearDesign.of(scaled).fit(y);
        assertThat(inOtherUnit.design().rank()).isEqualTo(3);
        assertThat(inOtherUnit.estimate(second) * 1e9)
                .isCloseTo(plain.estimate(second), Percentage.withPercentage(1e-9));
    }

    @Test
    void a_matrix_without_inverse_has_none() {
        assertThat(PositiveDefinite.inverse(new double[][] {{1, 1}, {1, 1}})).isEmpty();
        double[][] inverse =
                PositiveDefinite.inverse(new double[][] {{4, 2}, {2, 3}}).orElseThrow();
        // By hand: 1/8·[[3, −2], [−2, 4]].
        assertThat(inverse[0][0]).isCloseTo(0.375, within(1e-15));
        assertThat(inverse[0][1]).isCloseTo(-0.25, within(1e-15));
        assertThat(inverse[1][1]).isCloseTo(0.5, within(1e-15));
    }
}
