package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.bench.BladeNameLimit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How often a blade is named, by normal errors of the blocks, beside what chance allows at best. */
class BladeNamesSimulationTest {
    private static final int BLOCKS = 24;
    private static final int TRIALS = 4000;
    private static final double OUT = 3;

    /** Which blade is named; blade 0 stands so many standard errors out by strength. */
    private static Optional<Integer> named(Random random, int blades, double out) {
        // A mean of all blocks less the mean of the blades has the standard error 1.
        double each = Math.sqrt(BLOCKS * blades / (blades - 1.0));
        double[][] strength = new double[blades][BLOCKS];
        double[][] late = new double[blades][BLOCKS];
        for (int g = 0; g < BLOCKS; g++) {
            for (double[][] values : List.of(strength, late)) {
                double mean = 0;
                for (int b = 0; b < blades; b++) {
                    double odd = values == strength && b == 0 ? out * blades / (blades - 1) : 0;
                    values[b][g] = odd + each * random.nextGaussian();
                    mean += values[b][g] / blades;
                }
                for (int b = 0; b < blades; b++) {
                    values[b][g] -= mean;
                }
            }
        }
        List<BladeShares.Deviation> push = BladeShares.deviations(strength);
        List<BladeShares.Deviation> angle = BladeShares.deviations(late);
        List<BladeShares.Share> shares = new ArrayList<>();
        for (int b = 0; b < blades; b++) {
            shares.add(new BladeShares.Share((double) b / blades, push.get(b), angle.get(b)));
        }
        BladeShares all = new BladeShares(shares, BLOCKS);
        return all.standsOut(true).or(() -> all.standsOut(false));
    }

    @DisplayName(
            "At 3 standard errors a blade is named nearly as often as chance allows, and of equal ones one in twenty")
    @ParameterizedTest(name = "{0} blades")
    @ValueSource(ints = {3, 4, 5, 6})
    void nearWhatChanceAllows(int blades) {
        Random random = new Random(blades);
        int alike = 0;
        int right = 0;
        int wrong = 0;
        for (int t = 0; t < TRIALS; t++) {
            alike += named(random, blades, 0).isPresent() ? 1 : 0;
            Optional<Integer> odd = named(random, blades, OUT);
            right += odd.filter(b -> b == 0).isPresent() ? 1 : 0;
            wrong += odd.filter(b -> b != 0).isPresent() ? 1 : 0;
        }
        double attainable = BladeNameLimit.of(blades, 0.05).namedRight(OUT);
        System.out.printf(
                Locale.ROOT,
                "| %d | %.1f | %.1f | %.1f | %.1f |%n",
                blades,
                100.0 * alike / TRIALS,
                100.0 * right / TRIALS,
                100.0 * wrong / TRIALS,
                100 * attainable);
        // Standard errors: 0.35 % of a share of 5 %, 0.8 % of one of 60 %; three of them.
        assertThat(alike).isLessThanOrEqualTo((int) (0.061 * TRIALS));
        assertThat(wrong).isLessThanOrEqualTo((int) (0.061 * TRIALS));
        assertThat(right / (double) TRIALS).isGreaterThan(attainable - 0.09 - 0.024);
    }
}
