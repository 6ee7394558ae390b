package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RiceTest {
    @ParameterizedTest
    @CsvSource({"0,6", "1,6", "3,6", "8,6", "20,6", "3,2", "3,30", "8,1000"})
    void the_interval_holds_the_true_length_however_few_degrees_of_freedom(double trueLength, int dof) {
        Random random = new Random(71);
        int held = 0;
        int trials = 600;
        for (int i = 0; i < trials; i++) {
            double observed = Math.hypot(trueLength + random.nextGaussian(), random.nextGaussian());
            double squares = 0;
            for (int k = 0; k < dof; k++) {
                double z = random.nextGaussian();
                squares += z * z;
            }
            Rice.Interval interval = Rice.interval95(observed, Math.sqrt(squares / dof), dof);
            held += interval.low() <= trueLength && trueLength <= interval.high() ? 1 : 0;
        }
        // Three standard errors of a share of 600 draws: 0.027; at zero, where one side can't miss, up to all of it.
        assertThat((double) held / trials).isBetween(0.923, trueLength <= 1 ? 1.0 : 0.977);
    }

    /** Far above the noise: √(R² − s²) ± t·s. */
    @Test
    void a_long_vector_has_the_interval_of_a_normal_one() {
        double middle = Math.sqrt(400 - 1);
        Rice.Interval interval = Rice.interval95(20, 1, 10);
        assertThat(interval.low()).isCloseTo(middle - 2.228139, within(1e-5));
        assertThat(interval.high()).isCloseTo(middle + 2.228139, within(1e-5));
    }

    /** A length has no unit of its own: lengths and noise times k give the interval times k, near the noise and far above. */
    @ParameterizedTest
    @CsvSource({"0.5", "3", "11", "13", "40"})
    void the_interval_goes_with_the_unit(double observed) {
        Rice.Interval one = Rice.interval95(observed, 1, 9);
        for (double k : new double[] {0.02, 20}) {
            Rice.Interval scaled = Rice.interval95(k * observed, k, 9);
            // Forty halvings of a bracket of some 50 standard deviations: 5e-11.
            assertThat(scaled.low() / k).isCloseTo(one.low(), within(1e-9));
            assertThat(scaled.high() / k).isCloseTo(one.high(), within(1e-9));
        }
    }
}
