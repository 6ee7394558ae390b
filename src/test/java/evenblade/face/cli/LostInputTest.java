package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.WarningCode;
import evenblade.input.capture.CountedSound;
import evenblade.input.capture.OwnSoundServer;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.StreamSummary;
import evenblade.keep.job.Detail;
import evenblade.keep.job.JobFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A recording is ended from outside: the sound server is killed, as when an input is pulled out, or the program told to end. */
@Tag("long")
class LostInputTest {
    @TempDir
    Path folder;

    private long grown;

    @Test
    void aTakeThatASignalEndsIsInTheJobAndAnalysed() throws Exception {
        CommandLineRun run = ended((server, child) -> child.destroy());

        assertThat(run.status()).as(run.err()).isZero();
        assertThat(run.out()).contains("Stopped:").doesNotContain("analysed");
        JobFolder kept = JobFolder.open(folder.resolve("job"));
        assertThat(kept.record().events().get(0).detail()).isInstanceOf(Detail.Run.class);
    }

    @Test
    void anInputThatVanishesEndsTheRecordingAndTheJobHasWhatThereIs() throws Exception {
        CommandLineRun run = ended((server, child) -> server.kill());

        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("the input stopped giving sound after").contains("is kept as e1");
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains("The input stopped giving sound:")
                .contains("what had come in is in the file");
        JobFolder kept = JobFolder.open(folder.resolve("job"));
        Detail.Run detail = (Detail.Run) kept.record().events().get(0).detail();
        StreamSummary summary = ((Intake.Streamed) RecordingReader.open(kept.locate(detail.file()), IntakeOptions.NONE))
                .sound()
                .deliverTo((block, frames) -> {});
        assertThat(summary.frames()).isGreaterThanOrEqualTo((grown - 200) / 6);
        assertThat(summary.warnings()).noneMatch(w -> w.code() == WarningCode.LENGTH_REPAIRED);
    }

    @FunctionalInterface
    private interface Outside {
        void end(OwnSoundServer server, Process recording);
    }

    /** Records until there are some seconds, then ends it. */
    private CommandLineRun ended(Outside how) throws Exception {
        Path job = folder.resolve("job");
        CommandLineRun.of(
                "job", "new", job.toString(), "--installation", "samples/geared-three-blade/installation.json");
        try (OwnSoundServer server = OwnSoundServer.start(Files.createDirectory(folder.resolve("server")))) {
            Process player = server.player();
            try {
                Thread feed = new Thread(new CountedSound(player.getOutputStream()), "player");
                feed.setDaemon(true);
                feed.start();
                Process child = ChildProgram.start(
                        server.environment(), folder, ChildProgram.command(List.of(), "record", job.toString()));
                grown = waitFor(job.resolve("takes"), 4L * 48_000 * 6);
                how.end(server, child);
                return ChildProgram.ended(child, folder);
            } finally {
                player.destroyForcibly();
            }
        }
    }

    private static long waitFor(Path takes, long bytes) throws Exception {
        for (int i = 0; i < 600; i++) {
            if (Files.isDirectory(takes)) {
                try (Stream<Path> files = Files.list(takes)) {
                    for (Path file : files.toList()) {
                        if (Files.size(file) > bytes) {
                            return Files.size(file);
                        }
                    }
                }
            }
            Thread.sleep(100);
        }
        throw new AssertionError("the recording doesn't grow");
    }
}
