package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Warning;
import evenblade.base.units.SignalUnit;
import evenblade.face.app.LiveRecording;
import evenblade.face.app.RunBefore;
import evenblade.face.app.StartJob;
import evenblade.input.capture.ChannelLevel;
import evenblade.input.capture.ChannelLevel.Clip;
import evenblade.input.capture.Ending;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.measure.live.LiveFigures;
import evenblade.measure.live.LiveFigures.Figure;
import evenblade.measure.live.StepProgress;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.font.FontRenderContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import javax.swing.JLabel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures and capitals of 16 minutes of arc at 2 m are 2000 mm × tan(16°/60) = 9.31 mm high. A screen of 14 inches and
 * 1366 × 768 points has √(1366² + 768²) / 14 = 111.9 points an inch: 41.0 points. One of 1920 × 1200 has 161.7: 59.3
 * points. At 200 % the latter shows 960 × 600 points: 29.6.
 */
@Tag("screen")
@DisplayName("What is read at two metres while a run is recorded")
class FarLettersTest {
    private static final Path PICTURES = Path.of("target", "screens");
    private static final double WANTED_MM = 2000 * Math.tan(Math.toRadians(16.0 / 60));
    private static final int LEAST_PICTURE_PX = 160; // smaller no picture can be read
    private static final String LONG_NAME = "Invented pick-up on the gearbox, upright"; // 40 letters
    private static final String OTHER_NAME = "Invented pick-up on the engine, sideways"; // 40 letters

    @TempDir
    Path scratch;

    private Workplace place;
    private final List<String> troubles = new ArrayList<>();
    private final List<String> sizes = new ArrayList<>();
    private final Shown shown = new Shown();

    @AfterEach
    void close() {
        shown.stop();
        if (place != null) {
            place.close();
        }
    }

    /** A recording that shows what it is told to. */
    private static final class Shown implements LiveRecording {
        private final CountDownLatch over = new CountDownLatch(1);
        private volatile View view =
                new View(0, List.of(), LiveFigures.NONE, Optional.empty(), Optional.empty(), List.of(), false);

        @Override
        public String device() {
            return "invented input";
        }

        @Override
        public Path file() {
            return Path.of("invented.wav");
        }

        @Override
        public Optional<RunBefore> before() {
            return Optional.empty();
        }

        @Override
        public List<Warning> leftovers() {
            return List.of();
        }

        @Override
        public View view() {
            return view;
        }

        @Override
        public void skipStep() {}

        @Override
        public void repeatStep() {}

        @Override
        public void stop() {
            over.countDown();
        }

        @Override
        public Recorded record() {
            try {
                over.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return new Recorded(file(), Ending.STOPPED, 1, 0, Optional.empty(), List.of());
        }
    }

    private record Case(
            String name,
            double rpm,
            Figure once,
            Figure pass,
            SignalUnit unit,
            StepProgress step,
            List<ChannelLevel> levels) {}

    private static StepProgress step(int number, int of, double rpm, double held, double wanted) {
        return new StepProgress(
                number,
                of,
                rpm,
                held == 0 ? StepProgress.State.GO_THERE : StepProgress.State.HOLD,
                held,
                wanted,
                Optional.empty(),
                Optional.empty());
    }

    private static ChannelLevel level(String name, double db, Clip clip) {
        return new ChannelLevel(name, db - 3, db, clip == Clip.NONE ? 0 : 1000, clip);
    }

    private static List<Case> cases() {
        Figure once = new Figure(0.0123, 0.0001, true);
        Figure pass = new Figure(0.2, 0.0002, true);
        return List.of(
                new Case(
                        "one",
                        4800,
                        once,
                        pass,
                        SignalUnit.FULL_SCALE,
                        step(2, 5, 4800, 10, 20),
                        List.of(level(LONG_NAME, -12, Clip.NONE))),
                new Case(
                        "two",
                        4800,
                        once,
                        new Figure(0.00184, 0, false),
                        SignalUnit.METRE_PER_SECOND_SQUARED,
                        step(2, 5, 4800, 0, 20),
                        List.of(level(LONG_NAME, -12, Clip.NONE), level(OTHER_NAME, -60, Clip.NONE))),
                new Case(
                        "many",
                        12_000,
                        new Figure(0.00184, 0, false),
                        new Figure(0.0123, 0.0015, true),
                        SignalUnit.METRE_PER_SECOND_SQUARED,
                        step(10, 12, 12_000, 140, 120),
                        List.of(
                                level("left", -30, Clip.NONE),
                                level(LONG_NAME, -12, Clip.NONE),
                                level("third", -40, Clip.NONE))),
                new Case(
                        "clipped",
                        5800,
                        new Figure(0.00184, 0, false),
                        new Figure(0.00184, 0, false),
                        SignalUnit.MILLIMETRE_PER_SECOND,
                        step(2, 5, 5800, 30, 20),
                        List.of(level(LONG_NAME, 0, Clip.FULL_SCALE), level(OTHER_NAME, -4, Clip.BELOW_FULL_SCALE))),
                new Case("sensor", 4000, once, pass, SignalUnit.STANDARD_GRAVITY, step(1, 5, 4000, 10, 20), List.of()));
    }

