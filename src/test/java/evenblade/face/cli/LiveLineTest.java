package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.face.app.LiveRecording;
import evenblade.input.capture.ChannelLevel;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.measure.soundcheck.LevelAim;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LiveLineTest {
    private static final ChannelLevel MIDDLE = level("left", -30, -15, ChannelLevel.Clip.NONE);
    private static final LiveReading WINDOW =
            new LiveReading(0, 8, 2.43, Optional.empty(), List.of(), Optional.empty(), 0);

    private static ChannelLevel level(String name, double peakDb, double heldDb, ChannelLevel.Clip clip) {
        return new ChannelLevel(name, peakDb, heldDb, clip == ChannelLevel.Clip.NONE ? 0 : 42, clip);
    }

    private static LiveRecording.View view(double seconds, ChannelLevel... levels) {
        return new LiveRecording.View(
                seconds, List.of(levels), LiveFigures.NONE, Optional.empty(), Optional.empty(), List.of(), false);
    }

    private static LiveRecording.View leading(LiveFigures figures, Optional<StepProgress> step) {
        return new LiveRecording.View(1, List.of(MIDDLE, MIDDLE), figures, Optional.of(WINDOW), step, List.of(), false);
    }

    @Test
    void withoutAnInstallationItShowsTimeAndLevelsWithTheirHeldPeaks() {
        LiveRecording.View view = view(83.47, MIDDLE, level("right", -120, -120, ChannelLevel.Clip.NONE));

        assertThat(LiveLine.text(view, "")).isEqualTo("1:23.4 [==== |  ] −15 dB [        ] silent");
    }

    @Test
    void clippingNamesItsChannel() {
        LiveRecording.View view = view(1, level("right", 0, 0, ChannelLevel.Clip.FULL_SCALE));

        assertThat(LiveLine.text(view, "")).isEqualTo("0:01.0 [========]   0 dB CLIPPED right");
    }

    @Test
    void everyChannelHasItsDecibelBesideTheSpeed() {
        LiveFigures figures = new LiveFigures(
                Optional.of(new LiveFigures.Figure(4812.4, 24, true)),
                Optional.of(new LiveFigures.Figure(1980, 10, true)),
                Optional.of(new LiveFigures.Figure(0.0503, 0.004, true)),
                Optional.of(new LiveFigures.Figure(0.0021, 0, false)),
                SignalUnit.FULL_SCALE);

        assertThat(LiveLine.text(leading(figures, Optional.empty()), ""))
                .isEqualTo("0:01.0 −15 dB −15 dB  4812 ±24 rpm 1x 0.0503 ±8% blade <0.0021");
    }

    @Test
    void aStepUnderWayStandsBeforeTheSpeed() {
        StepProgress step =
                new StepProgress(1, 2, 4800, StepProgress.State.HOLD, 12.3, 20, Optional.of(4.2), Optional.empty());

        assertThat(LiveLine.text(leading(LiveFigures.NONE, Optional.of(step)), ""))
                .isEqualTo("0:01.0 −15 dB −15 dB  HOLD 4800 12/20 s:  no speed");
        assertThat(LiveText.done(step))
                .isEqualTo("4800 engine rpm: 1x ± 4.2 %, blade pass too weak, as good as it gets after 12 s");
    }

    @Test
    void aStepThatWaitsForAWeakLineCountsToItsEnd() {
        assertThat(LiveText.of(new StepProgress(
                        1, 2, 4800, StepProgress.State.HOLD, 24, 20, Optional.of(7.0), Optional.of(1.0))))
                .isEqualTo("HOLD 4800 24/40 s:");
    }

    @Test
    void whatToDoAboutTheLevelStandsBehindTheBars() {
        assertThat(LiveLine.text(view(5, MIDDLE), "turn up")).isEqualTo("0:05.0 [==== |  ] −15 dB turn up");
    }

    /** Nobody is told to turn down what stays as flat. */
    @Test
    void topsThatAreFlatBelowFullScaleSayThatTheGainIsNoCure() {
        LiveRecording.View view = view(5, level("left", -3, -3, ChannelLevel.Clip.BELOW_FULL_SCALE));

        assertThat(LiveLine.text(view, ListenCommand.words(LevelAim.OVERDRIVEN)))
                .isEqualTo("0:05.0 [========]  −3 dB CLIPPED left overdriven before the gain");
        assertThat(ListenCommand.inOrder(LevelAim.OVERDRIVEN))
                .isEqualTo("Channels are in order; the level at the end: overdriven before the gain.");
    }

    @Test
    void aLiveAnalysisThatFailedSaysSoAndShowsNoFigure() {
        LiveRecording.View view = new LiveRecording.View(
                5, List.of(MIDDLE), LiveFigures.NONE, Optional.empty(), Optional.empty(), List.of(), true);

        assertThat(LiveLine.text(view, "")).isEqualTo("0:05.0 [==== |  ] −15 dB  live stopped");
    }
}
