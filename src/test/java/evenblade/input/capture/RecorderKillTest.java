package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("long")
class RecorderKillTest {
    private static final int AT_ONCE = 5;
    private static final int ROUNDS = 20;
    private static final double MOST_LACKING_S = 2;
    /** So late that even two seconds less leave the one second which a reader asks for. */
    private static final int EARLIEST_FRAME = 153_600;

    private static final int LATER_BY_UP_TO = 96_000;

    @TempDir
    Path folder;

    @Test
    void killedAtAHundredRandomMomentsItLeavesAReadableFileThatLacksAtMostTwoSeconds() throws Exception {
        Random random = new Random(11);
        double worst = 0;
        int killed = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Process> children = new ArrayList<>();
            List<Path> files = new ArrayList<>();
            for (int i = 0; i < AT_ONCE; i++) {
                Path file = folder.resolve(round + "-" + i + ".wav");
                files.add(file);
                children.add(new ProcessBuilder(
                                Path.of(System.getProperty("java.home"), "bin", "java")
                                        .toString(),
                                "-Xshare:auto",
                                "-XX:TieredStopAtLevel=1",
                                "-cp",
                                System.getProperty("java.class.path"),
                                RecordingChild.class.getName(),
                                file.toString())
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .start());
            }
            for (int i = 0; i < AT_ONCE; i++) {
                long heard = killAfter(children.get(i), EARLIEST_FRAME + random.nextInt(LATER_BY_UP_TO));
                double lacking = (heard - readable(files.get(i))) / 48_000.0;
                assertThat(lacking).as("seconds lacking").isLessThan(MOST_LACKING_S);
                worst = Math.max(worst, lacking);
                killed++;
                Files.delete(files.get(i));
            }
        }
        assertThat(killed).isEqualTo(100);
        Files.writeString(Path.of("target", "recorder-kill.txt"), killed + " kills, at most " + worst + " s lacking\n");
    }

    private static long killAfter(Process child, long frames) throws IOException {
        try (BufferedReader told = child.inputReader()) {
            long heard = 0;
            String line;
            while (heard < frames && (line = told.readLine()) != null) {
                heard = Long.parseLong(line);
            }
            // Through its handle: destroying the process itself would close what it still has to tell.
            child.toHandle().destroyForcibly();
            while ((line = told.readLine()) != null) {
                if (line.matches("\\d+")) {
                    heard = Math.max(heard, Long.parseLong(line));
                }
            }
            return heard;
        }
    }

    private static long readable(Path file) {
        Intake intake = RecordingReader.open(file, IntakeOptions.NONE);
        return ((Intake.Streamed) intake)
                .sound()
                .deliverTo((block, frames) -> {})
                .frames();
    }
}
