package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.measure.speed.RatioTrial;
import evenblade.measure.speed.RatioTrial.Entered;
import evenblade.measure.speed.RatioTrial.Visible;
import org.junit.jupiter.api.Test;

/** A three-blade propeller behind 2.43 and a four-stroke four, invented; what was entered may be wrong. */
class RatioCheckTest {
    private static final int GEARED = 0;

    private static RatioTrial trial(double enteredRatio, boolean byTeeth, Entered entered) {
        return RatioTrial.of(GEARED, enteredRatio, byTeeth, entered, Visible.BOTH, 30, 0.003, 15, 704);
    }

    @Test
    void aRightRatioIsLeftAlone() {
        for (Entered entered : Entered.values()) {
            assertThat(trial(2.43, false, entered).doubt()).isEmpty();
        }
        assertThat(trial(2.43, true, Entered.ENGINE).doubt()).isEmpty();
    }

    @Test
    void aWrongRatioIsNotConfirmedWhicheverSpeedWasEntered() {
        for (Entered entered : Entered.values()) {
            assertThat(trial(2.27, false, entered).confirmed()).isFalse();
        }
    }

    @Test
    void withTheEnginesSpeedEnteredTheRightRatioIsNamed() {
        assertThat(trial(2.27, false, Entered.ENGINE).told().orElseThrow()).isCloseTo(2.43, within(0.0243));
    }

    @Test
    void aRatioUpsideDownIsNotConfirmedAndTurnedOver() {
        RatioTrial trial = RatioTrial.of(GEARED, 1 / 2.43, false, Entered.NOTHING, Visible.BOTH, 30, 0.01, 20, 705);
        assertThat(trial.confirmed()).isFalse();
        assertThat(trial.told().orElseThrow()).isCloseTo(2.43, within(0.0243));
    }
}
