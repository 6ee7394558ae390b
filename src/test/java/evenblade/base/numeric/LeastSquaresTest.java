package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Fits and tests whose answers can be written down; tolerances are rounding unless they say otherwise. */
class LeastSquaresTest {
    private static final double ROUNDING = 1e-10;

    /** A mean of three readings whose errors hang together: weights from Σ⁻¹, by hand 0.4, 0.4 and 0.2. */
    @Test
    void aMeanOfReadingsThatHangTogether() {
        // Σ⁻¹·1 of [[2, 1, 0], [1, 2, 0], [0, 0, 6]] is (1/3, 1/3, 1/6), which sums to 5/6.
        double[][] errors = {{2, 1, 0}, {1, 2, 0}, {0, 0, 6}};
        GeneralLeastSquares fit = GeneralLeastSquares.fit(
                        new double[][] {{1}, {1}, {1}}, new double[] {1, 4, 10}, errors)
                .orElseThrow();

        assertThat(fit.parameters()[0]).isCloseTo(0.4 * 1 + 0.4 * 4 + 0.2 * 10, within(ROUNDING));
        assertThat(fit.carried(errors)[0][0]).isCloseTo(6 / 5.0, within(ROUNDING));
        // Residuals −3, 0 and 6: (2·9)/3 from the pair, 36/6 from the third.
        assertThat(fit.sumOfSquares()).isCloseTo(12, within(ROUNDING));
        double[][] third = {{0, 0, 0}, {0, 0, 0}, {0, 0, 6}};
        assertThat(fit.carried(third)[0][0]).isCloseTo(0.04 * 6, within(ROUNDING));
    }

    @Test
    void whatCantBeToldApartHasNoFit() {
        double[][] alike = {{1, 0}, {0, 1}};
        assertThat(GeneralLeastSquares.fit(new double[][] {{1, 2}, {2, 4}}, new double[] {1, 2}, alike))
                .isEmpty();
        assertThat(GeneralLeastSquares.fit(
                        new double[][] {{1}, {1}}, new double[] {1, 2}, new double[][] {{1, 0}, {0, 0}}))
                .isEmpty();
    }

    /** 3·e^(−0.5·t) at six times is found from far off; one reading off by d leaves less than d². */
    @Test
    void aCurveIsFoundFromAStartThatIsWrong() {
        double[] time = {0, 1, 2, 3, 4, 5};
        double[] observed = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            observed[i] = 3 * Math.exp(-0.5 * time[i]);
        }
        CurveFit fit = CurveFit.from(p -> curve(p, time), observed, new double[] {1, 0})
                .orElseThrow();
        assertThat(fit.parameters()[0]).isCloseTo(3, within(1e-6));
        assertThat(fit.parameters()[1]).isCloseTo(0.5, within(1e-6));
        assertThat(fit.sumOfSquares()).isLessThan(1e-10);
    }

    private static double[] curve(double[] p, double[] time) {
        double[] all = new double[time.length];
        for (int i = 0; i < all.length; i++) {
            all[i] = p[0] * Math.exp(-p[1] * time[i]);
        }
        return all;
    }

    /** 12 over 2 against a variance of 1.5 with 2 degrees of freedom: f = 4, tail 1/(1 + f) with 2 and 2. */
    @Test
    void anFTestOfTwoAndTwoDegrees() {
        assertThat(Distributions.fTest(12, 2, 1.5, 2)).isCloseTo(1 / 5.0, within(ROUNDING));
        assertThat(Distributions.fTest(-1, 2, 1.5, 2)).isEqualTo(1);
    }
}
