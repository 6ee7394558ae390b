package evenblade.measure.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FoldedLinesTest {
    /** Sampled at 100 Hz, cos 2π·f·t reads as the line below 50 Hz that agrees at every sample: |f − 100·n|. */
    @ParameterizedTest
    @CsvSource({"30, 30", "50, 50", "70, 30", "100, 0", "130, 30", "149, 49", "151, 49", "199, 1", "260, 40"})
    void aLineAppearsAtItsDistanceFromTheNearestMultipleOfTheRate(double hz, double at) {
        assertThat(FoldedLines.appearsAtHz(hz, 100)).isCloseTo(at, within(1e-9));
        for (int i = 0; i < 20; i++) {
            double t = i / 100.0;
            assertThat(Math.cos(2 * Math.PI * FoldedLines.appearsAtHz(hz, 100) * t))
                    .isCloseTo(Math.cos(2 * Math.PI * hz * t), within(1e-9));
        }
    }
}
