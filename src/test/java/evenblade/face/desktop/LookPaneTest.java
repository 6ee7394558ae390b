package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Spot.What;
import evenblade.tell.chart.Zoom;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sample is invented; its truth lies beside it: blade pass of 3.847 m/s² at 80.016 Hz on the first channel. without a speed
 * its wander makes it read some 5 % low. */
@Tag("screen")
@Tag("long")
@DisplayName("A recording is looked at without a job:")
class LookPaneTest {
    private static final Path SAMPLES = Path.of("samples", "direct-two-blade");
    private static final Path GEARED = Path.of("samples", "geared-three-blade");
    private static final Path PICTURES = Path.of("target", "screens", "chart");

    @TempDir
    Path scratch;

    @Test
    @DisplayName("its lines are read off the cursor, and named once an installation is chosen")
    void linesAreReadAndNamed() {
        try (Workplace place = Workplace.in(scratch, 1366, 768)) {
            Hands hands = place.hands();
            Hands.onEventThread(() -> {
                hands.window().look(SAMPLES.resolve("run.wav"));
                return null;
            });
            hands.awaitRest();
            hands.type("look full scale", "50 m/s2");
            hands.press(java.awt.event.KeyEvent.VK_ENTER);
            hands.awaitRest();
            hands.photograph(PICTURES.resolve("look.png"));
            Spot highest = peaks(hands).get(0);
            hands.point(at(hands, highest.x()));
            Spot read = cursor(hands);
            assertThat(read.reading(What.FREQUENCY).orElseThrow().value()).isCloseTo(80.016, offset(0.3));
            assertThat(read.reading(What.AMPLITUDE).orElseThrow().value()).isCloseTo(3.847, offset(0.25));
            assertThat(read.reading(What.PROPELLER_ORDER)).isEmpty();
            Hands.onEventThread(() -> {
                hands.window().look(GEARED.resolve("after-accelerometer.wav"));
                ((LookPane) hands.named("look")).name(GEARED.resolve("installation.json"));
                ((LookPane) hands.named("look")).again();
                return null;
            });
            hands.awaitRest();
            hands.point(at(hands, peaks(hands).get(0).x()));
            // Firing of a four-stroke four comes twice a turn of the crank.
            assertThat(cursor(hands).name()).contains("firing");
            assertThat(cursor(hands).reading(What.CRANK_ORDER).orElseThrow().value())
                    .isCloseTo(2.0, offset(0.02));
            hands.photograph(PICTURES.resolve("look-named.png"));
            hands.tab("look tabs", "Waterfall");
            hands.photograph(PICTURES.resolve("look-fall.png"));
            hands.tab("look tabs", "Steady lines");
            hands.photograph(PICTURES.resolve("look-lines.png"));
        }
    }

    private static List<Spot> peaks(Hands hands) {
        return Hands.onEventThread(
                () -> hands.picture("look spectrum").picture().orElseThrow().peaks());
    }

    private static Spot cursor(Hands hands) {
        return Hands.onEventThread(
                () -> hands.picture("look spectrum").cursors().get(0));
    }

    private static java.awt.Point at(Hands hands, double hz) {
        Zoom.Range shown = Hands.onEventThread(() -> hands.picture("look spectrum")
                        .picture()
                        .flatMap(each -> each.zoom())
                        .orElseThrow())
                .across();
        return hands.inPlot("look spectrum", (hz - shown.from()) / shown.size(), 0.3);
    }
}
