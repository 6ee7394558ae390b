package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.StartJob;
import evenblade.keep.practice.PracticeInstallation;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javax.swing.JComboBox;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@Tag("long")
@DisplayName("A program that is killed while somebody types")
class KilledWhileTypingTest {
    private static final String TYPED = "typed";
    private static final String REMARK = "Left socket feels dry, grease is grey";

    @TempDir
    Path scratch;

    /** The program that gets killed: fills half of two forms, says so, and waits. */
    static final class HalfFilled {
        private HalfFilled() {}

        public static void main(String[] args) throws InterruptedException {
            Path scratch = Path.of(args[0]);
            Workplace place = Workplace.in(scratch);
            place.open(scratch.resolve("job"));
            place.hands().click("add note");
            place.hands().type("text", REMARK);
            Hands.onEventThread(() -> {
                ((JobPane) place.hands().named("job pane")).commands().pitch.actionPerformed(null);
                return null;
            });
            place.hands().type("reading 1", "17.4");
            place.hands().choose("reference", "level");
            Hands.pause(500); // twice the promised moment until it is on the disk, and some
            System.out.println(TYPED);
            Thread.sleep(60_000);
        }
    }

    @Test
    @DisplayName("has kept every field and choice of the half-filled forms")
    void keepsWhatWasTyped() throws IOException, InterruptedException {
        Display.require();
        Path job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        HalfFilled.class.getName(),
                        scratch.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(program.getInputStream(), StandardCharsets.UTF_8))) {
            assertThat(said.readLine()).isEqualTo(TYPED);
        } finally {
            program.destroyForcibly(); // SIGKILL: no hook, no last word
        }
        assertThat(program.waitFor(20, TimeUnit.SECONDS)).isTrue();
        try (Workplace place = Workplace.in(scratch)) {
            place.open(job);
            assertThat(Workplace.record(job).events()).isEmpty();
            place.hands().click("add note");
            assertThat(place.hands().text("text")).isEqualTo(REMARK);
            Hands.onEventThread(() -> {
                ((JobPane) place.hands().named("job pane")).commands().pitch.actionPerformed(null);
                return null;
            });
            assertThat(place.hands().text("reading 1")).isEqualTo("17.4");
            assertThat(String.valueOf(Hands.onEventThread(
                            () -> ((JComboBox<?>) place.hands().named("reference")).getSelectedItem())))
                    .isEqualTo("level");
        }
    }
}
