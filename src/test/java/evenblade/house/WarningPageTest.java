package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.WarningCode;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** With {@code -Dwarnings.write=true} the page is written anew. */
@DisplayName("The page of warnings")
class WarningPageTest {
    private static final Path PAGE = Path.of("docs", "warnings.md");

    @Test
    @DisplayName("has every warning of the program with its code, its words, what it means and what to do")
    void isMadeFromTheCode() throws IOException {
        String page = String.join("\n", page()) + "\n";
        if (Boolean.getBoolean("warnings.write")) {
            Files.writeString(PAGE, page);
        }
        List<String> lines = Files.readAllLines(PAGE);
        assertThat(page().stream().filter(line -> !lines.contains(line)))
                .as(
                        "lines that the page lacks; to write it anew, run this test with JAVA_TOOL_OPTIONS=-Dwarnings.write=true")
                .isEmpty();
        assertThat(lines).hasSameSizeAs(page());
    }

    private static List<String> page() {
        List<String> lines = new ArrayList<>(List.of(
                "# All warnings",
                "",
                "The program shows a warning with its code in brackets, like `[clipping]`. Find the code here. Dots stand where the",
                "program puts a figure or a name. This page is made from the program itself; a test keeps it so.",
                "",
                "**Before a hand goes near the propeller: ignition off (electric: battery unplugged). Treat it as live all the same.**",
                "",
                "| code | what it says | what it means | what to do |",
                "| --- | --- | --- | --- |"));
        Stream.of(WarningCode.values())
                .sorted(Comparator.comparing(WarningCode::word))
                .map(code -> "| `" + code.word() + "` | " + cell(Phrases.form(code)) + " | "
                        + cell(Phrases.meaning(code)) + " | " + cell(Phrases.cure(code)) + " |")
                .forEach(lines::add);
        return lines;
    }

    private static String cell(String text) {
        return text.replace("|", "\\|").strip();
    }
}
