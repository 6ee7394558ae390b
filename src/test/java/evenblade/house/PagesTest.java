package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.cli.Program;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("The pages")
class PagesTest {
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#]+)");
    private static final Pattern ENGINE_RPM = Pattern.compile("engine\\s+([0-9.]+) ± ");
    private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

    @Test
    @DisplayName("README lists every page in docs")
    void readmeListsEveryPage() throws Exception {
        Set<String> linked = new TreeSet<>(links(Path.of("README.md")));
        try (Stream<Path> pages = Files.list(Path.of("docs"))) {
            assertThat(linked)
                    .containsAll(pages.filter(page -> page.toString().endsWith(".md"))
                            .map(page -> page.toString().replace('\\', '/'))
                            .toList());
        }
    }

    @Test
    @DisplayName("No link to a file leads nowhere")
    void linksLeadSomewhere() throws Exception {
        List<Path> pages = new ArrayList<>(List.of(Path.of("README.md"), Path.of("DEVELOPERS.md")));
        try (Stream<Path> more = Files.walk(Path.of("docs"))) {
            more.filter(page -> page.toString().endsWith(".md")).forEach(pages::add);
        }
        for (Path page : pages) {
            for (String link : links(page)) {
                if (!link.contains("://")) {
                    assertThat(page.resolveSibling(link)).as("link in %s", page).exists();
                }
            }
        }
    }

    /** Speed to 0.1 %: the page stays true in what matters, and may lag behind in the last digits. */
    @Test
    @DisplayName("The first command of README does what README shows")
    void firstCommandDoesWhatIsShown() {
        String readme = String.join("\n", MarkdownTable.lines(Path.of("README.md")));
        int from = readme.indexOf("evenblade.jar ") + "evenblade.jar ".length();
        String command = readme.substring(from, readme.indexOf("```", from)).replace("\\\n", " ");
        List<String> words = new ArrayList<>();
        Matcher word = WORD.matcher(command);
        while (word.find()) {
            words.add(word.group(1) != null ? word.group(1) : word.group(2));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words.toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(status).as(err.toString(StandardCharsets.UTF_8)).isZero();
        double printed = engineRpm(out.toString(StandardCharsets.UTF_8));
        double shown = engineRpm(readme);
        assertThat(printed).isBetween(shown * 0.999, shown * 1.001);
    }

    private static double engineRpm(String text) {
        Matcher matcher = ENGINE_RPM.matcher(text);
        assertThat(matcher.find()).as("an engine speed with its error").isTrue();
        return Double.parseDouble(matcher.group(1));
    }

    private static List<String> links(Path page) {
        List<String> links = new ArrayList<>();
        for (String line : MarkdownTable.lines(page)) {
            Matcher matcher = LINK.matcher(line);
            while (matcher.find()) {
                links.add(matcher.group(1));
            }
        }
        return links;
    }
}
