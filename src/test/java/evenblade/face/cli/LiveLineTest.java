package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.LiveRecording;
import evenblade.input.capture.ChannelLevel;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LiveLineTest {
    private static final ChannelLevel MIDDLE = new ChannelLevel(-30, -15, 0);

    @Test
    void withoutAnInstallationItShowsTimeAndLevelsWithTheirHeldPeaks() {
        LiveRecording.View view = new LiveRecording.View(
                83.47, List.of(MIDDLE, new ChannelLevel(-120, -120, 0)), Optional.empty(), Optional.empty(), List.of());

        assertThat(LiveLine.text(view, "")).isEqualTo("1:23.4 [==== |  ] -15 dB [        ] silent");
    }

    @Test
    void clippingIsCounted() {
        LiveRecording.View view = new LiveRecording.View(
                1, List.of(new ChannelLevel(0, 0, 42)), Optional.empty(), Optional.empty(), List.of());

        assertThat(LiveLine.text(view, "")).isEqualTo("0:01.0 [========]   0 dB CLIPPED 42");
    }

    @Test
    void aStepUnderWayStandsBeforeTheSpeed() {
        LiveReading silent = new LiveReading(0, 8, 2.43, Optional.empty(), List.of(), Optional.empty(), 0);
        StepProgress step =
                new StepProgress(4800, StepProgress.State.HOLD, 12.3, 20, Optional.of(4.2), Optional.empty());
        LiveRecording.View view =
                new LiveRecording.View(1, List.of(MIDDLE, MIDDLE), Optional.of(silent), Optional.of(step), List.of());

        assertThat(LiveLine.text(view, "")).isEqualTo("0:01.0 [==== |  ] -15 dB  HOLD 4800 12/20 s:  no speed yet");
        assertThat(LiveText.done(step))
                .isEqualTo("4800 engine rpm: 1x ± 4.2 %, blade pass too weak, as good as it gets after 12 s");
    }

    @Test
    void aStepThatWaitsForAWeakLineCountsToItsEnd() {
        assertThat(LiveText.of(
                        new StepProgress(4800, StepProgress.State.HOLD, 24, 20, Optional.of(7.0), Optional.of(1.0))))
                .isEqualTo("HOLD 4800 24/40 s:");
    }

    @Test
    void whatToDoAboutTheLevelStandsBehindTheBars() {
        LiveRecording.View view =
                new LiveRecording.View(5, List.of(MIDDLE), Optional.empty(), Optional.empty(), List.of());

        assertThat(LiveLine.text(view, "turn up")).isEqualTo("0:05.0 [==== |  ] -15 dB turn up");
    }
}
