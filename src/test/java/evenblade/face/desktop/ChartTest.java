package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.MakePractice;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.machine.installation.Shaft;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.OrderReading;
import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Spot.What;
import evenblade.tell.chart.Zoom;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A picture that can be worked in; {@code target/screens} shows what was seen. */
@Tag("screen")
@Tag("long")
@DisplayName("In a picture")
class ChartTest {
    private static final Path PICTURES = Path.of("target", "screens", "chart");

    @TempDir
    Path scratch;

    private Workplace place;
    private Hands hands;
    private Path job;
    private List<Event> runs;

    @BeforeEach
    void open() throws IOException {
        job = scratch.resolve("job");
        MakePractice.make(job, List.of(), 1, Optional.empty());
        runs = Workplace.record(job).standing(Kind.RUN);
        place = Workplace.in(scratch, 1366, 768);
        hands = place.hands();
        place.open(job);
        Hands.onEventThread(() -> {
            hands.window().showEntry(runs.get(0));
            return null;
        });
        hands.awaitRest();
    }

    @AfterEach
    void close() {
        if (place != null) {
            place.close();
        }
    }

    private Zoom zoom(String pane) {
        return Hands.onEventThread(() ->
                hands.picture(pane).picture().flatMap(picture -> picture.zoom()).orElseThrow());
    }

    private List<Spot> cursors(String pane) {
        return Hands.onEventThread(() -> hands.picture(pane).cursors());
    }

    private Point atHz(double hz) {
        Zoom.Range shown = zoom("run").across();
        return hands.inPlot("run", (hz - shown.from()) / shown.size(), 0.3);
    }

    @Test
    @DisplayName(
            "the cursor reads the line that was measured, a second one the difference, and the wheel keeps the frequency")
    void cursorAndZoom() throws IOException {
        hands.tab("run tabs", "Spectrum");
        DwellOrders measured =
                AnalyseRecording.ofRun(job, runs.get(0).id(), (share, doing) -> {})
                        .orders()
                        .channels()
                        .get(0)
                        .dwells()
                        .stream()
                        .max(java.util.Comparator.comparingDouble(
                                each -> each.dwell().durationS()))
                        .orElseThrow();
        OrderReading once = line(measured, 1);
        OrderReading pass = line(measured, 3);
        hands.point(atHz(once.frequencyHz() + 0.2));
        Spot first = cursors("run").get(0);
        assertThat(first.reading(What.FREQUENCY).orElseThrow().value()).isEqualTo(once.frequencyHz());
        assertThat(first.reading(What.PROPELLER_ORDER).orElseThrow().value()).isBetween(0.9999, 1.0001);
        assertThat(first.y()).isEqualTo(((evenblade.measure.orders.Level.Measured) once.level()).amplitude());
        hands.photograph(PICTURES.resolve("cursor.png"));
        hands.clickAt(atHz(once.frequencyHz()));
        hands.point(atHz(pass.frequencyHz()));
        assertThat(cursors("run")).hasSize(2);
        assertThat(((WrappedLabel) hands.named("cursor words")).getText()).contains("1 to 2:", "dB", "times");
        hands.photograph(PICTURES.resolve("difference.png"));
        Zoom.Range whole = zoom("run").across();
        double share = (pass.frequencyHz() - whole.from()) / whole.size();
        hands.wheel(-5);
        hands.awaitRest();
        Zoom.Range near = zoom("run").across();
        assertThat(near.size()).isLessThan(0.5 * whole.size());
        assertThat(near.from() + share * near.size())
                .isCloseTo(pass.frequencyHz(), org.assertj.core.data.Offset.offset(0.005 * whole.size()));
        hands.photograph(PICTURES.resolve("near.png"));
        hands.drag(hands.inPlot("run", 0.3, 0.5), hands.inPlot("run", 0.6, 0.7));
        assertThat(zoom("run").across().size()).isLessThan(0.35 * near.size());
        hands.press(KeyEvent.VK_BACK_SPACE);
        assertThat(zoom("run").across()).isEqualTo(near);
        hands.press(KeyEvent.VK_BACK_SPACE);
        assertThat(zoom("run").across()).isEqualTo(whole);
        hands.press(KeyEvent.VK_ESCAPE);
        assertThat(cursors("run")).isEmpty();
        hands.click("peak table");
        hands.awaitRest();
        assertThat(Hands.onEventThread(() -> ((PeakTable) hands.named("peaks")).getRowCount()))
                .isBetween(5, 10);
        Hands.onEventThread(() -> {
            ((PeakTable) hands.named("peaks")).setRowSelectionInterval(0, 0);
            return null;
        });
        hands.choose("unit", "mm/s");
        hands.awaitRest();
        hands.photograph(PICTURES.resolve("peaks.png"));
    }

    @Test
    @DisplayName("the loudest and another run lie over the spectrum, and a click in the waterfall shows that moment")
    void overlaysAndMoments() {
        hands.tab("run tabs", "Spectrum");
        hands.awaitRest();
        hands.await("the choice", () -> hands.find("lay over").isPresent());
        hands.click("lay over");
        hands.press(KeyEvent.VK_DOWN);
        hands.press(KeyEvent.VK_ENTER);
        hands.awaitRest();
        hands.click("lay over");
        hands.press(KeyEvent.VK_UP);
        hands.press(KeyEvent.VK_ENTER);
        hands.awaitRest();
        hands.point(hands.inPlot("run", 0.5, 0.5));
        assertThat(cursors("run").get(0).readings().stream().filter(each -> each.what() == What.AMPLITUDE))
                .hasSize(3);
        hands.photograph(PICTURES.resolve("overlays.png"));
        hands.tab("run tabs", "Waterfall");
        hands.awaitRest();
        hands.clickAt(hands.inPlot("waterfall", 0.4, 0.3));
        hands.awaitNamed("moment");
        hands.awaitRest();
        double timeS =
                cursors("waterfall").get(0).reading(What.TIME).orElseThrow().value();
        String caption = Hands.onEventThread(() -> hands.picture("moment")
                .picture()
                .orElseThrow()
                .caption()
                .parts()
                .toString());
        assertThat(caption).contains(evenblade.tell.document.FigureFormat.fixed(timeS - 2, 1) + " to");
        hands.photograph(PICTURES.resolve("moment.png"));
        hands.point(hands.inPlot("waterfall", 0.5, 0.3));
        hands.wheel(-6);
        hands.awaitRest();
        Hands.pause(1500);
        hands.photograph(PICTURES.resolve("finer.png"));
        for (String tab : List.of("Bars", "One turn", "Speed")) {
            hands.tab("run tabs", tab);
            hands.point(hands.inPlot("run", 0.5, 0.5));
            assertThat(cursors("run")).as(tab).hasSize(1);
            hands.photograph(PICTURES.resolve(tab + ".png"));
        }
    }

    private static OrderReading line(DwellOrders dwell, int order) {
        return dwell.readings().stream()
                .filter(each ->
                        each.line().of() == Shaft.PROPELLER && each.line().order() == order)
                .findFirst()
                .orElseThrow();
    }
}
