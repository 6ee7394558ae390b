package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every step on the disk fails once in every way: the old record or the new one is left. */
class CrashTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private Map<String, Consumer<JobFolder>> writings() throws IOException {
        Path raw = InventedJobs.recording(dir, "run.wav", 100_000);
        Path paper = Files.writeString(dir.resolve("sheet.pdf"), "%PDF-1.4 and so on");
        Path remark = Files.writeString(dir.resolve("remark.txt"), "as found");
        return Map.of(
                "a correction", job -> job.append(Entry.correction("hub cleaned")),
                "a run", job -> job.addRecording(raw, NewRun.labelled("run", RunSettings.NONE)),
                "papers", job -> job.attach(List.of(paper, remark), "", Optional.empty()),
                "a strike", job -> job.strike("e1", "mistaken"));
    }

    @ParameterizedTest
    @EnumSource
    void theOldRecordOrTheNewOneIsLeft(FaultyDisk.Fault fault) throws IOException {
        int tried = 0;
        for (Map.Entry<String, Consumer<JobFolder>> writing : writings().entrySet()) {
            for (int step = 0; ; step++) {
                Path folder = dir.resolve("job " + writing.getKey() + " " + step);
                Event first = InventedJobs.in(folder).append(Entry.note("confirmed"));
                FaultyDisk disk = new FaultyDisk(fault, step);
                Throwable failure = catchThrowable(() -> writing.getValue().accept(InventedJobs.on(disk, folder)));
                if (disk.stepsTaken() <= step) {
                    assertThat(failure).isNull();
                    break;
                }
                tried++;
                assertOldOrNew(writing, step, folder, first, failure);
            }
        }
        // write, rename and sync for each; folder, copy, rename and two syncs more for each file
        assertThat(tried).isEqualTo(3 + (5 + 3) + (2 * 5 + 3) + 3);
    }

    private void assertOldOrNew(
            Map.Entry<String, Consumer<JobFolder>> writing, int step, Path folder, Event first, Throwable failure) {
        String where = writing.getKey() + ", step " + step;
        assertThat(failure).as(where).isInstanceOfAny(BadInput.class, FaultyDisk.Crash.class);
        JobFolder job = JobFolder.open(folder, InventedJobs.CLOCK);
        assertThat(job.record().events()).as(where).contains(first);
        assertThat(job.check(Thoroughness.EVERY_BYTE))
                .as(where)
                .extracting(warning -> warning.code().word())
                .isSubsetOf("unfinished-copy", "file-not-in-record");
        if (failure instanceof BadInput && !failure.getMessage().contains("the entry was written, but")) {
            assertThat(job.record().events()).as(where).containsExactly(first);
            assertThat(unfinishedIn(folder)).as(where).isEmpty();
            assertThat(job.check(Thoroughness.QUICK)).as(where).isEmpty();
        }
        int before = job.record().events().size();
        if (before == 1) {
            // the same once more, on a disk that works
            writing.getValue().accept(job);
            assertThat(job.record().events()).as(where).hasSizeGreaterThan(1);
        } else {
            job.append(Entry.note("goes on"));
            assertThat(job.record().events()).as(where).hasSize(before + 1);
        }
        assertThat(job.check(Thoroughness.EVERY_BYTE)).as(where).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void anInterruptedBeginningCanBeBegunAgain(FaultyDisk.Fault fault) {
        int step = 0;
        for (; ; step++) {
            Path folder = dir.resolve("below/job " + step);
            FaultyDisk disk = new FaultyDisk(fault, step);
            Throwable failure =
                    catchThrowable(() -> InventedJobs.on(disk, folder).begin(InventedJobs.NEW_JOB));
            if (disk.stepsTaken() <= step) {
                assertThat(failure).isNull();
                break;
            }
            assertThat(failure).isInstanceOfAny(BadInput.class, FaultyDisk.Crash.class);
            JobFolder job = JobFolder.isJob(folder) ? JobFolder.open(folder) : InventedJobs.in(folder);
            assertThat(job.record().name()).isEqualTo("Invented job");
        }
        assertThat(step).as("folder, write, rename, two syncs").isEqualTo(5);
    }

    @Test
    void aFullDiskAndAForbiddenFolderAreToldInWords() {
        Path folder = InventedJobs.in(dir.resolve("job")).path();

        JobFolder full = InventedJobs.on(new FaultyDisk(FaultyDisk.Fault.FULL, 0), folder);
        assertThatThrownBy(() -> full.append(Entry.note("x")))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("the disk is full")
                .hasMessageContaining("the record is as it was");
        JobFolder forbidden = InventedJobs.on(new FaultyDisk(FaultyDisk.Fault.FORBIDDEN, 0), folder);
        assertThatThrownBy(() -> forbidden.append(Entry.note("x")))
                .hasMessageContaining("can't be written to (permission denied)");
    }

    @Test
    void aCopyLeftByACrashIsToldAndThenClearedAwayByTheNextEntry() throws IOException {
        JobFolder job = InventedJobs.in(dir.resolve("job"));
        Path recordings = Files.createDirectory(job.path().resolve("recordings"));
        // No process has this number: Linux ends at 2^22, others below 2^31.
        Path left = Files.writeString(recordings.resolve(".unfinished-2147483646-abc-1.wav"), "half");
        Path underWay = Files.writeString(Unfinished.in(recordings, "x.wav"), "this program is still at it");
        for (Path f : List.of(left, underWay)) {
            Files.setLastModifiedTime(f, FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        }

        assertThat(job.check(Thoroughness.QUICK))
                .extracting(warning -> warning.code().word())
                .containsExactly("unfinished-copy");
        job.append(Entry.note("next"));

        assertThat(left).doesNotExist();
        assertThat(underWay).exists();
        assertThat(job.check(Thoroughness.QUICK)).isEmpty();
    }

    private static List<Path> unfinishedIn(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Unfinished::isOne).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
