package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.face.app.CompareRuns;
import evenblade.face.app.MakePractice;
import evenblade.face.app.ShowJob;
import evenblade.input.capture.SoundBench;
import evenblade.judge.comparison.RunComparison;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.Kind;
import evenblade.keep.practice.SpeedProfile;
import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Spot.What;
import evenblade.tell.chart.Zoom;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JProgressBar;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Does a whole job as a person would, and takes the pictures of docs/handbook.md on the way. */
@Tag("screen")
@Tag("long")
@DisplayName("A whole job in the window")
class WholeJobTest {
    private static final Path PICTURES = Path.of("docs", "pictures");

    @TempDir
    Path scratch;

    private Workplace workplace;
    private Hands hands;

    @BeforeEach
    void open() {
        workplace = Workplace.in(scratch);
        hands = workplace.hands();
    }

    @AfterEach
    void close() {
        if (workplace != null) {
            workplace.close();
        }
    }

    @Test
    @DisplayName("goes from a new job to the printed record by clicking and typing")
    void fromNewJobToThePrintedRecord() throws IOException {
        Path invented = scratch.resolve("invented");
        MakePractice.make(invented, List.of(), 1, Optional.empty());
        List<Path> recordings = recordings(invented);
        hands.photograph(PICTURES.resolve("desktop-start.png"));
        Path folder = begin();
        workplace.typeMarks("0", "6.0", "0.5");
        hands.photograph(PICTURES.resolve("desktop-marks.png"));
        hands.click("enter");
        hands.awaitNamed("together");
        run(recordings.get(0), "as found");
        hands.awaitNamed("orders");
        hands.awaitRest();
        assertThat(hands.text("speed")).startsWith("Speed CONFIRMED");
        assertThat(hands.text("speed known")).startsWith("engine ").contains("95 %");
        hands.photograph(PICTURES.resolve("desktop-run.png"));
        hands.tab("run tabs", "Waterfall");
        hands.awaitRest();
        hands.click("add change");
        hands.type("text", "Blade B shimmed into track.");
        hands.click("enter");
        hands.awaitNamed("entry text");
        workplace.typeMarks("0", "0.3", "0.2");
        hands.click("enter");
        hands.awaitNamed("together");
        run(recordings.get(3), "put right");
        hands.awaitNamed("orders");
        hands.awaitRest();
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_3);
        hands.awaitRest();
        hands.tab("compare tabs", "Orders");
        hands.photograph(PICTURES.resolve("desktop-compare.png"));
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_1);
        hands.awaitNamed("finding 1");
        hands.photograph(PICTURES.resolve("desktop-findings.png"));
        assertThat(hands.text("finding 1")).contains("out of track");
        report(folder);
        hands.photograph(PICTURES.resolve("desktop-report.png"));
    }

    /** The engine is invented and played to where the input hears it; 1× is 0.08 of full scale, then 0.02. */
    @Test
    @DisplayName("goes from a new job to the printed record with both runs recorded in the window")
    void withBothRunsRecordedInTheWindow() throws IOException {
        SoundBench.require();
        Path folder = begin();
        workplace.typeMarks("0", "6.0", "0.5");
        hands.click("enter");
        hands.awaitNamed("together");
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_5);
        hands.photograph(PICTURES.resolve("desktop-run-card.png"));
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_6);
        hands.await("an input", () -> hands.named("record").isEnabled());
        quiet();
        level();
        record("as found", 0.08, Optional.of(PICTURES.resolve("desktop-live.png")));
        assertThat(hands.text("speed known")).matches("engine (4799|4800)\\..*95 %.*");
        cursorReads(1, 0.08);
        cursorReads(3, 0.2);
        hands.click("add change");
        hands.type("text", "Blade B shimmed into track.");
        hands.click("enter");
        hands.awaitNamed("entry text");
        workplace.typeMarks("0", "0.3", "0.2");
        hands.click("enter");
        hands.awaitNamed("together");
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_6);
        hands.await("an input", () -> hands.named("record").isEnabled());
        record("put right", 0.02, Optional.empty());
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_3);
        hands.awaitRest();
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_1);
        hands.awaitNamed("finding 1");
        report(folder);
        RunComparison outcome = CompareRuns.compare(folder, "as found", "put right", OptionalDouble.empty())
                .comparison();
        assertThat(outcome.comparable()).as(outcome.toString()).isTrue();
    }

    private void quiet() throws IOException {
        InventedSound standing = InventedSound.play(scratch, SpeedProfile.steady(InventedSound.hz(4800), 30), 0, 0);
        try {
            Hands.pause(1000);
            hands.click("quiet take");
            hands.await("the quiet take", 40, () -> ((JButton) hands.named("quiet take"))
                    .getText()
                    .contains("✓"));
        } finally {
            standing.stop();
        }
    }

    private void level() throws IOException {
        InventedSound engine = InventedSound.play(scratch, SpeedProfile.steady(InventedSound.hz(4800), 60), 0.08, 1);
        try {
            hands.type("live mark", "2");
            hands.click("listen");
            hands.await(
                    "a good level",
                    () -> ((JLabel) hands.named("level aim")).getText().contains("Good"));
            Hands.pause(2500);
            hands.photographNow(PICTURES.resolve("desktop-level.png"));
            hands.click("listen");
            hands.await("the end of listening", () -> hands.named("quiet take").isEnabled());
        } finally {
            engine.stop();
        }
    }

    private void record(String label, double once, Optional<Path> picture) throws IOException {
        hands.type("live name", label);
        hands.type("live speeds", "4800");
        hands.type("live mark", "2");
        InventedSound engine = InventedSound.play(scratch, SpeedProfile.steady(InventedSound.hz(4800), 150), once, 1);
        try {
            hands.click("record");
            hands.await("half a dwell", 90, () -> hands.find("dwell bar")
                    .filter(bar -> ((JProgressBar) bar).getValue() > 500)
                    .isPresent());
            picture.ifPresent(hands::photographNow);
            hands.await("all dwells", 90, () -> ((JLabel) hands.named("live dwell"))
                    .getText()
                    .startsWith("All 1"));
            hands.press(KeyEvent.VK_SPACE);
            hands.await(
                    "the run",
                    60,
                    () -> hands.named("next live step").isEnabled()
                            && ((JButton) hands.named("next live step"))
                                    .getText()
                                    .startsWith("Look at the run"));
        } finally {
            engine.stop();
        }
        hands.press(KeyEvent.VK_SPACE);
        hands.awaitNamed("orders");
        hands.awaitRest();
    }

    /**
     * The cursor over a line of the propeller against what {@link InventedSound} plays: 0.05 % of frequency, as its
     * speed wanders by some hundredths of a percent; 3 % of amplitude, several times what the orders' intervals allow.
     */
    private void cursorReads(int order, double amplitude) {
        hands.tab("run tabs", "Spectrum");
        hands.awaitRest();
        double hz = order * InventedSound.hz(4800);
        Zoom.Range shown = Hands.onEventThread(() -> hands.picture("run")
                .picture()
                .flatMap(picture -> picture.zoom())
                .orElseThrow()
                .across());
        hands.point(hands.inPlot("run", (hz - shown.from()) / shown.size(), 0.3));
        Spot read = Hands.onEventThread(() -> hands.picture("run").cursors().get(0));
        assertThat(read.reading(What.FREQUENCY).orElseThrow().value()).isCloseTo(hz, within(0.0005 * hz));
        assertThat(read.reading(What.PROPELLER_ORDER).orElseThrow().value()).isCloseTo(order, within(0.0005 * order));
        assertThat(read.y()).isCloseTo(amplitude, within(0.03 * amplitude));
    }

    private void report(Path folder) throws IOException {
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_7);
        Path out = scratch.resolve("record");
        hands.type("report folder", out.toString());
        hands.click("write report");
        hands.awaitNamed("written");
        assertThat(new String(Files.readAllBytes(out.resolve("report.pdf")), 0, 5, StandardCharsets.ISO_8859_1))
                .isEqualTo("%PDF-");
        assertThat(ShowJob.show(folder, Thoroughness.EVERY_BYTE).record().standing())
                .extracting(event -> event.kind())
                // What a take was told of the input stands beside its run, where there was anything to tell.
                .filteredOn(kind -> kind != Kind.AMENDMENT)
                .containsExactly(Kind.TRACKING, Kind.RUN, Kind.CORRECTION, Kind.TRACKING, Kind.RUN);
    }

    private static List<Path> recordings(Path job) throws IOException {
        try (Stream<Path> files = Files.list(job.resolve("recordings"))) {
            return files.sorted(Comparator.comparing(Path::toString)).toList();
        }
    }

    private Path begin() {
        Path folder = workplace.typeNewJob("my job");
        hands.photograph(PICTURES.resolve("desktop-new-job.png"));
        hands.click("begin");
        hands.awaitNamed("timeline");
        return folder;
    }

    private void run(Path recording, String label) {
        hands.click("add run");
        hands.type("recording", recording.toString());
        hands.type("label", label);
        hands.type("full scale", "50 m/s2");
        hands.type("mark", "4");
        hands.await(
                "what the file says",
                () -> ((WrappedLabel) hands.named("seen text")).getText().startsWith("WAV"));
        if (label.equals("as found")) {
            hands.photograph(PICTURES.resolve("desktop-add-run.png"));
        }
        hands.click("enter");
    }
}
