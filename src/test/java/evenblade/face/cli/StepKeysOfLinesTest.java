package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.capture.PseudoTerminals;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Keys that lead a stepped run while a sensor sends lines, from a port or on standard input. */
class StepKeysOfLinesTest {
    private static final String INSTALLATION = "samples/geared-three-blade/installation.json";

    private final InputStream before = System.in;

    @TempDir
    Path folder;

    @AfterEach
    void giveBack() {
        System.setIn(before);
    }

    private static byte[] lines(int count) {
        StringBuilder lines = new StringBuilder("time (s),x (m/s2)\n");
        for (int i = 0; i < count; i++) {
            lines.append(String.format(Locale.ROOT, "%.3f,%.4f%n", i / 100.0, Math.sin(0.3 * i)));
        }
        return lines.toString().getBytes(StandardCharsets.US_ASCII);
    }

    private CommandLineRun record(String typed, String... more) {
        System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.US_ASCII)));
        List<String> words = new ArrayList<>(List.of(
                "record",
                folder.resolve("a.csv").toString(),
                "--installation",
                INSTALLATION,
                "--steps",
                "--engine-rpm",
                "3600",
                "--engine-rpm",
                "4800"));
        words.addAll(List.of(more));
        return CommandLineRun.of(words.toArray(String[]::new));
    }

    @Test
    void whileAPortBringsTheLinesTheKeyboardIsFreeForThem() throws Exception {
        try (PseudoTerminals pair = PseudoTerminals.in(folder)) {
            send(pair.far());
            CommandLineRun run = record(
                    "s\ns\nr\n",
                    "--serial",
                    pair.port(),
                    // Said with a port, it changes nothing.
                    "--lines",
                    "--seconds",
                    "2");

            assertThat(run.err()).isEmpty();
            assertThat(run.out()).contains(StepKeys.HELP).doesNotContain(StepKeys.NO_KEYS);
            assertThat(run.out().lines().filter(line -> line.startsWith("Next")))
                    .as("left for later, and the other too; none is done yet that could be done again")
                    .containsExactly(
                            "Next: hold 4800 engine rpm.",
                            "Next: hold 3600 engine rpm.",
                            "Next: hold 3600 engine rpm.");
        }
    }

    @Test
    void linesOnStandardInputAreNeverTakenForKeysAndItSaysSo() throws IOException {
        // The heading holds both letters, and so does a remark of the sensor.
        String sent = new String(lines(300), StandardCharsets.US_ASCII) + "s\nr\n";

        CommandLineRun run = record(sent, "--lines");

        assertThat(run.out()).contains(StepKeys.NO_KEYS).doesNotContain(StepKeys.HELP, "Next:");
        assertThat(Files.readString(folder.resolve("a.csv"))).isEqualTo(sent);
    }

    private static void send(Path far) {
        Thread sender = new Thread(() -> {
            try (OutputStream to = Files.newOutputStream(far)) {
                to.write(lines(300));
                to.flush();
                TimeUnit.SECONDS.sleep(5);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        sender.setDaemon(true);
        sender.start();
    }
}
