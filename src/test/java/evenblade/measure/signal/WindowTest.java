package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class WindowTest {
    // Harris 1978, Proc. IEEE 66(1):51, and Heinzel, Ruediger & Schilling 2002, "Spectrum and spectral density
    // estimation by the DFT": the values of their tables, computed anew from the definition for N -> infinity
    // with one more digit; coefficients read in public restatements of both.
    @ParameterizedTest
    @CsvSource({
        "RECTANGULAR, 1.0000, 0.8845, -3.9224, -13.3",
        "HANN, 1.5000, 1.4382, -1.4236, -31.5",
        "HAMMING, 1.3628, 1.3008, -1.7514, -42.7",
        "BLACKMAN_HARRIS_4, 2.0044, 1.8962, -0.8256, -92.0",
        "NUTTALL_4C, 1.9761, 1.8687, -0.8506, -98.2",
        "FLAT_TOP_SFT3F, 3.1681, 3.1503, 0.0082, -31.7",
        "FLAT_TOP_HFT70, 3.4129, 3.3721, 0.0065, -70.5",
        "FLAT_TOP_HFT95, 3.8112, 3.7592, 0.0044, -95.0",
        "FLAT_TOP_HFT90D, 3.8832, 3.8321, 0.0039, -90.2",
        "FLAT_TOP_HFT116D, 4.2186, 4.1579, 0.0028, -116.8",
        "FLAT_TOP_HFT144D, 4.5386, 4.4698, 0.0021, -144.0"
    })
    void hasThePublishedFiguresOfMerit(Window window, double nenbw, double width, double error, double sideLobe) {
        assertThat(window.noiseBandwidthBins()).isCloseTo(nenbw, within(0.6e-4));
        assertThat(window.threeDecibelBandwidthBins()).isCloseTo(width, within(0.6e-4));
        assertThat(window.maxErrorDb()).isCloseTo(error, within(0.6e-4));
        assertThat(window.peakSideLobeDb()).isCloseTo(sideLobe, within(0.11));
    }

    @ParameterizedTest
    @EnumSource
    void aLongSampledWindowHasTheMeanAndTheNoiseBandwidthOfTheFormula(Window window) {
        double[] w = window.values(4096, Window.Form.PERIODIC);
        double mean = Arrays.stream(w).average().orElseThrow();
        double square = Arrays.stream(w).map(v -> v * v).average().orElseThrow();

        assertThat(mean).isCloseTo(window.coherentGain(), within(1e-12));
        assertThat(square / (mean * mean)).isCloseTo(window.noiseBandwidthBins(), within(1e-12));
    }

    @ParameterizedTest
    @EnumSource
    void theSymmetricFormReadsTheSameBackwardsAndThePeriodicFormIsItsStart(Window window) {
        double[] symmetric = window.values(65, Window.Form.SYMMETRIC);
        double[] periodic = window.values(64, Window.Form.PERIODIC);

        for (int i = 0; i < 64; i++) {
            assertThat(symmetric[i]).isCloseTo(symmetric[64 - i], within(1e-12));
            assertThat(periodic[i]).isCloseTo(symmetric[i], within(1e-12));
        }
    }

    @Test
    void hannOfFourIsTheTextbooksOwn() {
        assertThat(Window.HANN.values(4, Window.Form.PERIODIC))
                .usingComparatorWithPrecision(1e-15)
                .containsExactly(0, .5, 1, .5);
        assertThat(Window.HANN.values(5, Window.Form.SYMMETRIC))
                .usingComparatorWithPrecision(1e-15)
                .containsExactly(0, .5, 1, .5, 0);
        assertThat(Window.HANN.values(1, Window.Form.SYMMETRIC)).containsExactly(1);
        assertThatIllegalArgumentException().isThrownBy(() -> Window.HANN.values(0, Window.Form.PERIODIC));
    }
}
