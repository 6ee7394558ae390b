package evenblade.measure.speed;

import static evenblade.measure.speed.HandMadeLines.waves;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import evenblade.machine.installation.OrderTable;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** The speed at the end of 0.9 s: three frames of 0.6 s, 0.15 s apart; the last from 0.3 to 0.9 s. */
class SpeedNowTest {
    private static final OrderTable GEARED = Machine.ALL.get(0).table();

    private static SpeedNow now(DoubleUnaryOperator turns, SpeedPrior prior) {
        Recording recording = HandMadeLines.noisy(
                900,
                0.9,
                0.1,
                t -> waves(
                        turns.applyAsDouble(t),
                        0.6,
                        1,
                        0,
                        1,
                        3,
                        1,
                        0.8,
                        6,
                        2,
                        0.6,
                        2.43,
                        1,
                        0.9,
                        4.86,
                        2,
                        0.9,
                        9.72,
                        0));
        return SpeedFinder.now(recording, recording.channels(), GEARED, prior).orElseThrow();
    }

    /** A tenth of the frame's resolution, 0.167 Hz, and what the speed changed since the frame before: nothing. */
    @Test
    void aSteadySpeedIsKnownToATenthOfAResolution() {
        SpeedNow now = now(t -> 30 * t, SpeedPrior.near(31, 20, 40));
        assertThat(now.fromS()).isCloseTo(0.3, within(1e-9));
        assertThat(now.toS()).isCloseTo(0.9, within(1e-9));
        assertThat(now.propellerHz()).isCloseTo(30, within(0.05));
        assertThat(now.plusMinusHz()).isCloseTo(0.1 / 0.6, within(0.03));
        assertThat(now.rivalShare()).isBetween(0.1, 0.7);
    }

    /** One hertz a second: 0.15 Hz from frame to frame. */
    @Test
    void aSpeedThatMovesIsKnownLessWell() {
        SpeedNow now = now(t -> 30 * t + 0.5 * t * t, SpeedPrior.near(31, 20, 40));
        assertThat(now.propellerHz()).isCloseTo(30.6, within(0.1));
        assertThat(now.plusMinusHz()).isCloseTo(0.1 / 0.6 + 0.15, within(0.06));
    }

    /** Twice firing at 40 Hz lies at 388.8 Hz, the highest that is looked at where the range ends there. */
    @Test
    void theHighestLineIsSeenUpToTheFastestSpeed() {
        double wide = now(t -> 40 * t, SpeedPrior.between(20, 44)).evidence();
        double narrow = now(t -> 40 * t, SpeedPrior.between(20, 40)).evidence();
        assertThat(narrow).isCloseTo(wide, within(0.05 * wide));
    }

    @Test
    void lessThanAFrameSaysNothing() {
        Recording recording = HandMadeLines.noisy(900, 0.5, 0.1, t -> 0);
        assertThat(SpeedFinder.now(recording, recording.channels(), GEARED, SpeedPrior.between(20, 40)))
                .isEmpty();
    }
}
