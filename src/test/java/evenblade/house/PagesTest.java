package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

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
