package evenblade.measure.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.FileHash;
import evenblade.input.recording.Recording;
import evenblade.input.recording.StreamHeader;
import evenblade.input.recording.StreamSummary;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecimatorTest {
    /** Kept samples near an end whose filter may reach past it: far more than the longest one. */
    private static final int EDGE = 80;

    @ParameterizedTest
    @CsvSource({
        "48000, 1000",
        "48000, 500",
        "44100, 1000",
        "96000, 2000",
        "192000, 1000",
        "8000, 1000",
        "22050, 333",
        "11025, 77"
    })
    void keepsTheBandWithin_0_45OfTheNewRate(double fromHz, double keepHz) {
        Decimator decimator = Decimator.plan(fromHz, keepHz, 1, 0);

        assertThat(keepHz).isLessThanOrEqualTo(0.45 * decimator.rateHz() * (1 + 1e-12));
        assertThat(decimator.rateHz()).isEqualTo(fromHz / decimator.factor());
        assertThat(decimator.rateHz()).as("not much higher than needed").isLessThan(1.5 * keepHz / 0.45);
    }

    @Test
    void leavesALowRateAlone() {
        float[] samples = noise(1000, 1);
        Recording kept = reduce(416, 1000, 1, samples, 1, new int[] {0}, 100);

        assertThat(kept.time().rateHz()).isEqualTo(416);
        assertThat(kept.time().size()).isEqualTo(1000);
        assertThat(kept.channels().get(0).values().at(123)).isEqualTo(samples[123]);
    }

    @ParameterizedTest
    @CsvSource({"48000, 1000", "44100, 1000", "96000, 450", "22050, 333", "192000, 1000", "1000, 100", "4800, 1080"})
    void aKeptToneHasItsAmplitudeAndItsPhase(double fromHz, double keepHz) {
        for (double share : new double[] {0.001, 0.03, 0.31, 0.77, 1.0}) {
            double hz = share * keepHz;
            DoubleUnaryOperator tone = t -> Math.cos(2 * Math.PI * hz * t + 0.7);
            Recording kept = reduce(fromHz, keepHz, 1, sampled(tone, fromHz, fromHz), 1, new int[] {0}, 1024);

            double worst = 0;
            for (int n = EDGE; n < kept.time().size() - EDGE; n++) {
                double expected = tone.applyAsDouble(kept.time().at(n));
                worst = Math.max(worst, Math.abs(kept.channels().get(0).values().at(n) - expected));
            }
            // 0.005 dB of amplitude is 5.76e-4; any shift in time would show as a far larger difference
            assertThat(worst).as("%s Hz kept from %s Hz", hz, fromHz).isLessThan(5.7e-4);
        }
    }

    @ParameterizedTest
    @CsvSource({"48000, 1000", "44100, 1000", "96000, 450", "22050, 333"})
    void whatWouldFoldIntoTheBandIsHeldBackBy80Decibel(double fromHz, double keepHz) {
        Decimator decimator = Decimator.plan(fromHz, keepHz, 1, 0);
        double newHz = decimator.rateHz();
        Random random = new Random(7);
        for (int k = 1; k <= decimator.factor() / 2; k++) {
            for (double offset :
                    new double[] {-keepHz, keepHz, 0.011 * keepHz, (2 * random.nextDouble() - 1) * keepHz}) {
                double hz = k * newHz + offset;
                if (hz < fromHz / 2) {
                    float[] tone = sampled(t -> Math.sin(2 * Math.PI * hz * t + 0.3), fromHz, fromHz / 2);
                    Recording kept = reduce(fromHz, keepHz, 1, tone, 1, new int[] {0}, 4096);
                    double worst = 0;
                    for (int n = EDGE; n < kept.time().size() - EDGE; n++) {
                        worst = Math.max(
                                worst, Math.abs(kept.channels().get(0).values().at(n)));
                    }
                    assertThat(worst).as("%s Hz", hz).isLessThan(1e-4);
                }
            }
        }
    }

    @Test
    void aConstantStaysAConstantUpToBothEnds() {
        Recording kept = reduce(48000, 1000, 1, sampled(t -> 0.25, 48000, 48000), 1, new int[] {0}, 777);

        assertThat(DoubleStream.of(kept.channels().get(0).values().toArray())).allMatch(v -> Math.abs(v - 0.25) < 1e-6);
    }

    @Test
    void theSizeOfTheBlocksChangesNothing() {
        float[] samples = noise(50_001, 3);
        double[] whole = values(reduce(48000, 1000, 1, samples, 1, new int[] {0}, 50_001), 0);

        for (int block : new int[] {1, 7, 480, 4096, 33_333}) {
            assertThat(values(reduce(48000, 1000, 1, samples, 1, new int[] {0}, block), 0))
                    .isEqualTo(whole);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 19, 20, 21, 47, 400, 401, 1999, 10_239, 10_240, 10_241, 20_500, 40_960, 43_000})
    void anyLengthGivesOneSamplePerFactorStartedAndEqualsTheDirectSum(int frames) {
        float[] samples = noise(frames, frames);
        DecimationPlan plan = DecimationPlan.cheapest(48000, 1000);

        double[] kept = values(reduce(48000, 1000, 1, samples, 1, new int[] {0}, 1000), 0);

        double[] expected = new double[frames];
        for (int i = 0; i < frames; i++) {
            expected[i] = samples[i];
        }
        for (int s = 0; s < plan.factors().size(); s++) {
            expected = direct(expected, plan.taps(s), plan.factors().get(s));
        }
        assertThat(kept).hasSize((frames + plan.factor() - 1) / plan.factor());
        // single precision: rounding of some 200 products of size up to 1
        assertThat(kept).usingComparatorWithPrecision(1e-6).containsExactly(expected);
    }

    @Test
    void takesTheWantedChannelsOfManyAndScalesThemToTheUnit() {
        double[] hz = {40, 100, 160};
        float[] samples = new float[3 * 48000];
        for (int n = 0; n < 48000; n++) {
            for (int c = 0; c < 3; c++) {
                samples[3 * n + c] = (float) Math.cos(2 * Math.PI * hz[c] * n / 48000.0);
            }
        }
        Recording kept = reduce(48000, 1000, 50, samples, 3, new int[] {2, 0}, 1024);

        assertThat(kept.channels()).extracting("name").containsExactly("channel 3", "channel 1");
        assertThat(kept.quality()).extracting("channel").containsExactly("channel 3", "channel 1");
        assertThat(kept.source().channels()).containsExactly("channel 1", "channel 2", "channel 3");
        assertThat(kept.source().durationS()).isEqualTo(1);
        assertThat(kept.source().sampleRateHz()).isEqualTo(48000);
        double t = kept.time().at(1000);
        assertThat(kept.channels().get(0).values().at(1000))
                .isCloseTo(50 * Math.cos(2 * Math.PI * 160 * t), within(0.03));
        assertThat(kept.channels().get(1).values().at(1000))
                .isCloseTo(50 * Math.cos(2 * Math.PI * 40 * t), within(0.03));
    }

    @Test
    void noSoundAtAllIsAnEmptyRecording() {
        assertThat(reduce(48000, 1000, 1, new float[0], 1, new int[] {0}, 10)
                        .time()
                        .size())
                .isZero();
    }

    @Test
    void refusesAChannelThatIsNotThere() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Decimator.plan(48000, 1000, 2, 2))
                .withMessageContaining("no channel 2 among 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Decimator.plan(0, 1000, 2, 1))
                .withMessageContaining("above 0");
    }

    /** The definition: mirrored about both ends, filter centred on every factor-th input. */
    private static double[] direct(double[] x, double[] taps, int factor) {
        int half = taps.length / 2;
        double[] y = new double[(x.length + factor - 1) / factor];
        for (int n = 0; n < y.length; n++) {
            for (int k = -half; k <= half; k++) {
                int i = n * factor + k;
                while (x.length > 1 && (i < 0 || i >= x.length)) {
                    i = i < 0 ? -i : 2 * (x.length - 1) - i;
                }
                y[n] += taps[k + half] * x[x.length == 1 ? 0 : i];
            }
        }
        return y;
    }

    private static double[] values(Recording recording, int channel) {
        return recording.channels().get(channel).values().toArray();
    }

    private static float[] sampled(DoubleUnaryOperator signal, double rateHz, double count) {
        float[] samples = new float[(int) count];
        for (int n = 0; n < samples.length; n++) {
            samples[n] = (float) signal.applyAsDouble(n / rateHz);
        }
        return samples;
    }

    private static float[] noise(int count, long seed) {
        Random random = new Random(seed);
        float[] samples = new float[count];
        for (int i = 0; i < count; i++) {
            samples[i] = 2 * random.nextFloat() - 1;
        }
        return samples;
    }

    private static Recording reduce(
            double fromHz,
            double keepHz,
            double fullScale,
            float[] interleaved,
            int channels,
            int[] wanted,
            int block) {
        Decimator decimator = Decimator.plan(fromHz, keepHz, channels, wanted);
        int frames = interleaved.length / channels;
        float[] reused = new float[block * channels];
        for (int at = 0; at < frames; at += block) {
            int part = Math.min(block, frames - at);
            System.arraycopy(interleaved, at * channels, reused, 0, part * channels);
            decimator.accept(reused, part);
        }
        List<String> names = new ArrayList<>();
        List<ChannelQuality> quality = new ArrayList<>();
        for (int c = 1; c <= channels; c++) {
            names.add("channel " + c);
            quality.add(new ChannelQuality("channel " + c, 0, 0, 1, 0, 0.7));
        }
        return decimator.recording(
                new StreamHeader(
                        Path.of("invented.wav"),
                        "wav",
                        false,
                        fromHz,
                        16,
                        OptionalLong.empty(),
                        names,
                        SignalUnit.METRE_PER_SECOND_SQUARED,
                        fullScale),
                new StreamSummary(FileHash.of("00"), frames, quality, List.of()));
    }
}
