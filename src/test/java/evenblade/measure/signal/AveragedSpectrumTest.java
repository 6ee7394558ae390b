package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.measure.signal.Spectrum.Scaling;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AveragedSpectrumTest {
    // SciPy 1.10.1 signal.welch; the script that made the files lies beside them
    @ParameterizedTest
    @ValueSource(ints = {1, 5, 6, 9})
    void agreesWithSciPysWelch(int number) throws IOException {
        List<String> lines = lines("case-" + number + ".txt");
        String[] settings = lines.get(1).substring(2).split(" ");
        double[] samples = lines("signal-" + settings[0] + ".txt").stream()
                .mapToDouble(Double::parseDouble)
                .toArray();
        double rateHz = Double.parseDouble(settings[1]);
        int segment = Integer.parseInt(settings[3]);
        int overlap = Integer.parseInt(settings[4]);
        assertThat(settings[2] + " " + settings[5]).isEqualTo("HANN CONSTANT");

        Spectrum density = new AveragedSpectrum(segment, overlap, Scaling.DENSITY).of(samples, rateHz);
        Spectrum amplitude = new AveragedSpectrum(segment, overlap, Scaling.AMPLITUDE).of(samples, rateHz);

        assertThat(density.values().size()).isEqualTo(lines.size() - 2).isEqualTo(segment / 2 + 1);
        for (int k = 0; k < density.values().size(); k++) {
            String[] row = lines.get(k + 2).split(" ");
            double expectedDensity = Double.parseDouble(row[1]);
            double power = Double.parseDouble(row[2]);
            boolean edge = k == 0 || 2 * k == segment;
            assertThat(density.frequenciesHz().at(k)).isCloseTo(Double.parseDouble(row[0]), within(1e-9 * rateHz));
            assertThat(density.values().at(k)).isCloseTo(expectedDensity, within(1e-9 * expectedDensity));
            // SciPy's 'spectrum' is the mean square of a sine: half the square of its peak; a constant squared at 0 Hz
            double expectedPeak = Math.sqrt((edge ? 1 : 2) * power);
            assertThat(amplitude.values().at(k)).isCloseTo(expectedPeak, within(1e-9 * expectedPeak));
        }
    }

    // Harris 1978, Proc. IEEE 66(1):51, table 1: a Hann window loses 1.42 dB half a bin off; -1.4236 dB from the
    // definition
    @Test
    void aSineInTheMiddleOfABinReadsItsPeakAndHalfABinOffTheWindowsLargestError() {
        int n = 4096;
        AveragedSpectrum spectrum = new AveragedSpectrum(n, 0, Scaling.AMPLITUDE);

        double middle = spectrum.of(sine(2.5, 400.0 / n, n), 1).at(400.0 / n);
        double worst = 0;
        for (int i = 0; i <= 50; i++) {
            double off =
                    spectrum.of(sine(2.5, (400 + i / 100.0) / n, n), 1).values().at(400);
            double error = 20 * Math.log10(off / 2.5);
            worst = Math.abs(error) > Math.abs(worst) ? error : worst;
        }

        // side lobes of the twin at the negative frequency, 800 bins away, are what is left
        assertThat(middle).isCloseTo(2.5, within(1e-10));
        assertThat(worst).isCloseTo(-1.4236, within(2e-4));
    }

    @Test
    void aConstantIsGoneWithItsMean() {
        double[] constant = new double[64];
        Arrays.fill(constant, -3);

        assertThat(new AveragedSpectrum(64, 0, Scaling.AMPLITUDE)
                        .of(constant, 8)
                        .at(0))
                .isZero();
    }

    @Test
    void densityOfWhiteNoiseIsItsVarianceOverTheBand() {
        Random random = new Random(11);
        double[] noise = new double[200_000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = 0.3 * random.nextGaussian();
        }
        Spectrum density = new AveragedSpectrum(500, 375, Scaling.DENSITY).of(noise, 1000);

        double mean = Arrays.stream(density.values().toArray())
                .skip(10)
                .limit(230)
                .average()
                .orElseThrow();
        // 0.09 over 500 Hz; 200,000 samples scatter by some 0.4 %
        assertThat(mean).isCloseTo(0.09 / 500, within(0.015 * 0.09 / 500));
        // Harris 1978, table 1: the noise bandwidth of a Hann window is 1.5 bins, here of 2 Hz
        assertThat(density.noiseBandwidthHz()).isCloseTo(2 * 1.5, within(1e-9));
    }

    @Test
    void aSignalShorterThanAStretchIsOneStretch() {
        Spectrum spectrum = AveragedSpectrum.hann(10, 100, Scaling.AMPLITUDE).of(sine(1, 0.25, 80), 100);

        assertThat(spectrum.segments()).isEqualTo(1);
        assertThat(spectrum.binHz()).isEqualTo(1.25);
        assertThat(spectrum.at(25)).isCloseTo(1, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"4, 2400, 8192", "1, 2400, 2048", "1.3, 2400, 4096", "0.0001, 100, 2", "2, 416, 1024"})
    void theUsualStretchIsThePowerOfTwoNextToTheSecondsAskedFor(double seconds, double rateHz, int length) {
        AveragedSpectrum usual = AveragedSpectrum.hann(seconds, rateHz, Scaling.DENSITY);

        assertThat(usual.segmentLength()).isEqualTo(length);
        assertThat(usual.overlap()).isEqualTo(length / 2);
    }

    @Test
    void refusesAnOverlapThatDoesNotMoveOnAndNothingAtAll() {
        assertThatIllegalArgumentException().isThrownBy(() -> new AveragedSpectrum(10, 10, Scaling.DENSITY));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AveragedSpectrum.hann(1, 100, Scaling.DENSITY).of(Series.of(), 100));
    }

    private static double[] sine(double peak, double cyclesPerSample, int count) {
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            x[i] = peak * Math.sin(2 * Math.PI * cyclesPerSample * i + 0.6);
        }
        return x;
    }

    private static List<String> lines(String name) throws IOException {
        try (InputStream in = AveragedSpectrumTest.class.getResourceAsStream("/reference/welch/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
    }
}
