package evenblade.input.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QualityMeterTest {
    private static final double QUANTUM_16 = 1.0 / 32768;
    private static final int RATE = 48_000;

    private static float[] signal(int frames, IntToDoubleFunction sample) {
        float[] samples = new float[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = (float) (Math.rint(sample.applyAsDouble(i) / QUANTUM_16) * QUANTUM_16);
        }
        return samples;
    }

    private static ChannelQuality measure(float[] samples, int block) {
        QualityMeter meter = new QualityMeter("x", QUANTUM_16, 3);
        for (int from = 0; from < samples.length; from += block) {
            int count = Math.min(block, samples.length - from);
            meter.add(java.util.Arrays.copyOfRange(samples, from, from + count), 0, 1, count);
        }
        return meter.quality(1, 0);
    }

    @ParameterizedTest
    @CsvSource({
        "33.7, 0.9",
        "100, 0.5",
        "250, 0.99",
        "300, 0.7",
        "333.3, 0.3",
        "400, 0.5",
        "500, 0.5",
        "720, 0.5",
        "1000, 0.8",
        "12000, 0.5",
        "35, 0.003",
        "35, 0.0005",
        "90, 0.01",
        "3000.1, 0.6"
    })
    void aCleanSineIsNotClippedAtAnyPitchOrLevel(double hertz, double amplitude) {
        for (double phase : new double[] {0, 0.3, Math.PI / 4}) {
            float[] sine = signal(5 * RATE, i -> amplitude * Math.sin(2 * Math.PI * hertz * i / RATE + phase));
            assertThat(measure(sine, 4096).clippedShare()).isZero();
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.99, 0.95, 0.8, 0.5})
    void aSineCutAtALevelIsClippedForTheShareOfTimeItWouldBeAbove(double level) {
        float[] cut = signal(5 * RATE, i -> Math.max(-level, Math.min(level, Math.sin(2 * Math.PI * 33.7 * i / RATE))));
        double above = 2 * Math.acos(level) / Math.PI;
        assertThat(measure(cut, 4096).clippedShare()).isCloseTo(above, within(0.02));
        assertThat(measure(cut, 4096).clippedShare()).isPositive();
    }

    @Test
    void noiseIsNotClippedAndCutNoiseIs() {
        Random random = new Random(5);
        double[] low = {0};
        // Noise of an engine's kind: low-passed, so that peaks last several samples.
        float[] noise = signal(10 * RATE, i -> {
            low[0] = 0.99 * low[0] + 0.01 * random.nextGaussian();
            return low[0];
        });
        assertThat(measure(noise, 4096).clippedShare()).isZero();
        float peak = (float) measure(noise, 4096).peak();
        float[] cut = noise.clone();
        int cutSamples = 0;
        for (int i = 0; i < cut.length; i++) {
            if (Math.abs(cut[i]) > 0.6f * peak) {
                cut[i] = Math.signum(cut[i]) * 0.6f * peak;
                cutSamples++;
            }
        }
        assertThat(measure(cut, 4096).clippedShare())
                .isCloseTo((double) cutSamples / cut.length, within(0.3 * cutSamples / cut.length));
    }

    @ParameterizedTest
    @CsvSource({"48000, 3", "16000, 3", "2000, 2", "416, 2"})
    void noiseOnAClippedPeakDoesNotHideTheClipping(int rate, int run) {
        Random random = new Random(7);
        int cutSamples = 0;
        float[] samples = new float[60 * rate];
        for (int i = 0; i < samples.length; i++) {
            double turn = 2 * Math.PI * 33.7 * i / rate;
            double value = 0.25 * Math.sin(turn) + 0.1 * Math.sin(3 * turn + 1) + 0.02 * random.nextGaussian();
            samples[i] = (float) Math.max(-0.3, Math.min(0.3, value));
            cutSamples += Math.abs(value) > 0.3 ? 1 : 0;
        }
        QualityMeter meter = new QualityMeter("x", QUANTUM_16, run);
        meter.add(samples, 0, 1, samples.length);
        double share = (double) cutSamples / samples.length;
        assertThat(share).isBetween(0.02, 0.1);
        assertThat(meter.quality(1, 0).clippedShare()).isCloseTo(share, within(0.1 * share));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3})
    void aNoisySignalThatIsNotCutIsNotCalledClipped(int run) {
        for (long seed = 0; seed < 60; seed++) {
            Random random = new Random(seed);
            double noise = 0.3 * random.nextDouble();
            double step = 0.01 + random.nextDouble();
            float[] samples = signal(
                    12_000,
                    i -> 0.2 * Math.sin(step * i) + 0.1 * Math.sin(2.43 * step * i) + noise * random.nextGaussian());
            QualityMeter meter = new QualityMeter("x", QUANTUM_16, run);
            meter.add(samples, 0, 1, samples.length);
            assertThat(meter.quality(1, 0).clippedShare()).as("seed %d", seed).isLessThan(1e-5);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 100, 1000, 4096, 100_000})
    void theBlockSizeChangesNothing(int block) {
        Random random = new Random(11);
        float[] samples = signal(
                60_000,
                i -> Math.min(0.5, 0.3 * Math.sin(i / 97.0) + 0.2 * Math.sin(i / 41.0) + 0.01 * random.nextGaussian()));
        java.util.Arrays.fill(samples, 30_000, 30_777, 0.1234f);
        ChannelQuality whole = measure(samples, samples.length);
        ChannelQuality parts = measure(samples, block);
        assertThat(parts.longestStuckRun()).isEqualTo(whole.longestStuckRun()).isGreaterThanOrEqualTo(777);
        assertThat(parts.peak()).isEqualTo(whole.peak());
        assertThat(parts.mean()).isCloseTo(whole.mean(), within(1e-12));
        assertThat(parts.rms()).isCloseTo(whole.rms(), within(1e-9));
        assertThat(parts.clippedShare()).isCloseTo(whole.clippedShare(), within(2e-3));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theLongestStuckRunIsFoundWhereverItLies(long seed) {
        Random random = new Random(seed);
        float[] samples = new float[5000];
        for (int i = 0; i < samples.length; ) {
            float value = random.nextInt(3);
            for (int n = 1 + random.nextInt(random.nextInt(40) + 1); n > 0 && i < samples.length; n--) {
                samples[i++] = value;
            }
        }
        int longest = 0;
        int run = 0;
        for (int i = 0; i < samples.length; i++) {
            run = i > 0 && samples[i] == samples[i - 1] ? run + 1 : 1;
            longest = Math.max(longest, run);
        }
        for (int block : new int[] {1, 3, 64, 5000}) {
            assertThat(measure(samples, block).longestStuckRun()).isEqualTo(longest >= 8 ? longest : 1);
        }
    }

    @Test
    void scaleAndOffsetComeBackInTheUnit() {
        float[] sine = signal(RATE, i -> 0.5 * Math.sin(2 * Math.PI * 50 * i / RATE));
        QualityMeter meter = new QualityMeter("x", 0, 3);
        meter.add(sine, 0, 1, sine.length);
        ChannelQuality quality = meter.quality(10, 9.81);
        assertThat(quality.mean()).isCloseTo(9.81, within(1e-3));
        assertThat(quality.peak()).isCloseTo(14.81, within(1e-3));
        assertThat(quality.rms()).isCloseTo(5 / Math.sqrt(2), within(1e-3));
    }

    @Test
    void anEmptyOrConstantChannelIsConstant() {
        QualityMeter meter = new QualityMeter("x", 0, 3);
        assertThat(meter.constant()).isTrue();
        meter.add(new float[] {2, 2, 2}, 0, 1, 3);
        assertThat(meter.constant()).isTrue();
        assertThat(meter.quality(1, 0).longestStuckRun()).isEqualTo(1);
        meter.add(new float[] {2.5f}, 0, 1, 1);
        assertThat(meter.constant()).isFalse();
    }
}