    @ParameterizedTest(name = "on {0} x {1} points, text {2}, dark: {3}")
    @DisplayName("has letters of 16 minutes of arc on a screen of 14 inches, and nothing is cut off")
    @CsvSource({
        "1366,768,16,false",
        "1366,768,20,true",
        "1366,768,16,true",
        "1920,1200,16,false",
        "1920,1200,16,true",
        "960,600,16,false"
    })
    void lettersAreLargeEnough(int width, int height, int textPx, boolean dark) throws Exception {
        Settings settings = Settings.read(Workplace.memory(scratch));
        settings.dark(dark);
        settings.textPx(textPx);
        settings.write();
        place = Workplace.in(scratch, width, height);
        Path job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        place.open(job);
        Hands hands = place.hands();
        JobPane pane = (JobPane) hands.named("job pane");
        Hands.onEventThread(() -> {
            pane.commands().live.actionPerformed(null);
            return null;
        });
        hands.await("the inputs", () -> hands.named("next live step").isEnabled());
        Hands.onEventThread(() -> {
            ((LivePane) hands.named("live")).record(shown, 5);
            return null;
        });
        double wantedPx = Math.hypot(width, height) / 14 / 25.4 * WANTED_MM;
        String looks = width + "x" + height + "-" + textPx + (dark ? "-dark" : "-light");
        for (Case each : cases()) {
            shown.view = new LiveRecording.View(
                    754,
                    each.levels(),
                    new LiveFigures(
                            Optional.of(new Figure(each.rpm(), 1, true)),
                            Optional.of(new Figure(each.rpm() * 21 / 51, 1, true)),
                            Optional.of(each.once()),
                            Optional.of(each.pass()),
                            each.unit()),
                    Optional.empty(),
                    Optional.of(each.step()),
                    List.of(),
                    false);
            hands.await(
                    "the case",
                    () -> text("live dwell").startsWith("Step " + each.step().number() + " of ")
                            && text("live rpm").equals(String.valueOf((int) each.rpm())));
            look(looks + "-" + each.name(), wantedPx);
        }
        LiveRecording.View last = shown.view;
        shown.view = new LiveRecording.View(
                754, last.levels(), LiveFigures.NONE, Optional.empty(), Optional.empty(), List.of(), false);
        hands.await("the end of the steps", () -> text("live dwell").contains("Stop"));
        look(looks + "-done", wantedPx);
        shown.view = new LiveRecording.View(
                754, last.levels(), LiveFigures.NONE, Optional.empty(), Optional.empty(), List.of(), true);
        hands.await("the word of it", () -> text("live dwell").startsWith("Live stopped"));
        look(looks + "-stopped", wantedPx);
        Files.createDirectories(PICTURES);
        Files.write(PICTURES.resolve("far-letters-" + looks + ".txt"), sizes);
        assertThat(troubles).isEmpty();
    }

    private String text(String name) {
        return ((JLabel) place.hands().named(name)).getText();
    }

    private void look(String name, double wantedPx) {
        Hands.onEventThread(() -> {
            place.hands().window().validate();
            return null;
        });
        // Without waiting for an idle X server, which may take ten seconds to say so.
        place.hands().photographNow(PICTURES.resolve("far-" + name + ".png"));
        Hands.onEventThread(() -> {
            Stream.of("live rpm", "live once", "live blade pass", "live level", "live level 2", "live dwell")
                    .filter(far -> place.hands().find(far).isPresent())
                    .forEach(far -> measure(name, far, wantedPx));
            int high = place.hands().picture("live screen").getHeight();
            if (high < LEAST_PICTURE_PX) {
                troubles.add(name + ": pictures only " + high + " points high");
            }
            Legible.troubles(place.hands().window().getContentPane())
                    .forEach(trouble -> troubles.add(name + ": " + trouble));
            return null;
        });
    }

    private void measure(String name, String far, double wantedPx) {
        JLabel label = (JLabel) place.hands().named(far);
        Font font = label.getFont();
        double high = font.createGlyphVector(new FontRenderContext(null, true, true), "1")
                .getVisualBounds()
                .getHeight();
        FontMetrics letters = label.getFontMetrics(font);
        sizes.add(String.format(
                Locale.ROOT,
                "%s %s '%s': %.1f points, %.1f minutes of arc",
                name,
                far,
                label.getText(),
                high,
                high / wantedPx * 16));
        if (high < wantedPx) {
            troubles.add(sizes.get(sizes.size() - 1));
        }
        if (letters.stringWidth(label.getText()) > label.getWidth()) {
            troubles.add(name + " " + far + " is cut off: " + label.getText());
        }
        if (high > label.getHeight()) {
            troubles.add(name + " " + far + " is cut off in height");
        }
    }
}
