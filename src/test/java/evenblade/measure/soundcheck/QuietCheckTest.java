package evenblade.measure.soundcheck;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Recording;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class QuietCheckTest {
    private static List<WarningCode> faults(SyntheticRun take) {
        Recording quiet = take.recording(2000);
        return QuietCheck.of(quiet, Optional.empty(), Optional.empty()).stream()
                .map(Warning::code)
                .toList();
    }

    private static SyntheticRun room() {
        return SyntheticRun.at(SpeedProfile.steady(20, 5))
                .withNoise(new Noise(0.002, 0))
                .withSeed(3);
    }

    @Test
    void aQuietRoomIsQuietAlsoWithMainsHum() {
        assertThat(faults(room())).isEmpty();
        assertThat(faults(room().withTone(50.05, 0.01).withTone(100.1, 0.004))).isEmpty();
    }

    @Test
    void aToneThatIsNoMainsHumIsRefused() {
        assertThat(faults(room().withTone(98.7, 0.01))).containsExactly(WarningCode.QUIET_TAKE_TONAL);
    }

    @Test
    void aTakeAsLoudAsAnEngineIsRefused() {
        assertThat(faults(room().withNoise(new Noise(0.05, 0)))).containsExactly(WarningCode.QUIET_TAKE_LOUD);
    }
}
