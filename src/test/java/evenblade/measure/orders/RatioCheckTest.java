package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.WarningCode;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.RatioTrial;
import evenblade.measure.speed.RatioTrial.Entered;
import evenblade.measure.speed.RatioTrial.Visible;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
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
    void withTheEnginesSpeedEnteredThePropellersLinesPointToTheRightRatio() {
        RatioTrial trial = trial(2.27, false, Entered.ENGINE);
        assertThat(trial.named()).isTrue();
        RatioDoubt doubt = trial.doubt().orElseThrow();
        assertThat(doubt.kept()).isEqualTo(Shaft.CRANK);
        assertThat(doubt.lines()).contains("propeller 1×", "blade pass");
        assertThat(doubt.warning().code()).isEqualTo(WarningCode.RATIO_DOUBTFUL);
        assertThat(Phrases.of(Face.COMMAND_LINE).text(doubt.warning()))
                .startsWith("the lines point to a reduction ratio near 2.4")
                .contains("not 2.270 as entered", "none where the entered ratio puts them");
    }

    @Test
    void withThePropellersSpeedEnteredTheEnginesLinesDo() {
        RatioTrial trial = trial(2.27, false, Entered.PROPELLER);
        assertThat(trial.named()).isTrue();
        assertThat(trial.doubt().orElseThrow().kept()).isEqualTo(Shaft.PROPELLER);
    }

    @Test
    void wrongTeethAreDoubtedToo() {
        assertThat(trial(50.0 / 21, true, Entered.ENGINE).named()).isTrue();
    }

    @Test
    void aRatioUpsideDownIsCalledSo() {
        RatioDoubt doubt = RatioTrial.of(GEARED, 1 / 2.43, false, Entered.PROPELLER, Visible.BOTH, 30, 0.01, 20, 705)
                .doubt()
                .orElseThrow();
        assertThat(doubt.upsideDown()).isTrue();
        assertThat(Phrases.of(Face.COMMAND_LINE).text(doubt.warning())).contains("(the entered one upside down)");
    }
}
