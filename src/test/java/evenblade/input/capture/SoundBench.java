package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/**
 * A sound server with an output that goes nowhere, {@value #SINK}, whose monitor is the default
 * input: what a player plays there is what a microphone would hear. Set up by {@code .ci/run}.
 */
public final class SoundBench {
    private static final String SINK = "evenblade_test";

    private SoundBench() {}

    /** Skips the test with a word where there is no such server; fails it where one was promised. */
    public static void require() {
        boolean there = answers("pactl", "info") && !SoundDevices.list().isEmpty();
        if (System.getenv("EVENBLADE_REQUIRE_DEVICES") != null) {
            assertThat(there)
                    .as("EVENBLADE_REQUIRE_DEVICES is set, so there must be an input")
                    .isTrue();
        }
        Assumptions.assumeTrue(there, "no sound server with an input here; .ci/run sets one up");
    }

    /** Plays a file to where the default input hears it. */
    public static Process play(Path wav) throws IOException {
        return start("paplay", "--device=" + SINK, wav.toString());
    }

    private static Process start(String... command) throws IOException {
        return new ProcessBuilder(new ArrayList<>(List.of(command)))
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    private static boolean answers(String... command) {
        try {
            Process process = start(command);
            return process.waitFor(5, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
