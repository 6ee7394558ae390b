package evenblade.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A minute of changed files and words, in a process of its own with 256 MB. */
@Tag("long")
class FuzzTest {
    private static final int SECONDS = 60;
    /** Start of the process and the last case come on top; a case that never ends passes it. */
    private static final Duration MOST_CPU = Duration.ofSeconds(4 * SECONDS);

    @TempDir
    Path folder;

    @Test
    void noChangedInputEndsTheProgramOrGetsAnAnswerThatIsNoNumber() throws Exception {
        Path seeds = folder.resolve("seeds");
        copy(Path.of("src/test/resources/fuzz"), seeds);
        try (Stream<Path> sounds = Files.list(Path.of("src/test/resources/reference/codecs"))) {
            for (Path sound : sounds.filter(f -> f.getFileName().toString().startsWith("tones."))
                    .toList()) {
                Files.copy(sound, seeds.resolve("recording").resolve(sound.getFileName()));
            }
        }
        Path said = folder.resolve("said.txt");
        Process process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-XX:+UseSerialGC",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Fuzz.class.getName(),
                        seeds.toString(),
                        folder.resolve("work").toString(),
                        "20261128",
                        String.valueOf(SECONDS)))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        try {
            while (!process.waitFor(1, TimeUnit.SECONDS)) {
                Duration cpu = process.info().totalCpuDuration().orElse(Duration.ZERO);
                assertThat(cpu)
                        .as("a case that doesn't end; it lies in the work folder")
                        .isLessThan(MOST_CPU);
            }
        } finally {
            process.destroyForcibly();
        }
        String figures = Files.readString(said);
        assertThat(process.exitValue()).as(figures).isZero();
        assertThat(figures).contains("finds 0");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path each : all.toList()) {
                Files.copy(each, to.resolve(from.relativize(each).toString()));
            }
        }
    }
}
