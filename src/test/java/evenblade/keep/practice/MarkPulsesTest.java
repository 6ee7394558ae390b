package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MarkPulsesTest {
    private static final SpeedProfile SPEED = SpeedProfile.steady(33, 20).wandering(0.01, 2);
    private static final TimeBase TIME = new TimeBase.Even(0, 4000, 80_000);

    @Test
    void risingEdgesCrossHalfHeightAtWholeRevolutions() {
        List<Double> crossings = crossings(MarkPulses.clean().samples(SPEED, TIME));
        assertThat(crossings).hasSize((int) Math.floor(SPEED.revolutionsAt(20)));
        for (double crossing : crossings) {
            double turns = SPEED.revolutionsAt(crossing);
            assertThat(turns - Math.rint(turns)).isCloseTo(0, within(1e-6));
        }
    }

    @Test
    void missingAndFalsePulsesComeInTheShareAskedFor() {
        int turns = (int) SPEED.revolutionsAt(20) + 1;
        assertThat(new MarkPulses(1, 0.05, 0.05, 0, 0, 4).rises(SPEED))
                .hasSizeBetween((int) (0.92 * turns), (int) (0.98 * turns));
        assertThat(new MarkPulses(1, 0.05, 0, 0.05, 0, 4).rises(SPEED))
                .hasSizeBetween((int) (1.02 * turns), (int) (1.08 * turns));
    }

    private static List<Double> crossings(double[] samples) {
        List<Double> crossings = new ArrayList<>();
        for (int i = 1; i < samples.length; i++) {
            if (samples[i - 1] < 0.5 && samples[i] >= 0.5) {
                double share = (0.5 - samples[i - 1]) / (samples[i] - samples[i - 1]);
                crossings.add(TIME.at(i - 1) + share * (TIME.at(i) - TIME.at(i - 1)));
            }
        }
        return crossings;
    }
}
