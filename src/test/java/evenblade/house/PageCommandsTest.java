package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.cli.Program;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Runs each line of a page that begins with {@code $ evenblade}, in the order of the page, and holds what it prints against
 * what stands below it. Where nothing stands below it, only its exit status is held. A last line {@code [...]} stands for
 * all that follows. Folders and files called {@code shop} or {@code my-…} are made in a folder of their own.
 *
 * <p>With {@code -Dpages.write=true} what is shown is written anew.
 */
@DisplayName("The commands of the pages")
class PageCommandsTest {
    private static final String PROMPT = "$ evenblade ";
    private static final String REST = "[...]";
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");
    private static final Pattern OWN = Pattern.compile("(shop|my-)[^\\s]*");
    /** Entries made now carry the time of the test. */
    private static final Pattern TIME = Pattern.compile(
            "\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d( [+-]\\d\\d:\\d\\d)?|\\d{1,2} [A-Z][a-z]{2} \\d{4}, \\d\\d:\\d\\d");
    /** A day of one digit makes a column narrower. */
    private static final Pattern ROOM = Pattern.compile(" {2,}");

    @TempDir
    Path folder;

    @Tag("long")
    @ParameterizedTest(name = "print what {0} shows")
    @ValueSource(strings = {"README.md", "docs/handbook.md", "docs/balancing.md"})
    void pages(String page) throws IOException {
        holds(Path.of(page));
    }

    @Test
    @DisplayName("are all in pages that this test reads")
    void noOtherPageHasAny() throws IOException {
        try (Stream<Path> pages = Files.list(Path.of("docs"))) {
            assertThat(pages.filter(page -> page.toString().endsWith(".md"))
                            .filter(page ->
                                    MarkdownTable.lines(page).stream().anyMatch(line -> line.startsWith(PROMPT)))
                            .map(page -> page.getFileName().toString()))
                    .containsExactlyInAnyOrder("handbook.md", "balancing.md");
        }
    }

    private void holds(Path page) throws IOException {
        List<String> lines = MarkdownTable.lines(page);
        List<String> anew = new ArrayList<>();
        int compared = 0;
        for (int i = 0; i < lines.size(); i++) {
            anew.add(lines.get(i));
            if (lines.get(i).startsWith(PROMPT)) {
                List<String> shown = shown(lines, i + 1);
                List<String> printed = printed(lines.get(i).substring(PROMPT.length()));
                if (!shown.isEmpty()) {
                    boolean part = shown.get(shown.size() - 1).equals(REST);
                    List<String> held = part ? printed.subList(0, Math.min(printed.size(), shown.size() - 1)) : printed;
                    anew.addAll(held);
                    if (part) {
                        anew.add(REST);
                    }
                    if (!Boolean.getBoolean("pages.write")) {
                        assertThat(timeless(held))
                                .as(
                                        "%s of %s; to write the page anew: JAVA_TOOL_OPTIONS=-Dpages.write=true",
                                        lines.get(i), page)
                                .isEqualTo(timeless(part ? shown.subList(0, shown.size() - 1) : shown));
                    }
                    compared++;
                }
                i += shown.size();
            }
        }
        assertThat(compared).isPositive();
        if (Boolean.getBoolean("pages.write")) {
            Files.writeString(page, String.join("\n", anew) + "\n");
        }
    }

    private static List<String> shown(List<String> lines, int from) {
        int to = from;
        while (!lines.get(to).startsWith(PROMPT) && !lines.get(to).startsWith("```")) {
            to++;
        }
        return lines.subList(from, to);
    }

    private static List<String> timeless(List<String> lines) {
        return lines.stream()
                .map(line -> ROOM.matcher(TIME.matcher(line).replaceAll("TIME"))
                        .replaceAll("  ")
                        .stripTrailing())
                .toList();
    }

    private List<String> printed(String line) {
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(line);
        while (word.find()) {
            String each = word.group(1) != null ? word.group(1) : word.group(2);
            words.addAll(OWN.matcher(each).matches() ? files(each) : List.of(each));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words.toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(status)
                .as("%s: %s", line, err.toString(StandardCharsets.UTF_8))
                .isZero();
        return out.toString(StandardCharsets.UTF_8)
                .replace(folder + "/", "")
                .lines()
                .toList();
    }

    /** In the test's own folder; a star stands for what a shell would put there. */
    private List<String> files(String path) {
        int slash = path.lastIndexOf('/');
        if (!path.contains("*")) {
            return List.of(folder.resolve(path).toString());
        }
        String name = path.substring(slash + 1).replace(".", "\\.").replace("*", ".*");
        try (Stream<Path> all = Files.list(folder.resolve(path.substring(0, slash)))) {
            return all.filter(file -> file.getFileName().toString().matches(name))
                    .map(Path::toString)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
