package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.capture.ChannelLevel;
import evenblade.input.capture.ChannelLevel.Clip;
import evenblade.input.capture.LevelMeter;
import evenblade.measure.soundcheck.LevelAim;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ListenToInputTest {
    private static final int RATE_HZ = 8000;

    /** A second of a tone with its tops cut off, as a preamplifier cuts them, then turned down. */
    private static LevelMeter overdriven(float turnedTo) {
        LevelMeter meter = new LevelMeter(RATE_HZ, List.of("left"), Optional.empty());
        float[] sound = new float[RATE_HZ];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = turnedTo * (float) Math.max(-1, Math.min(1, 1.5 * Math.sin(0.13 * i)));
        }
        meter.accept(sound, sound.length);
        return meter;
    }

    private static ChannelLevel level(String name, double peakDb, Clip clip) {
        return new ChannelLevel(name, peakDb, peakDb, clip == Clip.NONE ? 0 : 9, clip);
    }

    private static LevelAim aim(ChannelLevel... levels) {
        return ListenToInput.aim(List.of(levels), Optional.of("mark"));
    }

    @Test
    void aChannelOverdrivenBelowFullScaleIsNeverToldToTurnDown() {
        // -3, -6.5 and -26 dB: over, in and under the good zone.
        for (float turnedTo : new float[] {0.7f, 0.47f, 0.05f}) {
            assertThat(ListenToInput.aim(overdriven(turnedTo).levels(), Optional.empty()))
                    .as("turned to %s", turnedTo)
                    .isEqualTo(LevelAim.OVERDRIVEN);
        }
    }

    @Test
    void theLoudestChannelTellsWhatToDoUnlessOneIsCutOff() {
        assertThat(aim(level("left", -15, Clip.NONE), level("right", -4, Clip.NONE)))
                .isEqualTo(LevelAim.TURN_DOWN);
        assertThat(aim(level("left", -15, Clip.BELOW_FULL_SCALE), level("right", -4, Clip.NONE)))
                .isEqualTo(LevelAim.OVERDRIVEN);
        assertThat(aim(level("left", -15, Clip.BELOW_FULL_SCALE), level("right", 0, Clip.FULL_SCALE)))
                .isEqualTo(LevelAim.TURN_DOWN);
        assertThat(aim(level("left", -15, Clip.NONE), level("mark", 0, Clip.FULL_SCALE)))
                .isEqualTo(LevelAim.GOOD);
    }
}
