package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A hundred recordings into a job, each killed at some moment: while lines come in, while the take goes into the job, or
 * while it is analysed. One step brings it back, with at most a settling interval of lines lacking.
 */
@DisplayName("A hundred killed takes")
class RescueAfterKillTest {
    private static final int ROUNDS = 20;
    private static final int AT_ONCE = 5;
    private static final double RATE_HZ = 200;
    /** Sent lines that may be on their way: a settling interval of the writer, and a busy machine. */
    private static final double MOST_LACKING_S = 0.9;

    @TempDir
    Path folder;

    @Test
    @DisplayName("are each in their job after one rescue, and none twice")
    @Tag("long")
    void allComeBack() throws IOException {
        Random random = new Random(77);
        double worst = 0;
        int rescued = 0;
        int already = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<Process> children = new ArrayList<>();
            List<Path> jobs = new ArrayList<>();
            for (int i = 0; i < AT_ONCE; i++) {
                Path job = folder.resolve(round + "-" + i);
                JobFolder.create(job, NewJob.fromFile("invented", Path.of("samples/electric-fan/installation.json")));
                jobs.add(job);
                children.add(child(job));
            }
            for (int i = 0; i < AT_ONCE; i++) {
                long sent = killed(children.get(i), random);
                Path job = jobs.get(i);
                boolean before =
                        !JobFolder.open(job).record().standing(Kind.RUN).isEmpty();
                age(job);
                JobTakes.rescue(job);
                JobFolder kept = JobFolder.open(job);
                List<Event> runs = kept.record().standing(Kind.RUN);
                assertThat(runs).as("round " + round + ", child " + i).hasSize(1);
                already += before ? 1 : 0;
                rescued += before ? 0 : 1;
                long lines = Files.readString(
                                        kept.locate(((Detail.Run) runs.get(0).detail()).file()),
                                        StandardCharsets.US_ASCII)
                                .lines()
                                .count()
                        - 1;
                double lacking = (sent - lines) / RATE_HZ;
                assertThat(lacking).isLessThan(MOST_LACKING_S);
                worst = Math.max(worst, lacking);
                assertThat(kept.check(Thoroughness.EVERY_BYTE)).isEmpty();
                assertThat(runs.get(0).label()).contains("killed");
            }
        }
        assertThat(rescued + already).isEqualTo(ROUNDS * AT_ONCE);
        String told = rescued + " rescued, " + already + " in the job already, at most " + worst + " s lacking\n";
        Files.writeString(Path.of("target", "rescue-kill.txt"), told);
    }

    private static Process child(Path job) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xshare:auto",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        TakingChild.class.getName(),
                        job.toString(),
                        "2")
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    /** Kills a child after some of its lines, or shortly after the last, when its take goes into the job. */
    private static long killed(Process child, Random random) throws IOException {
        long wanted = 50 + random.nextInt(500);
        int waitMs = random.nextInt(400);
        try (BufferedReader told = child.inputReader()) {
            long sent = 0;
            String line;
            while (sent < Math.min(wanted, 400) && (line = told.readLine()) != null && !line.equals("kept")) {
                sent = Long.parseLong(line);
            }
            if (wanted > 400) {
                pause(waitMs);
            }
            child.toHandle().destroyForcibly();
            while ((line = told.readLine()) != null) {
                sent = line.matches("\\d+") ? Math.max(sent, Long.parseLong(line)) : sent;
            }
            return sent;
        }
    }

    private static void pause(int ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** A take is left alone while it may still grow: here nobody waits for that. */
    private static void age(Path job) throws IOException {
        Path takes = job.resolve("takes");
        if (!Files.isDirectory(takes)) {
            return;
        }
        try (Stream<Path> files = Files.list(takes)) {
            for (Path file : files.toList()) {
                Files.setLastModifiedTime(file, FileTime.from(Instant.now().minusSeconds(60)));
            }
        }
    }
}
