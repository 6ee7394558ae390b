package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("What the program's source says")
class SourcesTest {
    private static final Path PROGRAM = Path.of("src/main/java/evenblade");

    private static final Pattern CONSTANT = Pattern.compile(
            "\\s*(public |private |protected )?static final (double|float|long|int|short|byte)(\\[])?\\s+\\w+\\s*=.*");
    private static final Pattern NUMBER = Pattern.compile("(?<!\\w)\\d");
    private static final Pattern TEXT = Pattern.compile("\"(\\\\.|[^\"\\\\])*\"");
    private static final Pattern OPTION = Pattern.compile("(^|[^-\\w])--[a-z]");
    private static final Pattern REPEATED = Pattern.compile("/\\*\\*\\s*(\\*\\s*)?The same\\b");

    @Test
    @DisplayName("Every number that was chosen says beside it or above it why it is this one")
    void everyNumberHasAReason() {
        List<String> bare = new ArrayList<>();
        for (Path file : files()) {
            List<String> lines = read(file).lines().toList();
            for (int i = 0; i < lines.size(); i++) {
                if (CONSTANT.matcher(lines.get(i)).matches()) {
                    String statement = statement(lines, i);
                    if (NUMBER.matcher(statement.substring(statement.indexOf('=')))
                                    .find()
                            && !statement.contains("//")
                            && !commented(lines, i)) {
                        bare.add(file.getFileName() + ":" + (i + 1) + " "
                                + lines.get(i).strip());
                    }
                }
            }
        }
        assertThat(bare).as("numbers without a reason or a source").isEmpty();
    }

    private static String statement(List<String> lines, int from) {
        StringBuilder statement = new StringBuilder();
        for (int i = from; i < lines.size(); i++) {
            statement.append(lines.get(i));
            if (lines.get(i).contains(";")) {
                break;
            }
        }
        return statement.toString();
    }

    private static boolean commented(List<String> lines, int at) {
        int above = at - 1;
        while (lines.get(above).strip().startsWith("@")) {
            above--;
        }
        String last = lines.get(above).strip();
        return last.endsWith("*/") || last.startsWith("//");
    }

    @Test
    @DisplayName("Options are spelt on the command line only: the window has none")
    void optionsAreSpeltOnTheCommandLine() {
        List<String> spelt = new ArrayList<>();
        for (Path file : files()) {
            if (!file.startsWith(PROGRAM.resolve("face/cli")) && !file.startsWith(PROGRAM.resolve("face/start"))) {
                TEXT.matcher(read(file))
                        .results()
                        .filter(text ->
                                OPTION.matcher(text.group().substring(1)).find())
                        .forEach(text -> spelt.add(file.getFileName() + " " + text.group()));
            }
        }
        assertThat(spelt).isEmpty();
    }

    @Test
    @DisplayName("No description begins 'The same': it says itself what it is")
    void nothingIsDescribedAsTheSame() {
        assertThat(files()).noneMatch(file -> REPEATED.matcher(read(file)).find());
    }

    private static List<Path> files() {
        try (Stream<Path> all = Files.walk(PROGRAM)) {
            return all.filter(file -> file.toString().endsWith(".java"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
