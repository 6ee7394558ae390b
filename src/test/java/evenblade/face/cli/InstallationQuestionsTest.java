package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.InstallationFile;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringReader;
import java.io.StringWriter;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("Asking for an installation")
class InstallationQuestionsTest {
    private final StringWriter shown = new StringWriter();

    private Installation asked(String... answers) throws IOException {
        BufferedReader lines = new BufferedReader(new StringReader(String.join("\n", answers) + "\n"));
        String text = JsonWriter.write(new InstallationQuestions(lines, new PrintWriter(shown)).ask());
        return InstallationFile.of(JsonDocument.parse(text, "answers"));
    }

    @Test
    @DisplayName("takes tooth counts, lengths with their unit and a limit with its source")
    void everything() throws IOException {
        Installation known = asked(
                "invented",
                "four-stroke",
                "4",
                "1600",
                "5800",
                "gear",
                "21",
                "51",
                "3",
                "68 in",
                "clockwise",
                "1/8 in",
                "invented sheet");
        assertThat(known.engine().cycle()).isEqualTo(Engine.Cycle.FOUR_STROKE);
        assertThat(known.reduction().ratio()).isEqualTo(51.0 / 21);
        assertThat(known.propeller().blades()).isEqualTo(3);
        assertThat(known.propeller().diameter().orElseThrow().inches()).isEqualTo(68);
        assertThat(known.limits()).hasSize(1);
    }

    @Test
    @DisplayName(
            "leaves out what an empty line leaves out, and asks no cylinders of a motor and no teeth of a direct drive")
    void theLeast() throws IOException {
        Installation known = asked("", "electric", "", "", "direct", "2", "", "", "");
        assertThat(known.engine().cylinders()).isZero();
        assertThat(known.propeller().blades()).isEqualTo(2);
        assertThat(shown.toString()).doesNotContain("cylinders", "Teeth");
    }

    @Test
    @DisplayName("asks again where an answer can't be, and says what it takes; gives up after three")
    void asksAgain() throws IOException {
        assertThat(asked("", "two-stroke", "many", "2", "", "", "belt", "", "2.43", "3", "", "", "")
                        .reduction()
                        .ratio())
                .isEqualTo(2.43);
        assertThat(shown.toString()).contains("'many', expected a whole number from 1");
        assertThatThrownBy(() -> asked("", "steam", "steam", "steam"))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("'steam', expected one of two-stroke, four-stroke, electric");
    }

    @Test
    @DisplayName("says at which question the answers ended")
    void endsEarly() {
        assertThatThrownBy(() -> asked("", "four-stroke"))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("Number of cylinders")
                .hasMessageContaining("the end of the answers");
    }
}
