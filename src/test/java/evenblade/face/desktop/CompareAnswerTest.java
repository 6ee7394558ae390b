package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.PhoneTable;
import evenblade.face.cli.Program;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import java.awt.event.KeyEvent;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("Two runs that differ fivefold with no change between them")
class CompareAnswerTest {
    @TempDir
    Path scratch;

    @Test
    @DisplayName("are asked about beside their comparison, and the answer stands in the record")
    void isAnswered() throws IOException {
        Path installation = Files.writeString(
                scratch.resolve("stand.json"),
                """
                { "engine": { "cycle": "two-stroke", "cylinders": 2, "idleRpm": 2000, "maxRpm": 6500 },
                  "reduction": { "ratio": 2.43 }, "propeller": { "blades": 3 } }
                """);
        Path job = scratch.resolve("job");
        done("job", "new", job.toString(), "--installation", installation.toString());
        done("job", "add", job.toString(), table("one", 0.3, 1).toString(), "--engine-rpm", "4800");
        done("job", "add", job.toString(), table("other", 1.5, 2).toString(), "--engine-rpm", "4800");
        Event later = Workplace.record(job).standing(Kind.RUN).get(1);
        try (Workplace place = Workplace.in(scratch)) {
            place.open(job);
            place.hands().press(KeyEvent.VK_CONTROL, KeyEvent.VK_3);
            String button = "nothing changed before " + later.id();
            place.hands().awaitNamed(button);
            place.hands().awaitRest();
            place.hands().click(button);
            place.hands().await("the answer", () -> place.hands().find(button).isEmpty());
            place.hands().awaitRest();
        }
        List<Event> now = Workplace.record(job).standing(Kind.RUN);
        assertThat(((Detail.Run) now.get(1).detail()).conditions().get(Condition.NOTHING_CHANGED))
                .isPresent();
        assertThat(((Detail.Run) now.get(0).detail()).conditions().get(Condition.NOTHING_CHANGED))
                .isEmpty();
    }

    private Path table(String name, double once, long seed) throws IOException {
        return PhoneTable.write(scratch.resolve(name + ".csv"), 4800, once, seed);
    }

    private static void done(String... words) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream told = new PrintStream(said, true, StandardCharsets.UTF_8);
        assertThat(Program.run(words, told, told))
                .as(said.toString(StandardCharsets.UTF_8))
                .isZero();
    }
}
