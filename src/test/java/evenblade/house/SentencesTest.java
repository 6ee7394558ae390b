package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("Facts first, words last")
class SentencesTest {
    private static final Path MAIN = Path.of("src", "main", "java", "evenblade");
    private static final Pattern COMMENT = Pattern.compile("/\\*.*?\\*/|(?m)^\\s*//.*$", Pattern.DOTALL);
    /** Up to the next semicolon or brace outside of quotes. */
    private static final Pattern STATEMENT =
            Pattern.compile("(?:\"(?:\\\\.|[^\"\\\\\\n]++)*+\"|'(?:\\\\.|[^'\\\\])'|[^;{}\"']++)++");

    private static final Pattern TEXT = Pattern.compile("\"((?:\\\\.|[^\"\\\\\\n])*)\"");
    private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
    /** What was wrong with an input is said where it was read. */
    private static final Pattern REFUSES = Pattern.compile("found\\(|refuse|BadInput|Exception\\(");
    /** Beside patterns, which have a backslash: parts of refusals that stand in a constant or a variable, and what a file names itself. */
    private static final Set<String> KNOWN = Set.of(
            "%.6f, the ratio of %d to %d teeth",
            "one blade for each hub position, like 1=A,2=B,3=C", "%s at %.0f Hz, channels: %d");

    @ParameterizedTest
    @ValueSource(strings = {"machine", "measure", "judge"})
    @DisplayName("No room from the engine on paper to the verdicts makes a sentence, but where it refuses an input")
    void noSentenceIsMade(String storey) throws IOException {
        List<String> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(MAIN.resolve(storey))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                sentences(Files.readString(file)).forEach(text -> found.add(file.getFileName() + ": " + text));
            }
        }
        assertThat(found)
                .as("give a code and its values, and put the words into phrases.properties")
                .isEmpty();
    }

    private static List<String> sentences(String source) {
        List<String> found = new ArrayList<>();
        Matcher statements = STATEMENT.matcher(COMMENT.matcher(source).replaceAll(""));
        while (statements.find()) {
            if (REFUSES.matcher(statements.group()).find()) {
                continue;
            }
            TEXT.matcher(statements.group())
                    .results()
                    .map(text -> text.group(1))
                    .filter(text ->
                            text.contains(" ") && WORD.matcher(text).results().count() >= 3)
                    .filter(text -> !text.contains("\\\\") && !KNOWN.contains(text))
                    .forEach(found::add);
        }
        return found;
    }

    @Test
    @DisplayName("The rule sees a sentence, and lets a refusal and a name pass")
    void theRuleSees() {
        assertThat(sentences("class A { String a() { return \"The track was the same.\"; } }"))
                .containsExactly("The track was the same.");
        assertThat(sentences("/* \"one two three\" */ throw BadInput.in(x).found(\"no such file\", \"one of them\");"))
                .isEmpty();
        assertThat(sentences("String name = \"blade pass\";")).isEmpty();
    }
}
