package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("job rescue, job amend, job installation")
class LaterEntriesCommandTest {
    private static final String INSTALLATION = "samples/electric-fan/installation.json";

    @TempDir
    Path folder;

    private String job;

    @BeforeEach
    void begin() throws IOException {
        job = folder.resolve("job").toString();
        CommandLineRun.of("job", "new", job, "--installation", INSTALLATION);
        Path takes = Files.createDirectory(folder.resolve("job/takes"));
        Path take = Files.copy(Path.of("samples/electric-fan/run.csv"), takes.resolve("take-1.csv"));
        Files.setLastModifiedTime(take, FileTime.from(Instant.parse("2026-05-04T08:30:00Z")));
    }

    @Test
    @DisplayName("bring a lost take in and put it and the installation right, with nothing written over")
    void lostTakesComeInAndAreAmended() {
        CommandLineRun before = CommandLineRun.of("job", "show", job);
        assertThat(before.out()).contains("takes that aren't in the job", "take-1.csv", "'job rescue'");
        assertThat(CommandLineRun.of("job", "show", job, "--json").out()).contains("\"takes\" : [ {", "take-1.csv");

        CommandLineRun rescue = CommandLineRun.of("job", "rescue", job);
        assertThat(rescue.status()).as(rescue.err()).isZero();
        assertThat(rescue.out()).contains("e1 ").contains("2026-05-04");
        assertThat(CommandLineRun.of("job", "rescue", job).out()).contains("No take to rescue.");
        assertThat(CommandLineRun.of("job", "show", job, "--json").out()).contains("\"takes\" : [ ]");

        CommandLineRun amend = CommandLineRun.of(
                "job", "amend", job, "e1", "--place", "motor mount", "--direction", "up", "--engine-rpm", "1450");
        assertThat(amend.status()).as(amend.err()).isZero();
        assertThat(amend.out()).contains("puts e1 right", "engine 1450 rpm", "place: motor mount; direction: up");
        assertThat(CommandLineRun.of("job", "amend", job, "e1").status()).isEqualTo(1);
        assertThat(CommandLineRun.of("job", "amend", job, "e9", "--place", "x").err())
                .contains("no run of that id or label");

        CommandLineRun installation =
                CommandLineRun.of("job", "installation", job, "samples/direct-two-blade/installation.json");
        assertThat(installation.status()).as(installation.err()).isZero();
        assertThat(CommandLineRun.of("job", "show", job).out()).contains("2 blades", "another installation");
    }
}
