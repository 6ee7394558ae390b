package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who writes at the same time waits for the other and loses nothing. */
class ConcurrentWritersTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    @Test
    void twoProgramsAtOnceKeepEachOthersEntries() throws Exception {
        JobFolder job = InventedJobs.in(dir.resolve("job"));
        Path raw = Files.createDirectory(dir.resolve("raw"));
        int each = 12;

        Process one = EntryWriter.start(job.path(), "one", each, raw, ProcessBuilder.Redirect.PIPE);
        Process two = EntryWriter.start(job.path(), "two", each, raw, ProcessBuilder.Redirect.PIPE);
        List<String> lines = new ArrayList<>();
        for (Process writer : List.of(one, two)) {
            lines.addAll(EntryWriter.linesOf(writer.getInputStream().readAllBytes()));
            assertThat(writer.waitFor()).isZero();
        }

        JobRecord record = job.record();
        assertThat(lines).hasSize(2 * each).allMatch(line -> EntryWriter.holds(record, line));
        assertThat(record.events()).extracting(Event::id).hasSize(2 * each).doesNotHaveDuplicates();
        assertThat(job.check(Thoroughness.EVERY_BYTE)).isEmpty();
    }

    @Test
    void threadsOfOneProgramKeepEachOthersEntries() throws Exception {
        Path folder = InventedJobs.in(dir.resolve("job")).path();
        int threads = 4;
        int each = 8;
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Callable<Event>> writings = new ArrayList<>();
            for (int i = 0; i < threads * each; i++) {
                String text = "entry " + i;
                writings.add(() -> JobFolder.open(folder).append(Entry.note(text)));
            }
            List<Event> confirmed = new ArrayList<>();
            for (Future<Event> future : pool.invokeAll(writings)) {
                confirmed.add(future.get());
            }

            JobRecord record = JobFolder.open(folder).record();
            assertThat(record.events()).containsExactlyInAnyOrderElementsOf(confirmed);
            assertThat(confirmed).extracting(Event::id).doesNotHaveDuplicates();
        } finally {
            pool.shutdownNow();
        }
    }

    @Test
    void whoWaitsTooLongIsToldSoAndTheLockEndsWithItsHolder() throws Exception {
        Path folder = InventedJobs.in(dir.resolve("job")).path();
        CountDownLatch held = new CountDownLatch(1);
        CountDownLatch end = new CountDownLatch(1);
        Thread holder = new Thread(() -> {
            try {
                FolderLock.holding(folder, Duration.ofSeconds(5), () -> {
                    held.countDown();
                    try {
                        return end.await(20, TimeUnit.SECONDS);
                    } catch (InterruptedException e) {
                        return false;
                    }
                });
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        holder.start();
        assertThat(held.await(5, TimeUnit.SECONDS)).isTrue();

        assertThatThrownBy(() -> FolderLock.holding(folder, Duration.ofMillis(60), () -> "never"))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("is writing to this job")
                .hasMessageContaining("nothing was changed");

        end.countDown();
        holder.join();
        assertThat(FolderLock.holding(folder, Duration.ofSeconds(5), () -> "mine now"))
                .isEqualTo("mine now");
    }
}
