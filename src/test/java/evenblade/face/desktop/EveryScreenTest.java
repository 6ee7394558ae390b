package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.MakePractice;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.JTabbedPane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Goes to every page of two jobs and looks it over, at two sizes, in light and dark, in usual and large
 * text. The pictures lie in {@code target/screens} afterwards. Run it with {@code -Dsun.java2d.uiScale=1.5}
 * or {@code 2} in {@code argLine} for screens of finer points.
 */
@Tag("screen")
@Tag("long")
@DisplayName("Every page")
class EveryScreenTest {
    private static final Path PICTURES = Path.of("target", "screens");

    @TempDir
    Path scratch;

    private Workplace place;
    private String looks = "";
    private final List<String> troubles = new ArrayList<>();

    @AfterEach
    void close() {
        if (place != null) {
            place.close();
        }
    }

    @ParameterizedTest(name = "at {0} x {1}, text {2}, dark: {3}, inches: {4}")
    @DisplayName("has nothing cut off and nothing lying on anything else")
    // The last is what 1920 x 1200 leaves at 200 %.
    @CsvSource({"1366,768,16,false,false", "1920,1200,16,true,true", "960,600,16,false,true"})
    void nothingIsCutOff(int width, int height, int textPx, boolean dark, boolean inches) throws IOException {
        Settings settings = Settings.read(Workplace.memory(scratch));
        settings.dark(dark);
        settings.textPx(textPx);
        settings.inches(inches);
        settings.write();
        looks = width + "-" + textPx + (dark ? "-dark" : "-light") + "-"
                + System.getProperty("sun.java2d.uiScale", "1");
        place = Workplace.in(scratch, width, height);
        begin();
        Path practice = scratch.resolve("invented");
        MakePractice.make(practice, List.of(), 1, Optional.empty());
        place.open(practice);
        pages("three");
        entries("three");
        place.open(longNames());
        pages("four");
        entries("four");
        Files.write(PICTURES.resolve(looks + ".txt"), troubles);
        assertThat(troubles).isEmpty();
    }

    private void begin() {
        look("start");
        place.hands().click("practice");
        look("practice");
        place.hands().click("back");
        place.hands().click("new");
        look("new");
        place.hands().click("back");
        place.typeNewJob("typed");
        look("new-typed");
        place.hands().click("back");
        Hands.onEventThread(() -> {
            place.hands().window().look(Path.of("samples", "geared-three-blade", "before-accelerometer.wav"));
            return null;
        });
        everyTab("look", this::look);
        place.hands().click("back");
    }

    private void pages(String job) {
        JobPane pane = (JobPane) place.hands().named("job pane");
        pane.commands().adding().forEach(action -> page(job + "-add", action));
        pane.commands().looking().stream()
                .filter(action -> !action.equals(pane.commands().live))
                .forEach(action -> page(job + "-look", action));
    }

    private void page(String job, javax.swing.Action action) {
        Hands.onEventThread(() -> {
            action.actionPerformed(null);
            return null;
        });
        String name = job + "-"
                + String.valueOf(action.getValue(javax.swing.Action.NAME)).replaceAll("[^A-Za-z]+", "");
        everyTab(name, this::look);
    }

    private void entries(String job) {
        List<Event> events = Workplace.record(
                        job.equals("three") ? scratch.resolve("invented") : scratch.resolve("four"))
                .events();
        for (Kind kind : Kind.values()) {
            events.stream().filter(event -> event.kind() == kind).findFirst().ifPresent(event -> {
                Hands.onEventThread(() -> {
                    place.hands().window().showEntry(event);
                    return null;
                });
                everyTab(job + "-entry-" + kind, this::look);
            });
        }
    }

    private void everyTab(String name, Consumer<String> look) {
        place.hands().awaitRest();
        Optional<JTabbedPane> tabs = place.hands().findAny(JTabbedPane.class);
        if (tabs.isEmpty()) {
            look.accept(name);
            return;
        }
        for (int i = 0; i < tabs.get().getTabCount(); i++) {
            int tab = i;
            Hands.onEventThread(() -> {
                tabs.get().setSelectedIndex(tab);
                return null;
            });
            look.accept(name + "-" + (i + 1));
        }
    }

    private void look(String page) {
        place.hands().photograph(PICTURES.resolve(looks).resolve(page + ".png"));
        Hands.onEventThread(() -> Legible.troubles(place.hands().window().getContentPane()))
                .forEach(trouble -> troubles.add(looks + " " + page + ": " + trouble));
    }

    /** Four blades and names that are as long as they may get. */
    private Path longNames() throws IOException {
        Path file = scratch.resolve("four.json");
        Files.writeString(
                file,
                """
                { "name": "Invented long-winded amphibious two-seater with a pusher engine on a pylon, second of its kind",
                  "engine": { "cycle": "four-stroke", "cylinders": 6, "idleRpm": 1600, "maxRpm": 5800 },
                  "reduction": { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
                  "propeller": { "blades": 4, "diameter": "1.88 m", "rotation": "counter-clockwise" },
                  "limits": { "trackSpread": { "value": "1/8 in", "source": "an invented maker's sheet of instructions for ground-adjustable propellers, third edition" } } }
                """);
        Path job = scratch.resolve("four");
        MakePractice.make(job, List.of("mass-imbalance", "flange-run-out"), 3, Optional.of(file));
        String change = "Flange faced, all four sockets cleaned and greased, blades C and D changed over, bolts "
                + "torqued in three steps crosswise and marked, spinner left off, cowling closed again with new screws.";
        WriteEntry.append(
                job, new Entry(Optional.empty(), Optional.empty(), change, new evenblade.keep.job.Detail.Correction()));
        return job;
    }
}
