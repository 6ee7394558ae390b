package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SpeedProfileTest {
    private static final SpeedProfile THREE_DWELLS = SpeedProfile.startingAt(25)
            .thenDwell(8)
            .thenRampTo(40, 5)
            .thenDwell(10)
            .thenRampTo(33, 4)
            .thenDwell(6);

    @Test
    void aSteadyEngineTurnsSpeedTimesTime() {
        assertThat(SpeedProfile.steady(33, 30).revolutionsAt(12.5)).isEqualTo(33 * 12.5);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void revolutionsAreTheSpeedAddedUp(long seed) {
        SpeedProfile wandering = THREE_DWELLS.wandering(0.01, seed);
        double sum = 0;
        double step = 1e-3;
        for (int i = 0; i < 33_000; i++) {
            sum += wandering.propellerHzAt((i + 0.5) * step) * step;
        }
        // The midpoint rule errs by step²/24 times the change of slope: below 1e-6 revolutions here.
        assertThat(wandering.revolutionsAt(33)).isCloseTo(sum, within(1e-5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.002, 0.01, 0.03})
    void wanderReachesTheShareAskedForAndNoMore(double share) {
        SpeedProfile wandering = SpeedProfile.steady(30, 40).wandering(share, 7);
        double most = 0;
        for (int i = 0; i <= 40_000; i++) {
            most = Math.max(most, Math.abs(wandering.propellerHzAt(i * 1e-3) / 30 - 1));
        }
        assertThat(most).isCloseTo(share, within(0.002 * share));
    }

    @Test
    void theTimeOfARevolutionIsFound() {
        SpeedProfile wandering = THREE_DWELLS.wandering(0.01, 3);
        for (int turn = 0; turn < 1000; turn += 37) {
            assertThat(wandering.revolutionsAt(wandering.timeOfRevolution(turn)))
                    .isCloseTo(turn, within(1e-7));
        }
    }

    @Test
    void dwellsAreTheLevelStretches() {
        assertThat(THREE_DWELLS.dwells())
                .extracting(SpeedProfile.Stretch::fromHz)
                .containsExactly(25.0, 40.0, 33.0);
        assertThat(THREE_DWELLS.durationS()).isEqualTo(33);
    }
}
