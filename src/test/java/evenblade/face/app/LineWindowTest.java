package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.keep.job.RunSettings;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveReading;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Lines of a sensor, followed while they come")
class LineWindowTest {
    private static final double RATE_HZ = 1000;
    private static final double RATIO = 51.0 / 21; // of the invented installation
    private static final double[] ORDERS = {1, 3, 6, RATIO, 2 * RATIO};

    private final RunSoFar soFar = RunSoFar.begin(Optional.empty(), Optional.of(PracticeInstallation.geared()));
    private final LineWindow window = new LineWindow(PracticeInstallation.geared(), RunSettings.NONE, soFar);
    private final Random noise = new Random(1129);
    private double turns;
    private int sent;

    /** Lines of invented vibration, read as the recorder has it done: four times a second. */
    private void run(double seconds, double fromHz, double toHz) {
        send(seconds, fromHz, toHz, true);
    }

    private void send(double seconds, double fromHz, double toHz, boolean followed) {
        int hops = (int) Math.round(4 * seconds);
        for (int hop = 1; hop <= hops; hop++) {
            for (int i = 0; i < RATE_HZ / 4; i++, sent++) {
                turns += (fromHz + (toHz - fromHz) * (hop - 1 + i / (RATE_HZ / 4)) / hops) / RATE_HZ;
                double shake = 0.05 * noise.nextGaussian();
                for (double order : ORDERS) {
                    shake += Math.sin(2 * Math.PI * order * turns + order);
                }
                window.add(String.format(Locale.ROOT, "%.3f,%.5f", sent / RATE_HZ, shake));
            }
            if (followed) {
                window.now();
                window.window();
            }
        }
    }

    private LiveFigures figures() {
        return soFar.view(sent / RATE_HZ, List.of()).figures();
    }

    private void rpmIs(double propellerHz) {
        LiveFigures.Figure rpm = figures().engineRpm().orElseThrow();
        assertThat(rpm.value()).isCloseTo(60 * RATIO * propellerHz, within(rpm.plusMinus()));
    }

    @Test
    @DisplayName("show the speed of the last second and the amplitudes of a longer window, each within its interval")
    void speedAndAmplitudesAreShown() {
        run(12, 27.4, 27.4);

        rpmIs(27.4);
        LiveFigures.Figure once = figures().once().orElseThrow();
        assertThat(once.value()).isCloseTo(1, within(2 * once.plusMinus()));
    }

    @Test
    @DisplayName("show the new speed a second after a move, and no speed while it moves that isn't true")
    void theNewSpeedIsShownSoonAfterAMove() {
        run(12, 24, 24);
        run(1, 24, 31);
        run(1, 31, 31);

        rpmIs(31);
    }

    @Test
    @DisplayName("tell the same time as the clock of the lines, in a window that has dropped its first rows")
    void timesAreThoseOfTheWholeRun() {
        run(2, 27.4, 27.4);
        send(68, 27.4, 27.4, false);
        window.lastWindow();

        LiveReading last = soFar.view(sent / RATE_HZ, List.of()).reading().orElseThrow();
        assertThat(last.toS()).isCloseTo(70, within(0.01));
    }
}
