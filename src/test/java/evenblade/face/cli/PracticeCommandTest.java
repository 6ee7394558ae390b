package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.JobFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PracticeCommandTest {
    @TempDir
    Path folder;

    @Test
    void anInventedJobIsMadeAndSaysSo() {
        Path job = folder.resolve("job");
        CommandLineRun run = CommandLineRun.of("practice", job.toString(), "--fault", "weak-cylinder", "--seed", "4");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(run.out())
                .isEqualTo("Invented for practice, measured nowhere: a job with 5 runs in " + job + "\n"
                        + "What is truly in each run: " + job.resolve("truth") + "\n"
                        + "Don't look there before you have found out yourself.\n");
        assertThat(JobFolder.open(job).record().name())
                .contains("weak-cylinder")
                .contains("seed 4");
    }

    @Test
    void anUnknownFaultIsOneLineAndMakesNothing() {
        Path job = folder.resolve("job");
        CommandLineRun run = CommandLineRun.of("practice", job.toString(), "--fault", "weak-cylindr");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines())
                .singleElement()
                .satisfies(
                        line -> assertThat(line)
                                .startsWith(
                                        "evenblade: fault: 'weak-cylindr', expected 'weak-cylinder' or another of none, mass-imbalance"));
        assertThat(job).doesNotExist();
    }

    @Test
    void aFaultThatTheInstallationCannotHaveMakesNothing() throws Exception {
        Path motor = folder.resolve("motor.json");
        Files.writeString(
                motor,
                """
                { "engine": { "cycle": "electric" }, "reduction": { "kind": "direct" }, "propeller": { "blades": 3 } }
                """);
        Path job = folder.resolve("job");
        CommandLineRun run = CommandLineRun.of(
                "practice", job.toString(), "--installation", motor.toString(), "--fault", "weak-cylinder");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("an electric motor, expected an engine with cylinders");
        assertThat(job).doesNotExist();
    }
}
