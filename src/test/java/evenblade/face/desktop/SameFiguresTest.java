package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import evenblade.face.app.MakePractice;
import evenblade.face.cli.Program;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import java.awt.Component;
import java.awt.Container;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@Tag("long")
@DisplayName("The window shows what the command line writes, to the last digit:")
class SameFiguresTest {
    /** A number as people read it, with its sign; dates and names have none of their own here. */
    private static final Pattern NUMBER = Pattern.compile("[−+]?\\d+(\\.\\d+)?");

    @TempDir
    Path scratch;

    private Workplace place;
    private Path job;
    private Event first;
    private Event put;

    @BeforeEach
    void open() throws IOException {
        job = scratch.resolve("job");
        MakePractice.make(job, List.of(), 1, Optional.empty());
        List<Event> runs = Workplace.record(job).standing(Kind.RUN);
        first = runs.get(0);
        put = runs.get(3);
        place = Workplace.in(scratch, 1600, 900);
        place.open(job);
    }

    @AfterEach
    void close() {
        if (place != null) {
            place.close();
        }
    }

    @Test
    @DisplayName("the speed and every order of a run")
    void ordersOfARun() throws IOException {
        Hands.onEventThread(() -> {
            place.hands().window().showEntry(first);
            return null;
        });
        place.hands().awaitRest();
        Detail.Run run = (Detail.Run) first.detail();
        Path installation = scratch.resolve("installation.json");
        Files.writeString(installation, installation());
        String written = commandLine(
                "orders",
                job.resolve(run.file().path()).toString(),
                "--installation",
                installation.toString(),
                "--full-scale",
                run.settings().fullScale().orElseThrow(),
                "--mark-channel",
                run.settings().markChannel().orElseThrow());
        assertThat(written).contains(place.hands().text("speed"));
        assertThat(place.hands().text("speed known").split("  ·  "))
                .hasSizeGreaterThan(2)
                .allSatisfy(known -> assertThat(written).contains(known.replaceFirst("^[a-z ]*? ", "")));
        List<String> shown = numbers(words("orders"));
        assertThat(shown).hasSizeGreaterThan(30);
        assertThat(numbers(written)).containsAll(shown);
    }

    @Test
    @DisplayName("every change between two runs")
    void changes() {
        page(() -> place.hands().press(java.awt.event.KeyEvent.VK_CONTROL, java.awt.event.KeyEvent.VK_3));
        place.hands().choose("before", first);
        place.hands().choose("after", put);
        place.hands().click("do compare");
        place.hands().awaitRest();
        place.hands().tab("compare tabs", "In words");
        String written = commandLine("compare", job.toString(), first.id(), put.id());
        List<String> shown = numbers(words("comparison words"));
        assertThat(shown).hasSizeGreaterThan(40);
        assertThat(numbers(written)).containsAll(shown);
    }

    @Test
    @DisplayName("every finding with its evidence")
    void findings() {
        page(() -> place.hands().press(java.awt.event.KeyEvent.VK_CONTROL, java.awt.event.KeyEvent.VK_1));
        String written = commandLine("findings", job.toString());
        List<String> shown = paragraphs("findings").stream()
                .map(line -> line.replaceFirst("^(!|For:|Against:|Carries:|How sure:|Next:|Cured:) +", ""))
                .toList();
        assertThat(shown).hasSizeGreaterThan(10).allSatisfy(line -> assertThat(written)
                .contains(line));
    }

    @Test
    @DisplayName("every number of the track")
    void track() {
        page(() -> place.hands().press(java.awt.event.KeyEvent.VK_CONTROL, java.awt.event.KeyEvent.VK_2));
        String written = commandLine("tracking", job.toString());
        List<String> shown = numbers(words("track words"));
        assertThat(shown).hasSizeGreaterThan(20);
        assertThat(numbers(written)).containsAll(shown);
    }

    private void page(Runnable asked) {
        asked.run();
        place.hands().awaitRest();
    }

    private String installation() throws IOException {
        String shown = commandLine("job", "show", job.toString(), "--json");
        return new ObjectMapper().readTree(shown).get("installation").toString();
    }

    private String words(String page) {
        return Hands.onEventThread(() -> {
            JTextComponent text = (JTextComponent) place.hands().named(page);
            return plain(text.getDocument().getText(0, text.getDocument().getLength()));
        });
    }

    private List<String> paragraphs(String page) {
        return Hands.onEventThread(() -> {
            List<String> found = new ArrayList<>();
            collect(place.hands().named(page), found);
            return found;
        });
    }

    private static void collect(Container in, List<String> found) {
        for (Component each : in.getComponents()) {
            if (each instanceof WrappedLabel paragraph) {
                found.add(plain(((JTextComponent) paragraph).getText()));
            } else if (each instanceof Container inner) {
                collect(inner, found);
            }
        }
    }

    private static List<String> numbers(String text) {
        List<String> numbers = new ArrayList<>();
        Matcher matcher = NUMBER.matcher(text);
        while (matcher.find()) {
            numbers.add(matcher.group());
        }
        return numbers;
    }

    /** What a command writes, with its line breaks and columns closed up. */
    private static String commandLine(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
        return plain(out.toString(StandardCharsets.UTF_8));
    }

    private static String plain(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }
}
