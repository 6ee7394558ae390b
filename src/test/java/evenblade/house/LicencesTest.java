package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The list is written by the build just before the tests, from the dependencies that are packed into the jar. */
@DisplayName("The list of licences")
class LicencesTest {
    private static final Pattern DEPENDENCY =
            Pattern.compile("^\\s+([\\w.-]+:[\\w.-]+):jar:([\\w.-]+):(compile|runtime)\\b");
    /** What the build unpacks from the libraries. */
    private static final Pattern BROUGHT = Pattern.compile("META-INF/[^/]*(LICENSE|NOTICE)[^/]*");

    private static final String NOTICE_OF = "Library: ";

    @Test
    @DisplayName("names exactly the libraries that are packed into the program, with their versions")
    void namesEveryLibrary() {
        Set<String> packed = new TreeSet<>();
        packed().forEach((library, version) -> packed.add(library + " " + version));
        Set<String> listed = new TreeSet<>();
        Library.all().forEach(library -> listed.add(library.name() + " " + library.version()));
        assertThat(listed).isEqualTo(packed);
    }

    /** The build unpacks what a library brings; for those that bring none, a notice lies among the resources. */
    @Test
    @DisplayName("is kept by a licence or notice of every packed library inside the program")
    void everyLibraryHasItsNotice() throws Exception {
        Set<String> written = new TreeSet<>();
        for (Path notice : notices()) {
            for (String line : MarkdownTable.lines(notice)) {
                if (line.startsWith(NOTICE_OF)) {
                    written.add(line.substring(NOTICE_OF.length()));
                }
            }
        }
        Set<String> without = new TreeSet<>();
        for (Map.Entry<String, String> library : packed().entrySet()) {
            if (!bringsItsLicence(library.getKey(), library.getValue())) {
                without.add(library.getKey());
            }
        }
        assertThat(without).as("libraries that bring no licence of their own").isNotEmpty();
        assertThat(written).isEqualTo(without);
    }

    private static Map<String, String> packed() {
        Map<String, String> packed = new TreeMap<>();
        for (String line : MarkdownTable.lines(Path.of("target/packed-libraries.txt"))) {
            Matcher matcher = DEPENDENCY.matcher(line);
            if (matcher.find()) {
                packed.put(matcher.group(1), matcher.group(2));
            }
        }
        return packed;
    }

    private static List<Path> notices() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("src/main/resources/META-INF/licences"))) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    private static boolean bringsItsLicence(String library, String version) throws IOException {
        String name = library.substring(library.indexOf(':') + 1) + "-" + version + ".jar";
        Path jar = Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
                .map(Path::of)
                .filter(path -> path.endsWith(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is not on the class path"));
        try (JarFile archive = new JarFile(jar.toFile())) {
            return archive.stream().map(JarEntry::getName).anyMatch(BROUGHT.asMatchPredicate());
        }
    }
}
