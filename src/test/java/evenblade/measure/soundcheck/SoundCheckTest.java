package evenblade.measure.soundcheck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.ChannelQuality;
import evenblade.input.recording.Series;
import evenblade.measure.soundcheck.GainCheck.HalfSecond;
import evenblade.measure.soundcheck.HumCheck.HumLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SoundCheckTest {
    private static final double RATE_HZ = 2400;

    private static ChannelQuality quality(String name, double peak, double rms, double clipped) {
        return new ChannelQuality(name, clipped, 1, peak, 0, rms);
    }

    private static List<String> codes(List<Warning> warnings) {
        return warnings.stream().map(warning -> warning.code().word()).toList();
    }

    private static double[] noise(double sigma, double seconds, long seed) {
        Random random = new Random(seed);
        double[] values = new double[(int) (seconds * RATE_HZ)];
        for (int i = 0; i < values.length; i++) {
            values[i] = sigma * random.nextGaussian();
        }
        return values;
    }

    private static Channel channel(String name, double... values) {
        return new Channel(name, SignalUnit.FULL_SCALE, Series.of(values));
    }

    private static double[] pulses(double hz, double seconds) {
        double[] values = noise(0.002, seconds, 9);
        for (int i = 0; i < values.length; i++) {
            values[i] += i / RATE_HZ * hz % 1 < 0.06 ? 0.8 : 0;
        }
        return values;
    }

    @Test
    void aGoodLevelRaisesNothing() {
        assertThat(LevelCheck.of(
                        List.of(quality("left", 0.4, 0.1, 0), quality("right", 0.2, 0.05, 0)), Optional.empty()))
                .isEmpty();
    }

    @Test
    void levelsTooHighTooLowAndDeadAreTold() {
        assertThat(codes(LevelCheck.of(
                        List.of(quality("a", 1.0, 0.3, 0.01), quality("b", 0.005, 0.001, 0), quality("c", 0, 0, 0)),
                        Optional.empty())))
                .containsExactly("level-too-high", "level-low", "channel-dead");
        assertThat(codes(LevelCheck.of(
                        List.of(quality("a", 0.5, 0.1, 0), quality("b", 0.0001, 0.00002, 0)), Optional.empty())))
                .as("74 dB under the other")
                .containsExactly("channel-dead");
    }

    @Test
    void flatTopsBelowFullScaleAreNoMatterOfTheSliderAndNaturalInAMark() {
        List<ChannelQuality> flat = List.of(quality("a", 0.6, 0.4, 0.01), quality("b", 0.6, 0.1, 0.06));

        assertThat(codes(LevelCheck.of(flat, Optional.of("b")))).containsExactly("overdriven-below-full-scale");
    }

    @Test
    void flatTopsHalfADecibelBelowFullScaleAreNoMatterOfTheSliderEither() {
        // -0.5 dB and -0.05 dB: the second is where a converter may end.
        assertThat(codes(LevelCheck.of(List.of(quality("a", 0.944, 0.4, 0.01)), Optional.empty())))
                .containsExactly("overdriven-below-full-scale");
        assertThat(codes(LevelCheck.of(List.of(quality("a", 0.994, 0.4, 0.01)), Optional.empty())))
                .containsExactly("level-too-high");
        assertThat(codes(LevelCheck.of(List.of(quality("a", 0.944, 0.4, 0)), Optional.empty())))
                .containsExactly("level-too-high");
    }

    @Test
    void oneSensorOnBothChannelsIsTold() {
        double[] left = noise(0.1, 5, 1);
        double[] right = left.clone();
        for (int i = 0; i < right.length; i++) {
            right[i] *= 0.7;
        }
        assertThat(codes(ChannelCheck.of(List.of(channel("left", left), channel("right", right)), Optional.empty())))
                .containsExactly("channels-alike");
        assertThat(ChannelCheck.of(
                        List.of(channel("left", left), channel("right", noise(0.1, 5, 2))), Optional.empty()))
                .isEmpty();
    }

    @Test
    void aMarkOnItsChannelIsFineOnAnotherItIsSwappedAndNowhereItIsMissing() {
        Channel vibration = channel("left", noise(0.1, 5, 1));
        Channel mark = channel("right", pulses(33, 5));

        assertThat(ChannelCheck.of(List.of(vibration, mark), Optional.of("right")))
                .isEmpty();
        assertThat(codes(ChannelCheck.of(List.of(vibration, mark), Optional.of("left"))))
                .containsExactly("channels-swapped");
        assertThat(codes(ChannelCheck.of(List.of(vibration), Optional.of("left"))))
                .containsExactly("mark-without-pulses");
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 60})
    void humIsFoundAtItsFrequenciesWithItsAmplitude(double mainsHz) {
        double[] quiet = noise(0.001, 5, 3);
        for (int i = 0; i < quiet.length; i++) {
            double t = i / RATE_HZ;
            quiet[i] += 0.004 * Math.sin(2 * Math.PI * mainsHz * t) + 0.002 * Math.sin(2 * Math.PI * 2 * mainsHz * t);
        }
        List<HumLine> lines = HumCheck.lines(Series.of(quiet), RATE_HZ);

        assertThat(lines.stream().map(HumLine::frequencyHz)).containsExactly(mainsHz, 2 * mainsHz);
        assertThat(lines.get(0).amplitude()).isCloseTo(0.004, within(0.0006));
    }

    @Test
    void noiseAloneDoesNotHum() {
        int falseAlarms = 0;
        for (int seed = 0; seed < 50; seed++) {
            falseAlarms +=
                    HumCheck.lines(Series.of(noise(0.001, 5, seed)), RATE_HZ).isEmpty() ? 0 : 1;
        }
        assertThat(falseAlarms).isZero();
    }

    @Test
    void aRunThatHardlyStandsOverTheQuietTakeIsTold() {
        Series quiet = Series.of(noise(0.01, 5, 4));

        assertThat(codes(HumCheck.of("left", quiet, RATE_HZ, 0.05))).containsExactly("little-over-quiet");
        assertThat(HumCheck.of("left", quiet, RATE_HZ, 0.5)).isEmpty();
    }

    /** A run from 20 to 35 Hz whose level rises by 15 dB per doubling, through a gain that takes a share of it back. */
    private static List<HalfSecond> ramp(double takenBack) {
        Random random = new Random(5);
        List<HalfSecond> moments = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double hz = 20 + 15 * i / 59.0;
            double loud = 15 * Math.log(hz / 20) / Math.log(2);
            double gain = -takenBack * loud;
            moments.add(new HalfSecond(
                    hz,
                    loud + gain + 0.5 * random.nextGaussian(),
                    -60 + 0.1 * loud + gain + 0.5 * random.nextGaussian()));
        }
        return moments;
    }

    @Test
    void aLevelThatDoesNotFollowSpeedLooksLikeAutomaticGain() {
        assertThat(GainCheck.of(ramp(1))).get().satisfies(w -> assertThat(w.code())
                .isEqualTo(WarningCode.AUTOMATIC_GAIN_SUSPECTED));
        assertThat(GainCheck.of(ramp(0))).isEmpty();
    }

    @Test
    void aNoiseFloorThatSinksAsTheEngineGetsLouderLooksLikeAutomaticGain() {
        assertThat(GainCheck.of(ramp(0.6))).isPresent();
    }

    @Test
    void oneSpeedAloneSaysNothingAboutGain() {
        assertThat(GainCheck.of(ramp(1).subList(0, 12))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {40, 60, 100, 150})
    void theLowCutOfAMicrophoneIsEstimatedWithinATenth(double cornerHz) {
        // First-order high-pass by the bilinear transform, its corner pre-warped.
        double k = Math.tan(Math.PI * cornerHz / RATE_HZ);
        double[] x = noise(0.1, 60, 6);
        double[] y = new double[x.length];
        for (int i = 1; i < x.length; i++) {
            y[i] = (x[i] - x[i - 1] + (1 - k) * y[i - 1]) / (1 + k);
        }
        assertThat(LowCut.cornerHz(Series.of(y), RATE_HZ)).get().satisfies(found -> assertThat(found)
                .isCloseTo(cornerHz, within(0.1 * cornerHz)));
    }

    @Test
    void anInputWithoutALowCutHasNone() {
        assertThat(LowCut.cornerHz(Series.of(noise(0.1, 30, 7)), RATE_HZ)).isEmpty();
    }
}
