package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LevelMeterTest {
    private static float[] tone(double amplitude, int frames, int channels) {
        float[] samples = new float[frames * channels];
        for (int i = 0; i < frames; i++) {
            double value = Math.max(-1, Math.min(1 - 1.0 / (1 << 15), amplitude * Math.sin(0.13 * i)));
            for (int c = 0; c < channels; c++) {
                samples[i * channels + c] = (float) (c == 0 ? value : value / 2);
            }
        }
        return samples;
    }

    @Test
    void aToneOfMinus6DecibelReadsMinus6Decibel() {
        LevelMeter meter = new LevelMeter(8000, List.of("left", "right"), Optional.empty());

        meter.accept(tone(0.5012, 800, 2), 800);

        assertThat(meter.levels().get(0).peakDb()).isCloseTo(-6, within(0.05));
        assertThat(meter.levels().get(1).peakDb()).isCloseTo(-12.02, within(0.05));
        assertThat(meter.levels()).allMatch(level -> level.clipped() == 0);
    }

    @Test
    void thePeakIsHeldForTwoSecondsAndThenLetGo() {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());
        meter.accept(tone(0.5, 400, 1), 400);
        for (int i = 0; i < 30; i++) {
            meter.accept(tone(0.05, 400, 1), 400);
        }
        assertThat(meter.levels().get(0).peakDb()).isCloseTo(-26, within(0.1));
        assertThat(meter.levels().get(0).heldPeakDb()).isCloseTo(-6, within(0.1));

        for (int i = 0; i < 15; i++) {
            meter.accept(tone(0.05, 400, 1), 400);
        }
        assertThat(meter.levels().get(0).heldPeakDb()).isCloseTo(-26, within(0.1));
    }

    @Test
    void flatTopsAtFullScaleAreCountedAsClipped() {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());

        meter.accept(tone(1.5, 800, 1), 800);

        // |sin| > 1/1.5 for 2·acos(1/1.5)/π = 53.5 % of the time.
        assertThat(meter.levels().get(0).clipped()).isBetween(400L, 440L);
    }

    private static ChannelLevel.Clip clip(LevelMeter meter) {
        return meter.levels().get(0).clip();
    }

    @Test
    void theClipMarkGoesTwoSecondsAfterTheLastClippedSample() {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());
        meter.accept(tone(1.5, 400, 1), 400);
        assertThat(clip(meter)).isEqualTo(ChannelLevel.Clip.FULL_SCALE);

        for (int i = 0; i < 41; i++) {
            meter.accept(tone(0.5, 400, 1), 400);
        }

        assertThat(clip(meter)).isEqualTo(ChannelLevel.Clip.NONE);
        assertThat(meter.levels().get(0).clipped()).as("since the start").isPositive();
    }

    /** -8 and -0.5 dB lie below full scale; at -0.05 dB a converter may end. */
    @ParameterizedTest
    @CsvSource({"0.4, BELOW_FULL_SCALE", "0.944, BELOW_FULL_SCALE", "0.994, FULL_SCALE"})
    void topsCutOffBelowFullScaleAreAnotherMatterThanTooMuchGain(float height, ChannelLevel.Clip clip) {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());
        float[] cut = tone(1.5, 8000, 1);
        for (int i = 0; i < cut.length; i++) {
            cut[i] *= height;
        }

        meter.accept(cut, cut.length);

        assertThat(clip(meter)).isEqualTo(clip);
    }

    @Test
    void aSlowSineInSixteenBitsIsNotCutOffHoweverSoftItIs() {
        for (double amplitude : new double[] {0.9, 0.1, 0.01, 0.001}) {
            LevelMeter meter = new LevelMeter(48000, List.of("mono"), Optional.empty());
            float[] slow = new float[48000];
            for (int i = 0; i < slow.length; i++) {
                // 30 Hz: some ten equal samples stand at each top.
                slow[i] = Math.round(32768 * amplitude * Math.sin(2 * Math.PI * 30 * i / 48000)) / 32768f;
            }
            meter.accept(slow, slow.length);

            assertThat(clip(meter)).as("amplitude %s", amplitude).isEqualTo(ChannelLevel.Clip.NONE);
        }
    }

    @Test
    void silenceReadsTheLowestLevel() {
        LevelMeter meter = new LevelMeter(8000, List.of("mono"), Optional.empty());

        meter.accept(new float[400], 400);

        assertThat(meter.levels().get(0).peakDb()).isEqualTo(ChannelLevel.SILENCE_DB);
    }
}
