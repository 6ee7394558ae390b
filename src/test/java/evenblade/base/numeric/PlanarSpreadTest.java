package evenblade.base.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlanarSpreadTest {
    /** Rayleigh: P(length ≤ r) = 1 − exp(−r²/2σ²); median σ·√(2·ln 2) (computed from the definition). */
    @Test
    void aRoundSpreadAboutZeroIsRayleigh() {
        PlanarSpread round = new PlanarSpread(Phasor.ZERO, 4, 0, 4);
        assertThat(round.lengthBelow(3)).isCloseTo(1 - Math.exp(-9 / 8.0), within(1e-8));
        assertThat(round.lengthQuantile(0.5)).isCloseTo(2 * Math.sqrt(2 * Math.log(2)), within(1e-6));
    }

    /** Spread along one line only: the length is that of a normal variable about 5. */
    @Test
    void aFlatSpreadFarFromZeroIsNormal() {
        PlanarSpread flat = new PlanarSpread(new Phasor(5, 0), 0.25, 0, 0);
        assertThat(flat.lengthQuantile(0.975)).isCloseTo(5 + 0.5 * 1.959964, within(1e-3));
    }

    @Test
    void turningTheAxesChangesNoLength() {
        PlanarSpread along = new PlanarSpread(new Phasor(3, 0), 4, 0, 1);
        PlanarSpread turned = new PlanarSpread(new Phasor(0, 3), 1, 0, 4);
        assertThat(turned.lengthQuantile(0.9)).isCloseTo(along.lengthQuantile(0.9), within(1e-6));
        assertThat(turned.distanceSquared(new Phasor(0, 5))).isCloseTo(1, within(1e-12));
    }

    /** Variances 4 and 1, covariance 1.2, about (3, 4): |V|² is 25 + 5 on average; along (3, 4)/5 (9·4 + 16·1 + 24·1.2)/25. */
    @Test
    void momentsOfASlantingSpread() {
        PlanarSpread slanting = new PlanarSpread(new Phasor(3, 4), 4, 1.2, 1);
        assertThat(slanting.variance()).isEqualTo(5);
        assertThat(slanting.meanSquare()).isEqualTo(30);
        assertThat(slanting.sigmaAlong(new Phasor(30, 40))).isCloseTo(Math.sqrt(80.8 / 25), within(1e-12));
        assertThat(slanting.sigmaAlong(Phasor.ZERO)).isEqualTo(2);
        // The inverse covariance is [[1, −1.2], [−1.2, 4]]/2.56.
        assertThat(slanting.distanceSquared(new Phasor(5, 3))).isCloseTo((4 + 4.8 + 4) / 2.56, within(1e-12));
        assertThat(slanting.widened(3).sigmaAlong(new Phasor(1, 0))).isCloseTo(6, within(1e-12));
        assertThat(slanting.lengthBelow(0)).isZero();
    }

    /** All turned by 30°, middle and errors alike: (3, 1) and C·diag(4, 1)·Cᵀ, by hand. */
    @Test
    void turningASpreadThatLiesAskewChangesNoLength() {
        double c = Math.sqrt(3) / 2;
        double s = 0.5;
        PlanarSpread along = new PlanarSpread(new Phasor(3, 1), 4, 0, 1);
        PlanarSpread turned =
                new PlanarSpread(new Phasor(3 * c - s, 3 * s + c), 4 * c * c + s * s, 3 * c * s, 4 * s * s + c * c);
        for (double length : new double[] {1, 2.5, 4, 7}) {
            // Both are the same integral along the longest axis: rounding alone.
            assertThat(turned.lengthBelow(length)).isCloseTo(along.lengthBelow(length), within(1e-10));
        }
    }
}
