package evenblade.measure.soundcheck;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LevelAimTest {
    /** Own limits: between -20 and -6 dB there is room for a louder moment and noise doesn't count. */
    @ParameterizedTest
    @CsvSource({
        "0, TURN_DOWN",
        "-5.9, TURN_DOWN",
        "-6, GOOD",
        "-20, GOOD",
        "-20.1, TURN_UP",
        "-89, TURN_UP",
        "-90, SILENT",
        "-120, SILENT"
    })
    void theHighestPeakTellsWhatToDo(double peakDb, LevelAim aim) {
        assertThat(LevelAim.of(peakDb, false)).isEqualTo(aim);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, -10, -30})
    void flatTopsBelowFullScaleAreNoMatterOfTheGainHoweverHighTheyAre(double peakDb) {
        assertThat(LevelAim.of(peakDb, true)).isEqualTo(LevelAim.OVERDRIVEN);
    }
}
