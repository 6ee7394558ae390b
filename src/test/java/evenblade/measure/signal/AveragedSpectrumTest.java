package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.offset;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Series;
import evenblade.measure.signal.AveragedSpectrum.Detrend;
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
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class AveragedSpectrumTest {
    // SciPy 1.10.1 signal.welch; the script that made the files lies beside them
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9})
    void agreesWithSciPysWelch(int number) throws IOException {
        List<String> lines = lines("case-" + number + ".txt");
        String[] settings = lines.get(1).substring(2).split(" ");
        double[] samples = lines("signal-" + settings[0] + ".txt").stream()
                .mapToDouble(Double::parseDouble)
                .toArray();
        double rateHz = Double.parseDouble(settings[1]);
        int segment = Integer.parseInt(settings[3]);
        int overlap = Integer.parseInt(settings[4]);
        Window window = Window.valueOf(settings[2]);
        Detrend detrend = Detrend.valueOf(settings[5]);

        Spectrum density = new AveragedSpectrum(segment, overlap, window, detrend, Scaling.DENSITY).of(samples, rateHz);
        Spectrum amplitude =
                new AveragedSpectrum(segment, overlap, window, detrend, Scaling.AMPLITUDE).of(samples, rateHz);

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

    @ParameterizedTest
    @EnumSource
    void aSineInTheMiddleOfABinReadsItsPeakAndHalfABinOffTheWindowsLargestError(Window window) {
        int n = 4096;
        AveragedSpectrum spectrum = new AveragedSpectrum(n, 0, window, Detrend.NONE, Scaling.AMPLITUDE);

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
        // the rectangular and the Hamming window have twins whose side lobes fall off slowest; 1e-3 dB is 0.01 %.
        // Where the largest errors up and down are nearly alike, either may be met first: hence without sign
        double tolerance = window == Window.RECTANGULAR ? 0.02 : window == Window.HAMMING ? 1e-3 : 2e-4;
        assertThat(Math.abs(worst)).isCloseTo(Math.abs(window.maxErrorDb()), within(tolerance));
    }

    @Test
    void aConstantReadsAsItselfAtZeroHertzAndIsGoneWithItsMean() {
        double[] constant = new double[64];
        Arrays.fill(constant, -3);

        assertThat(new AveragedSpectrum(64, 0, Window.HANN, Detrend.NONE, Scaling.AMPLITUDE)
                        .of(constant, 8)
                        .at(0))
                .isCloseTo(3, within(1e-12));
        assertThat(new AveragedSpectrum(64, 0, Window.HANN, Detrend.CONSTANT, Scaling.AMPLITUDE)
                        .of(constant, 8)
                        .at(0))
                .isZero();
    }

    @ParameterizedTest
    @CsvSource({"1024, 5", "999, 6", "16, 7", "7, 8"})
    void densitySumsToTheMeanSquare(int length, long seed) {
        double[] x = new Random(seed).doubles(length, -1, 2).toArray();
        double meanSquare = Arrays.stream(x).map(v -> v * v).average().orElseThrow();

        Spectrum density =
                new AveragedSpectrum(length, 0, Window.RECTANGULAR, Detrend.NONE, Scaling.DENSITY).of(x, 250);

        // balance of energy (Parseval), exact for a rectangular window and one stretch
        assertThat(Arrays.stream(density.values().toArray()).sum() * density.binHz())
                .isCloseTo(meanSquare, within(1e-12 * meanSquare));
    }

    @ParameterizedTest
    @EnumSource
    void densityOfWhiteNoiseIsItsVarianceOverTheBand(Window window) {
        Random random = new Random(11);
        double[] noise = new double[200_000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = 0.3 * random.nextGaussian();
        }
        Spectrum density = new AveragedSpectrum(500, 375, window, Detrend.CONSTANT, Scaling.DENSITY).of(noise, 1000);

        double mean = Arrays.stream(density.values().toArray())
                .skip(10)
                .limit(230)
                .average()
                .orElseThrow();
        // 0.09 over 500 Hz; 200,000 samples scatter by some 0.4 %
        assertThat(mean).isCloseTo(0.09 / 500, within(0.015 * 0.09 / 500));
        assertThat(density.noiseBandwidthHz()).isCloseTo(2 * window.noiseBandwidthBins(), within(1e-9));
    }

    @Test
    void aSignalShorterThanAStretchIsOneStretch() {
        Spectrum spectrum = AveragedSpectrum.hann(10, 100, Scaling.AMPLITUDE).of(sine(1, 0.25, 80), 100);

        assertThat(spectrum.segments()).isEqualTo(1);
        assertThat(spectrum.binHz()).isEqualTo(1.25);
        assertThat(spectrum.at(25)).isCloseTo(1, within(1e-9));
    }

    @Test
    void theReferenceShakersTenMetresPerSecondSquaredAreTenMillimetresPerSecondAndTenMicrometres() {
        // 159.15 Hz is 1000 rad/s: 10 m/s² = 10 mm/s = 10 µm; exact by definition
        double hz = 1000 / (2 * Math.PI);
        Spectrum acceleration = new AveragedSpectrum(
                        1000, 0, Window.FLAT_TOP_HFT95, Detrend.CONSTANT, Scaling.AMPLITUDE)
                .of(sine(10, 0.1, 1000), hz * 10);
        Spectrum velocity = acceleration.integrated(5);
        Spectrum displacement = velocity.integrated(5);

        assertThat(acceleration.at(hz)).isCloseTo(10, within(1e-6));
        assertThat(velocity.at(hz)).isCloseTo(10e-3, within(1e-9));
        assertThat(displacement.at(hz)).isCloseTo(10e-6, within(1e-12));
    }

    @Test
    void integratedDensityIsThatOfTheIntegratedSignalAndStartsAtTheCut() {
        int n = 2000;
        double rate = 500;
        double omega = 2 * Math.PI * 20;
        double[] a = new double[n];
        double[] v = new double[n];
        for (int i = 0; i < n; i++) {
            a[i] = 4 * Math.cos(omega * i / rate);
            v[i] = 4 / omega * Math.sin(omega * i / rate);
        }
        AveragedSpectrum welch = new AveragedSpectrum(500, 250, Window.HANN, Detrend.NONE, Scaling.DENSITY);

        Spectrum integrated = welch.of(a, rate).integrated(2.5);

        assertThat(integrated.frequenciesHz().at(0)).isEqualTo(3);
        assertThat(integrated.at(20)).isCloseTo(welch.of(v, rate).at(20), offset(1e-12));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> integrated.integrated(0))
                .withMessageContaining("above 0");
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
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new AveragedSpectrum(10, 10, Window.HANN, Detrend.NONE, Scaling.DENSITY));
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
