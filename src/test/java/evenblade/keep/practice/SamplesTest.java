package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The shipped samples are what their generator makes, no more and no less. */
class SamplesTest {
    private static final Path SHIPPED = Path.of("samples");
    private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?([eE]-?\\d+)?");
    private static final long MOST_BYTES = 6_000_000;

    @TempDir
    static Path fresh;

    @BeforeAll
    static void makeThemAnew() throws IOException {
        SampleFiles.write(fresh);
    }

    @Test
    void thereAreEightRecordingsOfThreeInstallationsEachWithItsTruth() throws IOException {
        List<String> names = namesIn(SHIPPED);
        assertThat(names).filteredOn(name -> name.endsWith(".wav")).hasSize(5);
        assertThat(names).filteredOn(name -> name.endsWith(".csv")).hasSize(3);
        assertThat(names).filteredOn(name -> name.endsWith(".truth.json")).hasSize(8);
        assertThat(names).filteredOn(name -> name.endsWith("installation.json")).hasSize(3);
        assertThat(names).containsExactlyElementsOf(namesIn(fresh));
    }

    @Test
    void theyStaySmall() throws IOException {
        long bytes = 0;
        for (String name : namesIn(SHIPPED)) {
            bytes += Files.size(SHIPPED.resolve(name));
        }
        assertThat(bytes).isLessThan(MOST_BYTES);
    }

    @Test
    void everyFileSaysThatItIsInvented() throws IOException {
        for (String name : namesIn(SHIPPED)) {
            String text = Files.readString(SHIPPED.resolve(name), StandardCharsets.ISO_8859_1);
            assertThat(text.contains("INVENTED") || text.contains("Invented"))
                    .as(name)
                    .isTrue();
        }
    }

    @Test
    void soundIsTheSameToOneStep() throws IOException {
        // Sine and cosine may differ in the last bit between Java versions; that can turn one rounding.
        for (String name : namesIn(SHIPPED)) {
            if (!name.endsWith(".wav")) {
                continue;
            }
            byte[] shipped = Files.readAllBytes(SHIPPED.resolve(name));
            byte[] made = Files.readAllBytes(fresh.resolve(name));
            assertThat(shipped).as(name).hasSameSizeAs(made);
            int bytesPerSample = shipped[HEADER - 10] / 8;
            int largest = 0;
            for (int i = HEADER; i < made.length; i += bytesPerSample) {
                int difference = sample(shipped, i, bytesPerSample) - sample(made, i, bytesPerSample);
                largest = Math.max(largest, Math.abs(difference));
            }
            assertThat(largest).as(name).isLessThanOrEqualTo(1);
        }
    }

    @Test
    void tablesAndTruthsAreTheSameToTheirLastDigits() throws IOException {
        for (String name : namesIn(SHIPPED)) {
            if (name.endsWith(".wav")) {
                continue;
            }
            List<String> shipped = Files.readAllLines(SHIPPED.resolve(name));
            List<String> made = Files.readAllLines(fresh.resolve(name));
            assertThat(shipped).as(name).hasSameSizeAs(made);
            for (int i = 0; i < made.size(); i++) {
                if (!shipped.get(i).equals(made.get(i))) {
                    assertAlike(shipped.get(i), made.get(i), name + ", line " + (i + 1));
                }
            }
        }
    }

    /** Where the samples begin: RIFF 12, LIST 8 + 104, fmt 24, data 8. */
    private static final int HEADER = 156;

    private static int sample(byte[] bytes, int at, int bytesPerSample) {
        int value = 0;
        for (int b = 0; b < bytesPerSample; b++) {
            value |= (bytes[at + b] & 0xff) << (8 * b);
        }
        int spare = 32 - 8 * bytesPerSample;
        return value << spare >> spare;
    }

    private static void assertAlike(String shipped, String made, String where) {
        assertThat(NUMBER.matcher(shipped).replaceAll("0"))
                .as(where)
                .isEqualTo(NUMBER.matcher(made).replaceAll("0"));
        Matcher a = NUMBER.matcher(shipped);
        Matcher b = NUMBER.matcher(made);
        while (a.find() && b.find()) {
            double expected = Double.parseDouble(b.group());
            // One step of the phone's converter is 0.0012 m/s².
            assertThat(Double.parseDouble(a.group()))
                    .as(where)
                    .isCloseTo(expected, within(0.0013 + 1e-7 * Math.abs(expected)));
        }
    }

    private static List<String> namesIn(Path folder) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString())
                    .filter(name -> !name.equals("README.md"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
