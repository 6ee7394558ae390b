package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The list is written by the build just before the tests, from the dependencies that are packed into the jar. */
@DisplayName("The list of licences")
class LicencesTest {
    private static final Pattern DEPENDENCY =
            Pattern.compile("^\\s+([\\w.-]+:[\\w.-]+):jar:([\\w.-]+):(compile|runtime)\\b");

    @Test
    @DisplayName("names exactly the libraries that are packed into the program, with their versions")
    void namesEveryLibrary() {
        Set<String> packed = new TreeSet<>();
        for (String line : MarkdownTable.lines(Path.of("target/packed-libraries.txt"))) {
            Matcher matcher = DEPENDENCY.matcher(line);
            if (matcher.find()) {
                packed.add(matcher.group(1) + " " + matcher.group(2));
            }
        }
        Set<String> listed = new TreeSet<>();
        Library.all().forEach(library -> listed.add(library.name() + " " + library.version()));
        assertThat(listed).isEqualTo(packed);
    }
}
