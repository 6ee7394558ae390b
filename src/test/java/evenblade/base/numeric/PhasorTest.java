package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Complex numbers by hand; tolerances are a few roundings. */
class PhasorTest {
    private static final double ROUNDING = 1e-12;

    private static void assertParts(Phasor value, double re, double im) {
        assertThat(value.re()).isCloseTo(re, within(ROUNDING));
        assertThat(value.im()).isCloseTo(im, within(ROUNDING));
    }

    /** (3 + 4i)(1 − 2i) = 3 + 8 + (4 − 6)i. */
    @Test
    void productsMultiplyOut() {
        assertParts(new Phasor(3, 4).times(new Phasor(1, -2)), 11, -2);
        assertParts(
                Phasor.ofDegrees(2, 50).times(Phasor.ofDegrees(3, 70)),
                6 * Math.cos(Math.toRadians(120)),
                6 * Math.sin(Math.toRadians(120)));
        assertParts(new Phasor(3, 4).times(-0.5), -1.5, -2);
    }

    /** (11 − 2i)/(1 − 2i) = 3 + 4i; (3 + 4i)(2 − 3i) = 18 − i. */
    @Test
    void overTakesAProductBack() {
        assertParts(new Phasor(11, -2).over(new Phasor(1, -2)), 3, 4);
        assertParts(new Phasor(18, -1).over(new Phasor(2, -3)), 3, 4);
    }

    @Test
    void sumsDifferencesAndConjugates() {
        assertParts(new Phasor(3, 4).plus(new Phasor(1, -2)), 4, 2);
        assertParts(new Phasor(3, 4).minus(new Phasor(1, -2)), 2, 6);
        assertParts(new Phasor(3, 4).conjugate(), 3, -4);
    }

    @Test
    void anglesRunFromZeroToJustBelowAFullTurn() {
        assertThat(new Phasor(3, 4).magnitude()).isEqualTo(5);
        assertThat(new Phasor(0, -2).degrees()).isCloseTo(270, within(ROUNDING));
        assertThat(new Phasor(-1, 0).degrees()).isCloseTo(180, within(ROUNDING));
        assertThat(new Phasor(1, -1e-30).degrees()).isZero();
        assertThat(Phasor.ZERO.degrees()).isZero();
    }
}
