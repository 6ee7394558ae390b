package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.ShowJob;
import evenblade.face.app.StartJob;
import evenblade.input.capture.PseudoTerminals;
import evenblade.input.capture.SoundBench;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.SpeedProfile;
import java.awt.event.KeyEvent;
import java.awt.event.WindowEvent;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JDialog;
import javax.swing.JLabel;
import javax.swing.JProgressBar;
import javax.swing.RepaintManager;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("A ground run recorded in the window")
class LivePaneTest {
    @TempDir
    Path scratch;

    private Path job;
    private Workplace workplace;
    private Hands hands;

    @BeforeEach
    void open() throws IOException {
        SoundBench.require();
        workplace = Workplace.in(scratch, 1280, 720);
        hands = workplace.hands();
        job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        workplace.open(job);
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_6);
        hands.await("an input", () -> hands.named("record").isEnabled());
    }

    @AfterEach
    void close() {
        if (workplace != null) {
            workplace.close();
        }
    }

    private JobRecord record() {
        return ShowJob.show(job, Thoroughness.QUICK).record();
    }

    private boolean says(String name, String words) {
        return hands.find(name)
                .map(there -> there instanceof JLabel label ? label.getText() : ((Complaint) there).getText())
                .filter(text -> text.contains(words))
                .isPresent();
    }

    /** How long the run is, as the window shows it; 0 where it doesn't. A stalled machine skips seconds. */
    private int recordedSeconds() {
        return hands.find("live time")
                .map(there -> ((JLabel) there).getText().split(":"))
                .filter(parts -> parts.length == 2)
                .map(parts -> 60 * Integer.parseInt(parts[0]) + Integer.parseInt(parts[1]))
                .orElse(0);
    }

    /** All that a label says from now on: what stands there for seconds only is over when a stalled machine looks. */
    private List<String> heardFrom(String name) {
        List<String> heard = new CopyOnWriteArrayList<>();
        Hands.onEventThread(() -> {
            hands.named(name).addPropertyChangeListener("text", change -> heard.add((String) change.getNewValue()));
            return null;
        });
        return heard;
    }

    private static SpeedProfile steady(double seconds) {
        return SpeedProfile.steady(InventedSound.hz(4800), seconds);
    }

    @Test
    @DisplayName("begins and ends with the space bar, and can't be left by accident meanwhile")
    void spaceBeginsAndEndsAndNothingElseLeaves() throws IOException {
        hands.type("live name", "as found");
        assertThat(record().events()).as("a space in the name is no start").isEmpty();
        hands.click("live steps");
        InventedSound playing = InventedSound.play(scratch, steady(30), 0.05, 1);
        try {
            hands.click("record");
            hands.await("two seconds", () -> recordedSeconds() >= 2);

            hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_1);
            hands.await("the refusal", () -> says("complaint", "Stop it first"));
            hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_W);
            hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_D);
            assertThat(hands.shows("live screen")).isTrue();

            Hands.onEventThread(() -> {
                SwingUtilities.invokeLater(() ->
                        hands.window().dispatchEvent(new WindowEvent(hands.window(), WindowEvent.WINDOW_CLOSING)));
                return null;
            });
            hands.await("the question", () -> Stream.of(hands.window().getOwnedWindows())
                    .anyMatch(each -> each instanceof JDialog dialog && dialog.isShowing()));
            hands.press(KeyEvent.VK_ESCAPE);
            int before = Hands.onEventThread(this::recordedSeconds);
            hands.await("the recording to go on", () -> hands.window().isShowing() && recordedSeconds() > before);

            hands.press(KeyEvent.VK_SPACE);
            hands.await("the run in the job", () -> runs() == 1);
        } finally {
            playing.stop();
        }
        Event run = record().events().get(0);
        assertThat(run.label()).contains("as found");
        assertThat(Files.size(job.resolve(((Detail.Run) run.detail()).file().path())))
                .isGreaterThan(2 * 48_000 * 2);
        hands.await("the first copy to go", () -> {
            try (Stream<Path> left = Files.list(job.resolve("takes"))) {
                return left.findAny().isEmpty();
            }
        });
        // What is kept of the run is still being written.
        hands.awaitRest();
    }

    @Test
    @DisplayName("is filled in as the last run from the same input was, but for rpm and wind")
    void whatTheRunBeforeNotedStandsThere() throws IOException {
        hands.type("live place", "gearbox top");
        hands.type("live wind", "4 kt");
        hands.type("live full scale", "50 m/s2");
        hands.type("live rpm as read", "4800");
        hands.click("live steps");
        hands.click("record");
        hands.await("a second", () -> recordedSeconds() >= 1);
        hands.press(KeyEvent.VK_SPACE);
        hands.await("the run in the job", () -> runs() == 1);
        hands.await("the result", () -> nextIs("Look at the run"));
        hands.awaitRest();

        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_1);
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_6);
        hands.await("the place", () -> text("live place").equals("gearbox top"));
        assertThat(text("live full scale")).isEqualTo("50 m/s2");
        assertThat(text("live wind")).isEmpty();
        assertThat(text("live rpm as read")).isEmpty();
    }

    private String text(String field) {
        return hands.find(field)
                .map(there -> ((javax.swing.JTextField) there).getText())
                .orElse("not there");
    }

    /** What is told of a run follows it as an entry of its own. */
    private int runs() {
        return record().standing(Kind.RUN).size();
    }

    private boolean nextIs(String words) {
        return hands.named("next live step").isEnabled()
                && ((JButton) hands.named("next live step")).getText().startsWith(words);
    }

    /** New words and their room don't come in one and the same moment: what is cut off for good counts. */
    private void nothingIsCutOff() {
        List<String> troubles = Hands.onEventThread(this::troubles);
        for (int look = 0; look < 100 && !troubles.isEmpty(); look++) {
            Hands.pause(100);
            troubles = Hands.onEventThread(this::troubles);
        }
        assertThat(troubles).isEmpty();
    }

    private List<String> troubles() {
        return Legible.troubles(hands.window().getContentPane());
    }

    @Test
    @DisplayName("brings takes that something broke off into the job with one button")
    void takesAreRescuedWithOneButton() throws IOException {
        Path take = Files.createDirectories(job.resolve("takes")).resolve("take-20260101-090000.csv");
        StringBuilder table = new StringBuilder("time (s),x (m/s2)\n");
        for (int i = 0; i < 4000; i++) {
            table.append(String.format(java.util.Locale.ROOT, "%.3f,%.4f%n", i / 500.0, Math.sin(0.4 * i)));
        }
        Files.writeString(take, table);
        Files.setLastModifiedTime(
                take,
                java.nio.file.attribute.FileTime.from(java.time.Instant.now().minusSeconds(60)));
        workplace.open(job);

        hands.click("rescue takes");

        hands.await("the run in the job", () -> runs() == 1);
        hands.await("the button to go", () -> hands.find("rescue takes").isEmpty());
        assertThat(take).doesNotExist();
    }

    @Test
    @DisplayName("has the installation of the job put right in the window, and keeps what the form has no field for")
    void theInstallationIsPutRightByALaterEntry() {
        java.util.Map<String, Object> before = record().installationNow();
        Hands.onEventThread(() -> {
            ((JobPane) hands.named("job pane")).commands().installation.actionPerformed(null);
            return null;
        });
        hands.type("remark", "teeth counted anew");
        hands.type("driven teeth", "52");
        nothingIsCutOff();
        hands.click("begin");

        hands.await("the entry", () -> record().events().size() == 1);
        java.util.Map<String, Object> after = record().installationNow();
        assertThat(((java.util.Map<?, ?>) after.get("reduction"))
                        .get("drivenTeeth")
                        .toString())
                .startsWith("52");
        assertThat(after.keySet()).isEqualTo(before.keySet());
        assertThat(after.get("propeller")).isEqualTo(before.get("propeller"));
    }

    @Test
    @DisplayName("goes through quiet, level, recording and result with the space bar alone")
    void spaceAlwaysGoesOnToTheNextStep() throws IOException {
        InventedSound standing = InventedSound.play(scratch, steady(60), 0, 0);
        try {
            Hands.pause(1000);
            hands.await("the focus on the next step", () -> hands.named("next live step")
                    .isFocusOwner());
            nothingIsCutOff();
            List<String> aims = heardFrom("level aim");
            hands.press(KeyEvent.VK_SPACE);
            hands.await("the quiet take", () -> nextIs("Check the level"));
            assertThat(aims).as("the countdown").anyMatch(each -> each.startsWith("Quiet, please"));
            // A click elsewhere doesn't turn the space bar into anything else.
            hands.click("live steps");
            hands.press(KeyEvent.VK_SPACE);
            hands.await("listening", () -> nextIs("Level is set"));
            nothingIsCutOff();
            hands.press(KeyEvent.VK_SPACE);
            hands.await("two seconds of the run", () -> recordedSeconds() >= 2);
            hands.press(KeyEvent.VK_SPACE);
            hands.await("the run in the job", () -> runs() == 1);
            hands.await("the result", () -> nextIs("Look at the run"));
            nothingIsCutOff();
            hands.photographNow(Path.of("target", "screens", "live-result.png"));
            hands.press(KeyEvent.VK_SPACE);
            hands.await("the run", () -> hands.find("live").isEmpty());
        } finally {
            standing.stop();
        }
    }

    /** Lines of an invented sensor, a thousand a second by the clock, until it is stopped; readable at both ends. */
    private static final class SentLines implements AutoCloseable {
        private static final double PROPELLER_HZ = 27.4; // 3993 rpm of the engine, by 51 : 21; live to some 25

        /** Once a turn, blade pass and its double, the crank once and its firing. */
        private static final double[] ORDERS = {1, 3, 6, 51.0 / 21, 2 * 51.0 / 21};

        private final PseudoTerminals pair;
        private final Thread sender;
        private volatile double amplitude;
        private volatile boolean over;

        SentLines(Path folder) throws IOException, InterruptedException {
            pair = PseudoTerminals.in(folder);
            sender = new Thread(() -> send(pair.far()), "invented sensor");
            sender.setDaemon(true);
            sender.start();
        }

        private void send(Path far) {
            java.util.Random noise = new java.util.Random(20261129);
            long began = System.nanoTime();
            long sent = 0;
            try (java.io.OutputStream out = Files.newOutputStream(far)) {
                while (!over) {
                    StringBuilder lines = new StringBuilder();
                    for (; sent < (System.nanoTime() - began) / 1_000_000; sent++) {
                        double atS = sent / 1000.0;
                        double shake = 0.01 * noise.nextGaussian();
                        for (double order : ORDERS) {
                            shake += amplitude * Math.sin(2 * Math.PI * order * PROPELLER_HZ * atS + order);
                        }
                        lines.append(String.format(java.util.Locale.ROOT, "%.3f,%.5f%n", atS, shake));
                    }
                    out.write(lines.toString().getBytes(java.nio.charset.StandardCharsets.US_ASCII));
                    out.flush();
                    Hands.pause(10);
                }
            } catch (IOException e) {
                // The other end went away with the test.
            }
        }

        void runs(double each) {
            amplitude = each;
        }

        @Override
        public void close() {
            over = true;
            pair.close();
        }
    }

    @Test
    @DisplayName("records a sensor on a serial port, its quiet taken from the same port, without a level to set")
    void aSensorOnASerialPortIsRecorded() throws IOException, InterruptedException {
        try (SentLines sensor = new SentLines(scratch)) {
            hands.choose("input", "sensor on a serial port");
            hands.awaitNamed("live baud");
            Hands.onEventThread(() -> {
                ((javax.swing.JComboBox<?>) hands.named("live port")).setSelectedItem(sensor.pair.port());
                return null;
            });
            assertThat(Hands.onEventThread(() -> hands.named("listen").isEnabled()))
                    .as("there is no gain to set")
                    .isFalse();
            nothingIsCutOff();
            hands.photographNow(Path.of("target", "screens", "live-sensor.png"));
            hands.click("quiet take");
            hands.await("the quiet take", 60, () -> nextIs("Start recording"));
            sensor.runs(1);
            hands.click("live steps");
            hands.click("next live step");
            hands.await("the speed", 60, () -> says("live rpm", "39") || says("live rpm", "40"));
            hands.press(KeyEvent.VK_SPACE);
            hands.await("the run in the job", () -> runs() == 1);
        }
        Event run = record().standing(Kind.RUN).get(0);
        Path kept = job.resolve(((Detail.Run) run.detail()).file().path());
        assertThat(kept.toString()).endsWith(".csv");
        List<String> lines = Files.readAllLines(kept);
        // No speed is shown before two seconds.
        assertThat(lines.size()).isGreaterThan(2000);
        assertThat(lines.stream().filter(line -> !line.matches("[\\d.]+,-?[\\d.]+")))
                .isEmpty();
    }

    @Test
    @DisplayName("refuses a quiet take while the engine runs, and asks for it again")
    void aQuietTakeWithTheEngineRunningIsRefused() throws IOException {
        InventedSound engine = InventedSound.play(scratch, steady(60), 0.05, 1);
        try {
            Hands.pause(1000);
            hands.type("live mark", "2");
            hands.click("quiet take");
            hands.await("the refusal", 60, () -> says("level aim", "not quiet"));
            assertThat(says("complaint", "quiet take")).isTrue();
            assertThat(Hands.onEventThread(() -> nextIs("Take the quiet again")))
                    .isTrue();
        } finally {
            engine.stop();
        }
    }

    @Test
    @DisplayName("tells on the level page what to do about the gain, and writes nothing")
    void theLevelIsSetBeforeTheRun() throws IOException {
        InventedSound loud = InventedSound.play(scratch, steady(20), 0.9, 1.5);
        try {
            hands.type("live mark", "2");
            hands.click("listen");
            hands.await("the clipping", () -> says("level clipped", "CLIPPED"));
            assertThat(says("level aim", "down")).isTrue();
        } finally {
            loud.stop();
        }
        InventedSound soft = InventedSound.play(scratch, steady(20), 0.05, 1);
        try {
            hands.await("a good level", () -> says("level aim", "Good"));
            hands.photograph(Path.of("target", "screens", "level.png"));
        } finally {
            soft.stop();
        }
        hands.click("listen");
        hands.await("the end of listening", () -> hands.named("quiet take").isEnabled());
        try (Stream<Path> files = Files.walk(job)) {
            assertThat(files.filter(Files::isRegularFile).map(Path::getFileName).map(Path::toString))
                    .containsOnly("job.json", "job.lock");
        }
    }

    /**
     * Fifteen frames a second with less than half a core is wanted on a machine that does nothing else; the processor
     * time is that of the whole program, with capture and analysis. The figures are written down, not asserted: they
     * are those of the machine.
     */
    @Test
    @Tag("long")
    @DisplayName("shows speed, orders, spectrum, waterfall and dwells, and leads through the steps")
    void theLiveScreenKeepsUp() throws IOException {
        hands.type("live speeds", "4000, 4800");
        hands.type("live mark", "2");
        SpeedProfile speed = SpeedProfile.startingAt(InventedSound.hz(4000))
                .thenDwell(45)
                .thenRampTo(InventedSound.hz(4800), 4)
                .thenDwell(60);
        Frames frames = Frames.count();
        EventThreadWatch watch = EventThreadWatch.begin();
        InventedSound playing = InventedSound.play(scratch, speed, 0.05, 1);
        try {
            hands.click("record");
            hands.await("the speed", 40, () -> says("live rpm", "40") || says("live rpm", "39"));
            assertThat(hands.text("live dwell")).contains("hold 4000 rpm");
            Hands.pause(5000);

            watch.forget();
            frames.forget();
            long cpu = cpuNanos();
            long began = System.nanoTime();
            Hands.pause(15_000);
            double seconds = (System.nanoTime() - began) / 1e9;
            double cores = (cpuNanos() - cpu) / 1e9 / seconds;
            double rate = frames.count / seconds;
            List<Long> blocks = watch.blocksMs();
            Files.writeString(
                    Path.of("target", "live-screen.txt"),
                    String.format(
                            java.util.Locale.ROOT,
                            "%.1f frames a second, %.2f of a core, events over 50 ms: %s%n",
                            rate,
                            cores,
                            blocks));
            assertThat(capHeight("live rpm")).as("pixels of a figure's height").isGreaterThanOrEqualTo(60);
            hands.photographNow(Path.of("target", "screens", "live.png"));

            hands.await("the second dwell", 90, () -> says("live dwell", "hold 4800 rpm"));
            hands.await("progress", 60, () -> ((JProgressBar) hands.named("dwell bar")).getValue() > 300);
            assertThat(hands.text("live blade pass")).endsWith(" FS");
            assertThat(hands.text("live errors")).contains("blade pass ± ");
            hands.photographNow(Path.of("target", "screens", "live-later.png"));
            hands.press(KeyEvent.VK_SPACE);
            hands.await("the run in the job", () -> runs() == 1);
        } finally {
            playing.stop();
            watch.end();
            frames.end();
        }
    }

    /** Common practice, no source: a figure reads at 200 times its height; 60 pixels are 10 mm at 152 dots an inch. */
    private int capHeight(String name) {
        return Hands.onEventThread(() -> (int) hands.named(name)
                .getFont()
                .createGlyphVector(new java.awt.font.FontRenderContext(null, true, true), "8")
                .getVisualBounds()
                .getHeight());
    }

    private static long cpuNanos() {
        return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
                .getProcessCpuTime();
    }

    /** Counts how often something on screen was drawn anew. */
    private static final class Frames extends RepaintManager {
        private final RepaintManager before = RepaintManager.currentManager(null);
        private volatile int count;

        static Frames count() {
            Frames frames = new Frames();
            Hands.onEventThread(() -> {
                RepaintManager.setCurrentManager(frames);
                return null;
            });
            return frames;
        }

        @Override
        public void paintDirtyRegions() {
            count++;
            super.paintDirtyRegions();
        }

        void forget() {
            count = 0;
        }

        void end() {
            Hands.onEventThread(() -> {
                RepaintManager.setCurrentManager(before);
                return null;
            });
        }
    }
}
