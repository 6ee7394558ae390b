package evenblade.measure.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.input.recording.Recording;
import java.util.List;
import org.junit.jupiter.api.Test;

class LatestStretchTest {
    private static final int RATE_HZ = 48_000;

    private static LatestStretch stretch() {
        return new LatestStretch(RATE_HZ, List.of("left", "right"), Math.scalb(1, -15), 1000, 20);
    }

    /** A tone on the first channel, half as much on the second, in blocks of a twentieth of a second. */
    private static void play(LatestStretch to, double fromS, double seconds, double amplitude) {
        int block = RATE_HZ / 20;
        float[] sound = new float[2 * block];
        for (int b = 0; b < seconds * 20; b++) {
            for (int i = 0; i < block; i++) {
                double t = fromS + (double) (b * block + i) / RATE_HZ;
                double value = amplitude * Math.sin(2 * Math.PI * 90 * t);
                sound[2 * i] = (float) Math.max(-1, Math.min(1, value));
                sound[2 * i + 1] = sound[2 * i] / 2;
            }
            to.accept(sound, block);
        }
    }

    @Test
    void theLatestSecondsAreKeptWithTheirTrueLevel() {
        LatestStretch stretch = stretch();
        play(stretch, 0, 30, 0.5);

        Recording kept = stretch.recording().orElseThrow();

        assertThat(kept.time().durationS()).isCloseTo(20, within(0.1));
        assertThat(kept.time().at(0)).isCloseTo(10, within(0.2));
        assertThat(kept.quality().get(0).peak()).isCloseTo(0.5, within(1e-6));
        assertThat(kept.quality().get(1).peak()).isCloseTo(0.25, within(1e-6));
        double root = Math.sqrt(0.5);
        assertThat(kept.quality().get(0).rms()).isCloseTo(0.5 * root, within(1e-3));
    }

    @Test
    void clippingFromBeforeTheLevelWasTurnedDownIsForgotten() {
        LatestStretch stretch = stretch();
        play(stretch, 0, 6, 3);
        assertThat(stretch.recording().orElseThrow().quality().get(0).clippedShare())
                .isGreaterThan(0.1);

        play(stretch, 6, 11, 0.4);

        assertThat(stretch.recording().orElseThrow().quality().get(0).clippedShare())
                .isZero();
        assertThat(stretch.recording().orElseThrow().quality().get(0).peak()).isCloseTo(0.4, within(1e-6));
    }

    @Test
    void beforeTheFirstSampleThereIsNothing() {
        assertThat(stretch().recording()).isEmpty();
    }
}
