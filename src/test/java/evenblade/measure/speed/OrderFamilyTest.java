package evenblade.measure.speed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** e^{i(a+b)φ} = e^{iaφ}·e^{ibφ}. */
class OrderFamilyTest {
    private static double[] multipliedOut(OrderFamily family, double angle, double length, int place) {
        double[][] cos = new double[family.size()][1];
        double[][] sin = new double[family.size()][1];
        for (int k : family.byThemselves()) {
            cos[k][0] = length * Math.cos(family.order(k) * angle);
            sin[k][0] = length * Math.sin(family.order(k) * angle);
        }
        family.multiplyOut(cos, sin, 1);
        return new double[] {cos[place][0], sin[place][0]};
    }

    @Test
    void wavesOfSumsComeFromTheirParts() {
        double[] orders = {4.86, 3, 1, 2.43, 2, 6, 7.29};
        OrderFamily family = new OrderFamily(orders);
        assertThat(Arrays.stream(family.byThemselves()).mapToDouble(family::order))
                .containsExactly(1.0, 2.43);
        for (double angle : new double[] {0.3, 1.9, -2.2}) {
            for (int k = 0; k < orders.length; k++) {
                double[] wave = multipliedOut(family, angle, 1, k);
                assertThat(wave[0]).isCloseTo(Math.cos(orders[k] * angle), within(1e-12));
                assertThat(wave[1]).isCloseTo(Math.sin(orders[k] * angle), within(1e-12));
            }
        }
    }

    /** Waves twice as long as they should be show how many of them went into a product: 2.5 and 2.5 make 5, not five ones. */
    @Test
    void asFewProductsAsPossibleAreMultiplied() {
        double[] orders = {1, 2, 2.5, 3, 4, 5};
        OrderFamily family = new OrderFamily(orders);
        double[] ofOnes = multipliedOut(family, 0.3, 2, 4);
        assertThat(Math.hypot(ofOnes[0], ofOnes[1])).isCloseTo(16, within(1e-9));
        double[] five = multipliedOut(family, 0.3, 2, 5);
        assertThat(Math.hypot(five[0], five[1])).isCloseTo(4, within(1e-9));
    }

    /** A part in 10¹² of 100 is 1e-10. */
    @Test
    void ordersAreASumToAPartInAMillionMillion() {
        assertThat(new OrderFamily(new double[] {40, 60, 100 + 5e-11}).byThemselves())
                .hasSize(2);
        assertThat(new OrderFamily(new double[] {40, 60, 100 + 5e-10}).byThemselves())
                .hasSize(3);
    }
}
