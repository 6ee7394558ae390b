package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Tables printed in every textbook of statistics, to the digits printed there. */
class DistributionsTest {
    @Test
    void student_t_for_a_two_sided_interval_of_95_percent() {
        assertThat(Distributions.studentQuantile(0.975, 1)).isCloseTo(12.706, within(5e-4));
        assertThat(Distributions.studentQuantile(0.975, 5)).isCloseTo(2.571, within(5e-4));
        assertThat(Distributions.studentQuantile(0.975, 10)).isCloseTo(2.228, within(5e-4));
        assertThat(Distributions.studentQuantile(0.975, 30)).isCloseTo(2.042, within(5e-4));
        assertThat(Distributions.normalQuantile(0.975)).isCloseTo(1.959964, within(5e-7));
    }

    @Test
    void fisher_f_and_its_tail() {
        assertThat(Distributions.fTail(4.103, 2, 10)).isCloseTo(0.05, within(5e-5));
        assertThat(Distributions.fTail(0, 2, 10)).isEqualTo(1);
        // Closed form for two degrees of freedom above: (1 + 2f/d)^(−d/2).
        assertThat(Distributions.fTail(300, 2, 20)).isCloseTo(Math.pow(31, -10), within(1e-22));
    }

    @Test
    void chi_square() {
        assertThat(Distributions.chiSquareBelow(3.841, 1)).isCloseTo(0.95, within(1e-4));
        assertThat(Distributions.chiSquareBelow(18.307, 10)).isCloseTo(0.95, within(1e-5));
    }

    @Test
    void noncentral_f_agrees_with_the_central_one_and_with_drawn_numbers() {
        assertThat(Distributions.noncentralFBelow(4.1028, 2, 10, 0)).isCloseTo(0.95, within(1e-5));
        Random random = new Random(11);
        int below = 0;
        int draws = 200_000;
        for (int i = 0; i < draws; i++) {
            double a = random.nextGaussian() + 3;
            double b = random.nextGaussian();
            double denominator = 0;
            for (int k = 0; k < 8; k++) {
                double z = random.nextGaussian();
                denominator += z * z;
            }
            if ((a * a + b * b) / 2 / (denominator / 8) < 5) {
                below++;
            }
        }
        // Four standard errors of a share of 200,000 draws: 0.0045.
        assertThat(Distributions.noncentralFBelow(5, 2, 8, 9)).isCloseTo((double) below / draws, within(0.0045));
    }

    /**
     * With 2 and 2 degrees of freedom the mixture sums to x·e^(−h(1 − x)), h = λ/2, x = f/(f + 1); with 2 and 4 to
     * x·e^(−h(1 − x))·(1 + (1 − x)(1 + h·x)), x = f/(f + 2): I_x(a, 1) = xᵃ, I_x(a, 2) = xᵃ(1 + a(1 − x)).
     */
    @Test
    void noncentral_f_of_two_and_two_and_of_two_and_four_degrees_in_closed_form() {
        for (double lambda : new double[] {0.3, 4, 25, 400}) {
            double h = lambda / 2;
            for (double f : new double[] {0.5, 3, 20, 150, 900}) {
                double x = f / (f + 1);
                double two = x * Math.exp(-h * (1 - x));
                assertThat(Distributions.noncentralFBelow(f, 2, 2, lambda)).isCloseTo(two, within(1e-10));
                double y = f / (f + 2);
                double four = y * Math.exp(-h * (1 - y)) * (1 + (1 - y) * (1 + h * y));
                assertThat(Distributions.noncentralFBelow(f, 2, 4, lambda)).isCloseTo(four, within(1e-10));
            }
        }
    }

    @Test
    void a_phasor_turns() {
        Phasor quarter = Phasor.ofDegrees(2, 90);
        assertThat(quarter.times(quarter).re()).isCloseTo(-4, within(1e-12));
        assertThat(Phasor.ofDegrees(3, -30).degrees()).isCloseTo(330, within(1e-9));
        assertThat(Phasor.ofDegrees(1, 200).plus(Phasor.ofDegrees(1, 20)).magnitude())
                .isCloseTo(0, within(1e-12));
    }
}
