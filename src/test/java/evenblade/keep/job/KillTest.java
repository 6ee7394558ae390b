package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Warning;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A program that is killed while it writes loses nothing that it confirmed. */
class KillTest {
    private static final int KILLS_PER_JOB = 25;

    @TempDir
    Path dir;

    private int confirmed;
    private int unconfirmed;
    private int leftovers;

    @Test
    void threeKillsAtRandomMomentsLoseNothingConfirmed() throws Exception {
        kill(3, 20310504);
    }

    @Test
    @Tag("long")
    void fiveHundredKillsAtRandomMomentsLoseNothingConfirmed() throws Exception {
        kill(500, 500);
        System.getLogger(KillTest.class.getName())
                .log(
                        System.Logger.Level.INFO,
                        String.format(
                                Locale.ROOT,
                                "500 kills: %d entries confirmed, 0 lost; %d kills fell between an entry and its "
                                        + "confirmation; %d left an unfinished file or one that no entry names",
                                confirmed,
                                unconfirmed,
                                leftovers));
    }

    private void kill(int times, long seed) throws Exception {
        Random random = new Random(seed);
        Path raw = Files.createDirectory(dir.resolve("raw"));
        JobFolder job = null;
        for (int i = 0; i < times; i++) {
            if (i % KILLS_PER_JOB == 0) {
                job = InventedJobs.in(dir.resolve("job " + i));
            }
            int before = job.record().events().size();
            int leftBefore = leftoversIn(job.path());
            List<String> lines = linesUntilKilled(job.path(), "kill " + i, raw, random.nextInt(300));
            JobRecord record = JobFolder.open(job.path()).record();
            String where = "kill " + i;

            assertThat(lines).as(where).isNotEmpty().allMatch(line -> EntryWriter.holds(record, line));
            int added = record.events().size() - before;
            assertThat(added).as(where).isBetween(lines.size(), lines.size() + 1);
            List<Warning> warnings = job.check(Thoroughness.EVERY_BYTE);
            assertThat(warnings)
                    .as(where)
                    .extracting(warning -> warning.code().word())
                    .isSubsetOf("unfinished-copy", "file-not-in-record");
            confirmed += lines.size();
            unconfirmed += added - lines.size();
            int left = leftoversIn(job.path());
            leftovers += left > leftBefore ? 1 : 0;
        }
    }

    private static List<String> linesUntilKilled(Path job, String word, Path raw, int afterMs) throws Exception {
        Path output = Files.createTempFile(raw, "confirmed", ".txt");
        Process writer = EntryWriter.start(job, word, 1_000_000, raw, ProcessBuilder.Redirect.to(output.toFile()));
        try {
            while (Files.size(output) == 0 && writer.isAlive()) {
                Thread.sleep(2);
            }
            Thread.sleep(afterMs);
        } finally {
            writer.destroyForcibly();
        }
        assertThat(writer.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(writer.exitValue()).as("ended by the kill, 128 + 9").isEqualTo(137);
        return EntryWriter.linesOf(Files.readAllBytes(output));
    }

    /** Number of unfinished files and files that no entry names. */
    private static int leftoversIn(Path job) throws IOException {
        List<Path> named = EvidenceCheck.filesOf(JobFolder.open(job).record()).stream()
                .map(f -> job.resolve(f.path()))
                .toList();
        try (Stream<Path> files = Files.walk(job)) {
            return files.filter(Files::isRegularFile)
                    .filter(f -> !f.getFileName().toString().matches("job\\.(json|lock)"))
                    .filter(f -> !named.contains(f))
                    .toList()
                    .size();
        }
    }
}
