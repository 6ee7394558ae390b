package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimationPlanTest {
    /** All rates that recorders use, and bands of which some end exactly at 0.45 of the new rate. */
    @ParameterizedTest
    @CsvSource({
        "48000, 1000",
        "48000, 2000",
        "48000, 1080",
        "44100, 1000",
        "44100, 450",
        "96000, 1000",
        "192000, 1000",
        "22050, 333",
        "16000, 1000",
        "11025, 77",
        "8000, 1000",
        "8000, 1800",
        "6664, 1000",
        "384000, 200",
        "1000, 5"
    })
    void theBandIsFlatWithin_0_005DecibelAndAllThatFoldsIntoItIsHeldBackBy80(double fromHz, double keepHz) {
        DecimationPlan plan = DecimationPlan.cheapest(fromHz, keepHz);
        int points = plan.factor() > 64 ? 21 : 101;
        double[][] taps = new double[plan.factors().size()][];
        Arrays.setAll(taps, plan::taps);
        double flattest = 0;
        double leastHeldBack = Double.POSITIVE_INFINITY;
        for (int i = 0; i < points; i++) {
            double hz = keepHz * i / (points - 1);
            flattest = Math.max(flattest, Math.abs(decibel(gain(plan, taps, hz))));
            for (int image = 1; image <= plan.factor() / 2; image++) {
                for (double folding : new double[] {image * plan.toHz() - hz, image * plan.toHz() + hz}) {
                    if (folding <= fromHz / 2) {
                        leastHeldBack = Math.min(leastHeldBack, -decibel(gain(plan, taps, folding)));
                    }
                }
            }
        }
        assertThat(flattest).isLessThan(0.005);
        assertThat(leastHeldBack).isGreaterThan(80);
    }

    @Test
    void aVeryLargeFactorIsMadeOfHalvings() {
        DecimationPlan plan = DecimationPlan.cheapest(384_000, 20);

        assertThat(plan.toHz()).isBetween(20 / 0.45, 2 * 20 / 0.45);
    }

    @Test
    void besselFunctionHasItsTabledValues() {
        // Abramowitz and Stegun, table 9.8 (from memory): I0(1) = 1.2660658778, I0(5) = 27.2398718236
        assertThat(LowPass.besselI0(0)).isEqualTo(1);
        assertThat(LowPass.besselI0(1)).isCloseTo(1.2660658778, within(1e-10));
        assertThat(LowPass.besselI0(5)).isCloseTo(27.2398718236, within(1e-9));
    }

    /** Gain of all stages together for a tone of {@code hz}, as it travels through the falling rates. */
    private static double gain(DecimationPlan plan, double[][] tapsOfStage, double hz) {
        double gain = 1;
        double rate = plan.fromHz();
        for (int stage = 0; stage < plan.factors().size(); stage++) {
            double[] taps = tapsOfStage[stage];
            int half = taps.length / 2;
            double sum = taps[half];
            for (int k = 1; k <= half; k++) {
                sum += 2 * taps[half + k] * Math.cos(2 * Math.PI * hz / rate * k);
            }
            gain *= sum;
            rate /= plan.factors().get(stage);
        }
        return Math.abs(gain);
    }

    private static double decibel(double ratio) {
        return 20 * Math.log10(Math.max(ratio, 1e-30));
    }
}
