package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("What the program's source says")
class SourcesTest {
    private static final Path PROGRAM = Path.of("src/main/java/evenblade");

    private static final Pattern CONSTANT = Pattern.compile(
            "\\s*(public |private |protected )?static final (double|float|long|int|short|byte)(\\[])?\\s+\\w+\\s*=.*");
    private static final Pattern FRACTION = Pattern.compile("(?<![\\w.])(\\d+\\.\\d+|\\d+(\\.\\d+)?e-?\\d+)(?!\\w)");
    /** A half, wholes that a double needs as such, a full turn, and thousands of units. */
    private static final Set<Double> SELF_EVIDENT = Set.of(0.0, 0.5, 1.0, 2.0, 3.0, 360.0, 1e3, 1e-3, 1e6, 1e-6, 1e9);

    private static final Pattern NUMBER = Pattern.compile("(?<!\\w)\\d");
    private static final Pattern TEXT = Pattern.compile("\"(\\\\.|[^\"\\\\])*\"");
    private static final Pattern OPTION = Pattern.compile("(^|[^-\\w])--[a-z]");
    private static final Pattern ROUNDED = Pattern.compile("%[-+0-9.]*[efg]");
    /** The numbers beside an axis follow its own steps. */
    private static final Set<String> FORMATTERS = Set.of("FigureFormat.java", "Axis.java");

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

    @ParameterizedTest
    @ValueSource(
            strings = {
                "base/numeric",
                "machine",
                "measure/signal",
                "measure/orders",
                "measure/lines",
                "measure/live",
                "measure/soundcheck",
                "judge"
            })
    @DisplayName("Every fraction in a formula says beside it or above it where it comes from")
    void everyFractionHasAReason(String rooms) {
        List<String> bare = new ArrayList<>();
        for (Path file : files()) {
            if (!file.startsWith(PROGRAM.resolve(rooms))) {
                continue;
            }
            List<String> lines = read(file).lines().toList();
            for (int i = 1; i < lines.size(); i++) {
                String line = TEXT.matcher(lines.get(i)).replaceAll("");
                boolean comment = line.contains("//") || line.strip().startsWith("*") || line.contains("/**");
                boolean chosen = FRACTION.matcher(line)
                        .results()
                        .anyMatch(number -> !SELF_EVIDENT.contains(Double.parseDouble(number.group())));
                if (chosen && !comment && !listed(lines, i)) {
                    bare.add(file.getFileName() + ":" + (i + 1) + " " + line.strip());
                }
            }
        }
        assertThat(bare).as("fractions without a reason or a source").isEmpty();
    }

    /** Whether the line above has a reason, or the statement that began further up has one. */
    private static boolean listed(List<String> lines, int at) {
        int start = at;
        while (!lines.get(start - 1).isBlank()
                && !lines.get(start - 1).matches(".*[;{}]\\s*(//.*)?")
                && !lines.get(start - 1).strip().matches("(//|/?\\*).*")) {
            start--;
        }
        return lines.get(start - 1).contains("//") || commented(lines, at) || commented(lines, start);
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
    @DisplayName("Figures are rounded in one place, so that no face writes a number otherwise than another")
    void figuresAreWrittenInOnePlace() {
        List<String> written = new ArrayList<>();
        for (Path file : files()) {
            boolean shown = file.startsWith(PROGRAM.resolve("tell")) || file.startsWith(PROGRAM.resolve("face"));
            if (shown && !FORMATTERS.contains(file.getFileName().toString())) {
                TEXT.matcher(read(file))
                        .results()
                        .filter(text -> ROUNDED.matcher(text.group()).find())
                        .forEach(text -> written.add(file.getFileName() + " " + text.group()));
            }
        }
        assertThat(written).as("FigureFormat rounds").isEmpty();
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
