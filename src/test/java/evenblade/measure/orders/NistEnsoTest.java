package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.numeric.PositiveDefinite;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.junit.jupiter.api.Test;

/**
 * The order fit on a published series of its own shape: NIST Statistical Reference Datasets, nonlinear
 * regression, ENSO (certified values, read in a public restatement): a constant, a cycle of 12 months
 * and two cycles of free period, 168 values.
 */
class NistEnsoTest {
    private static final double FIRST_PERIOD = 44.311088700;
    private static final double SECOND_PERIOD = 26.887614440;
    private static final double RESIDUAL_SUM = 788.53978668;

    @Test
    void coefficientsAtThePublishedPeriodsAreThePublishedOnes() throws IOException {
        double[] fit = fit(FIRST_PERIOD, SECOND_PERIOD);

        double[] published = {3.0762128085, 0.53280138227, -1.6231428586, 0.52554493756, 0.21232288488, 1.4966870418};
        for (int i = 0; i < published.length; i++) {
            assertThat(fit[i]).isCloseTo(published[i], within(1e-7));
        }
        assertThat(fit[6]).isCloseTo(RESIDUAL_SUM, within(1e-7));
    }

    @Test
    void thePublishedPeriodsAreTheBest() throws IOException {
        assertThat(leastOf(period -> fit(period, SECOND_PERIOD)[6], 43, 46)).isCloseTo(FIRST_PERIOD, within(1e-3));
        assertThat(leastOf(period -> fit(FIRST_PERIOD, period)[6], 26, 28)).isCloseTo(SECOND_PERIOD, within(1e-3));
    }

    private interface Cost {
        double of(double period) throws IOException;
    }

    private static double leastOf(Cost cost, double from, double to) throws IOException {
        double low = from;
        double high = to;
        double golden = (Math.sqrt(5) - 1) / 2;
        while (high - low > 1e-5) {
            double a = high - golden * (high - low);
            double b = low + golden * (high - low);
            if (cost.of(a) < cost.of(b)) {
                high = b;
            } else {
                low = a;
            }
        }
        return 0.5 * (low + high);
    }

    /** Cosine and sine of each cycle, then the residual sum of squares; the level is taken out by the block. */
    private static double[] fit(double firstPeriod, double secondPeriod) throws IOException {
        double[] y = values();
        double[] periods = {12, firstPeriod, secondPeriod};
        double[][] columns = new double[7][y.length];
        for (int i = 0; i < y.length; i++) {
            for (int c = 0; c < 3; c++) {
                columns[2 * c][i] = Math.cos(2 * Math.PI * (i + 1) / periods[c]);
                columns[2 * c + 1][i] = Math.sin(2 * Math.PI * (i + 1) / periods[c]);
            }
            columns[6][i] = y[i];
        }
        // With all times equal there is no slope to take out, only the level.
        BlockSums sums = BlockSums.of(columns, 7, y.length, new double[y.length]);
        double[][] normal = new double[6][6];
        for (int r = 0; r < 6; r++) {
            for (int c = 0; c < 6; c++) {
                normal[r][c] = sums.at(r, c);
            }
        }
        double[][] inverse = PositiveDefinite.inverse(normal).orElseThrow();
        double[] result = new double[7];
        result[6] = sums.at(6, 6);
        for (int r = 0; r < 6; r++) {
            for (int c = 0; c < 6; c++) {
                result[r] += inverse[r][c] * sums.at(6, c);
            }
            result[6] -= result[r] * sums.at(6, r);
        }
        return result;
    }

    private static double[] values() throws IOException {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(NistEnsoTest.class.getResourceAsStream("/reference/enso/enso.csv")),
                StandardCharsets.UTF_8))) {
            return lines.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("month"))
                    .mapToDouble(line -> Double.parseDouble(line.substring(line.indexOf(',') + 1)))
                    .toArray();
        }
    }
}
