package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail.StoredFile;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobFolderTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private JobFolder job() {
        return InventedJobs.in(dir.resolve("job"));
    }

    private static NewRun run(String label) {
        return NewRun.labelled(label, RunSettings.NONE.withEngineRpm(4800));
    }

    private static Path locate(JobFolder job, Event event) {
        return job.locate(((Detail.Run) event.detail()).file());
    }

    @Test
    void aNewJobHasItsNameItsInstallationAndNoEntries() {
        JobRecord record = JobFolder.open(job().path()).record();

        assertThat(record.name()).isEqualTo("Invented job");
        assertThat(record.invented()).isTrue();
        assertThat(record.installation()).isEqualTo(InventedJobs.INSTALLATION);
        assertThat(record.events()).isEmpty();
    }

    @Test
    void theInstallationIsKeptAsItsFileHasIt() throws IOException {
        Path file = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "engine": { "cycle": "two-stroke", "cylinders": 2 }, "reduction": { "ratio": 2.58 },
                  "propeller": { "blades": 3, "diameter": "66 1/2 in" } }
                """);

        JobFolder job = JobFolder.create(dir.resolve("job"), NewJob.fromFile("Stand", file), InventedJobs.CLOCK);

        assertThat(job.record().installationAsWritten().toString()).contains("diameter=66 1/2 in");
        assertThat(job.record()
                        .installation()
                        .propeller()
                        .diameter()
                        .orElseThrow()
                        .inches())
                .isEqualTo(66.5);
    }

    @Test
    void entriesGetTheNextIdAndStandInTheOrderOfTime() {
        JobFolder job = job();
        Event later = job.append(Entry.correction("Blade B reseated"));
        Event earlier = job.append(Entry.note("Before all that").at(OffsetDateTime.parse("2031-05-03T10:00:00+02:00")));

        assertThat(later.id()).isEqualTo("e1");
        assertThat(earlier.id()).isEqualTo("e2");
        assertThat(job.record().events()).extracting(Event::id).containsExactly("e2", "e1");
    }

    @Test
    void timesInDifferentZonesAreOrderedByTheMomentTheyMean() {
        JobFolder job = job();
        job.append(Entry.note("nine in Greenwich").at(OffsetDateTime.parse("2031-05-03T09:00:00Z")));
        job.append(Entry.note("ten, two hours east").at(OffsetDateTime.parse("2031-05-03T10:00:00+02:00")));

        assertThat(job.record().events()).extracting(Event::id).containsExactly("e2", "e1");
    }

    @Test
    void anEntryWithoutATimeIsDatedNow() {
        Event event = job().append(Entry.note("now"));

        assertThat(event.at()).isEqualTo(OffsetDateTime.parse("2031-05-04T10:30:00+02:00"));
        assertThat(event.entered()).isEqualTo(OffsetDateTime.parse("2031-05-04T10:30:00.250+02:00"));
    }

    @Test
    void aRecordingIsCopiedByteForByteWithItsHashAndItsTime() throws IOException {
        Path raw = InventedJobs.recording(dir, "before.wav", 200_000);
        Files.setLastModifiedTime(raw, FileTime.from(Instant.parse("2031-05-01T12:00:00Z")));
        JobFolder job = job();

        Event event = job.addRecording(raw, run("before"));

        StoredFile stored = ((Detail.Run) event.detail()).file();
        assertThat(job.locate(stored)).hasSameBinaryContentAs(raw);
        assertThat(stored.path()).matches("recordings/before-[0-9a-f]{8}\\.wav");
        assertThat(stored.stamp().sha256()).isEqualTo(RealDisk.stamp(raw).sha256());
        assertThat(stored.stamp().modified()).isEqualTo(Instant.parse("2031-05-01T12:00:00Z"));
        assertThat(Files.getLastModifiedTime(job.locate(stored)).toInstant())
                .isEqualTo(Instant.parse("2031-05-01T12:00:00Z"));
        assertThat(job.check(Thoroughness.EVERY_BYTE)).isEmpty();
    }

    /** FIPS 180-4, worked example of SHA-256 for the message "abc" (from memory). */
    @Test
    void theHashIsTheStandardsOwn() throws IOException {
        assertThat(RealDisk.stamp(Files.writeString(dir.resolve("abc"), "abc")).sha256())
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void theSameRecordingTwiceIsRefusedUnlessTheFirstWasStruckOut() throws IOException {
        Path raw = InventedJobs.recording(dir, "run.csv", 1000);
        JobFolder job = job();
        job.addRecording(raw, run("before"));

        assertThatThrownBy(() -> job.addRecording(raw, run("repeat")))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("the same recording as run e1 'before'");
        assertThat(job.record().events()).hasSize(1);

        job.strike("e1", "wrong label");
        job.addRecording(raw, run("repeat"));
        assertThat(job.record().run("repeat").id()).isEqualTo("e3");
        assertThat(job.path().resolve("recordings")).isDirectoryContaining("glob:**.csv");
        assertThat(job.path().resolve("recordings").toFile().list()).hasSize(1);
    }

    @Test
    void twoRecordingsOfOneNameAreKeptApart() throws IOException {
        JobFolder job = job();
        Path a = Files.createDirectory(dir.resolve("a"));
        Path b = Files.createDirectory(dir.resolve("b"));
        job.addRecording(Files.writeString(a.resolve("run.wav"), "one"), run("one"));
        job.addRecording(Files.writeString(b.resolve("run.wav"), "two"), run("two"));

        assertThat(job.path().resolve("recordings").toFile().list()).hasSize(2);
        assertThat(job.check(Thoroughness.EVERY_BYTE)).isEmpty();
    }

    @Test
    void pathsWithSpacesAndUmlautsWork() throws IOException {
        Path folder = dir.resolve("Prüfstand Süd/Auftrag 7 – Öl");
        JobFolder job = InventedJobs.in(folder);
        Event event = job.addRecording(InventedJobs.recording(dir, "Lauf größer.wav", 10), run("größer 1"));

        StoredFile stored = ((Detail.Run) event.detail()).file();
        assertThat(stored.originalName()).isEqualTo("Lauf größer.wav");
        assertThat(stored.path()).matches("recordings/Lauf-gro-er-[0-9a-f]{8}\\.wav");
        assertThat(JobFolder.open(folder).record().run("größer 1")).isEqualTo(event);
    }

    @Test
    void aRunIsFoundByItsIdOrItsOnlyLabel() throws IOException {
        JobFolder job = job();
        job.addRecording(InventedJobs.recording(dir, "1.wav", 1), run("before"));
        job.addRecording(InventedJobs.recording(dir, "2.wav", 2), run("after"));
        job.addRecording(InventedJobs.recording(dir, "3.wav", 3), run("after"));
        job.append(Entry.note("a remark"));
        JobRecord record = job.record();

        assertThat(record.run("e2").label()).contains("after");
        assertThat(record.run("before").id()).isEqualTo("e1");
        assertThatThrownBy(() -> record.run("after"))
                .isInstanceOf(BadInput.class)
                .hasMessage("run 'after': a label that 2 runs have, expected the id of one of them: "
                        + "e2 'after', e3 'after'");
        assertThatThrownBy(() -> record.run("befor"))
                .hasMessageContaining("no run of that id or label")
                .hasMessageContaining("e1 'before', e2 'after', e3 'after'");
        assertThatThrownBy(() -> record.run("e4")).hasMessageContaining("an entry of the kind 'note'");

        job.strike("e3", "");
        JobRecord struck = job.record();
        assertThat(struck.run("after").id()).isEqualTo("e2");
        assertThatThrownBy(() -> struck.run("e3")).hasMessageContaining("a run that was crossed out");
    }

    @Test
    void whatIsStruckOutStaysInTheRecordAndStrikingTheStrikePutsItBack() {
        JobFolder job = job();
        Event wrong = job.append(Entry.correction("0.5° on blade A"));
        Event strike = job.strike(wrong.id(), "it was blade B");

        assertThat(job.record().events()).contains(wrong, strike);
        assertThat(job.record().standing()).isEmpty();
        assertThatThrownBy(() -> job.strike(wrong.id(), "again")).hasMessageContaining("crossed out already");

        job.strike(strike.id(), "it was A after all");
        assertThat(job.record().standing()).containsExactly(wrong);
        assertThatThrownBy(() -> job.strike("e9", ""))
                .hasMessage("entry 'e9': no entry of that id in 'Invented job', "
                        + "expected the id of an entry (e1 to e3)");
    }

    @Test
    void aLabelThatLooksLikeAnIdOrSaysNothingIsRefused() throws IOException {
        JobFolder job = job();
        Path raw = InventedJobs.recording(dir, "1.wav", 1);

        assertThatThrownBy(() -> job.addRecording(raw, run("e7"))).hasMessageContaining("looks like the id");
        assertThatThrownBy(() -> job.addRecording(raw, run("  "))).hasMessageContaining("label");
        assertThatThrownBy(() -> job.append(Entry.correction(" "))).hasMessageContaining("no text");
        assertThat(job.record().events()).isEmpty();
        assertThat(job.path().resolve("recordings")).isEmptyDirectory();
    }

    @Test
    void aFolderThatIsNotEmptyIsRefusedAndLeftAlone() throws IOException {
        Path folder = Files.createDirectory(dir.resolve("shop"));
        Path other = Files.writeString(folder.resolve("invoice.txt"), "x");

        assertThatThrownBy(() -> InventedJobs.in(folder))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("invoice.txt");
        assertThat(folder.toFile().list()).containsExactly("invoice.txt");

        Path job = job().path();
        assertThatThrownBy(() -> InventedJobs.in(job)).hasMessageContaining("a job is here already");
        assertThatThrownBy(() -> InventedJobs.in(other)).hasMessageContaining("a file, expected a folder");
    }

    @Test
    void whatIsNoJobIsToldApart() throws IOException {
        assertThatThrownBy(() -> JobFolder.open(dir.resolve("none"))).hasMessageContaining("no such folder");
        assertThatThrownBy(() -> JobFolder.open(dir)).hasMessageContaining("a folder without job.json");
        Path file = Files.writeString(dir.resolve("f"), "");
        assertThatThrownBy(() -> JobFolder.open(file)).hasMessageContaining("a file, expected a job folder");
        JobFolder noJob = InventedJobs.on(new RealDisk(), dir);
        assertThatThrownBy(() -> noJob.append(Entry.note("x"))).hasMessageContaining("a folder without job.json");
        assertThat(dir.resolve("job.lock")).doesNotExist();
    }

    @Test
    void changedAndMissingRecordingsAreNamed() throws IOException {
        JobFolder job = job();
        Event shorter = job.addRecording(InventedJobs.recording(dir, "short.wav", 5000), run("short"));
        Event altered = job.addRecording(InventedJobs.recording(dir, "altered.wav", 5000), run("altered"));
        Event gone = job.addRecording(InventedJobs.recording(dir, "gone.wav", 5000), run("gone"));
        Event touched = job.addRecording(InventedJobs.recording(dir, "touched.wav", 5000), run("touched"));
        Files.write(locate(job, shorter), new byte[10]);
        byte[] bytes = Files.readAllBytes(locate(job, altered));
        bytes[77] ^= 1;
        Files.write(locate(job, altered), bytes);
        Files.setLastModifiedTime(locate(job, altered), FileTime.from(Instant.parse("2031-01-01T00:00:00Z")));
        Files.delete(locate(job, gone));
        Files.setLastModifiedTime(locate(job, touched), FileTime.from(Instant.parse("2031-01-01T00:00:00Z")));

        List<Warning> warnings = job.check(Thoroughness.QUICK);

        assertThat(warnings)
                .extracting(warning -> warning.code().word())
                .containsExactly("recording-changed", "recording-changed", "recording-missing");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(warnings.get(0))).contains("e1 'short'", "10 bytes, were 5000");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(warnings.get(1))).contains("e2 'altered'", "SHA-256");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(warnings.get(2))).contains("e3 'gone'", "gone.wav");
    }

    @Test
    void aChangeThatKeepsSizeAndTimeIsFoundByReadingEveryByte() throws IOException {
        JobFolder job = job();
        Event event = job.addRecording(InventedJobs.recording(dir, "a.wav", 5000), run("a"));
        FileTime time = Files.getLastModifiedTime(locate(job, event));
        byte[] bytes = Files.readAllBytes(locate(job, event));
        bytes[4999] ^= 0x40;
        Files.write(locate(job, event), bytes);
        Files.setLastModifiedTime(locate(job, event), time);

        assertThat(job.check(Thoroughness.QUICK)).isEmpty();
        assertThat(job.check(Thoroughness.EVERY_BYTE))
                .extracting(warning -> warning.code().word())
                .containsExactly("recording-changed");
    }

    @Test
    void aFileThatNoEntryNamesIsTold() throws IOException {
        JobFolder job = job();
        job.addRecording(InventedJobs.recording(dir, "a.wav", 50), run("a"));
        Files.writeString(job.path().resolve("recordings/by-hand.wav"), "x");

        assertThat(job.check(Thoroughness.QUICK))
                .extracting(warning -> warning.code().word())
                .containsExactly("file-not-in-record");
    }

    @Test
    void photosAndPapersGetAnEntryEachAllOrNone() throws IOException {
        JobFolder job = job();
        Path pdf = Files.writeString(dir.resolve("sheet.pdf"), "%PDF-1.4\n");
        Path text = Files.writeString(dir.resolve("remarks.txt"), "torque as found");
        Path lying = Files.writeString(dir.resolve("photo.jpg"), "%PDF-1.4\n");

        List<Event> events = job.attach(List.of(pdf, text), "as delivered", Optional.empty());

        assertThat(events).extracting(Event::kind).containsOnly(Kind.ATTACHMENT);
        assertThat(events).extracting(Event::text).containsOnly("as delivered");
        assertThat(job.check(Thoroughness.EVERY_BYTE)).isEmpty();
        assertThatThrownBy(() -> job.attach(List.of(text, lying), "", Optional.empty()))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("photo.jpg:byte 0: by its content a PDF paper, expected a JPEG picture");
        assertThatThrownBy(() -> job.attach(List.of(text, dir.resolve("none.pdf")), "", Optional.empty()))
                .hasMessageContaining("no such file");
        assertThat(job.record().events()).hasSize(2);
    }

    @Test
    void aFileWithoutAKnownEndingIsTakenForWhatItHolds() throws IOException {
        Path scan = Files.writeString(dir.resolve("scan"), "%PDF-1.7");
        Event event = job().attach(List.of(scan), "", Optional.empty()).get(0);

        assertThat(((Detail.Attachment) event.detail()).type()).isEqualTo(FileNature.PDF);
    }

    @Test
    void aResultThatWasKeptOnAnotherMachineOrForAnotherQuestionCountsAsNotThere() throws IOException {
        Path results = dir.resolve("results");
        Path folder = results.resolve(ResultCache.FOLDER);
        ResultCache here = new ResultCache(results, MachineKey.in(dir.resolve("settings here")));
        ResultCache elsewhere = new ResultCache(results, MachineKey.in(dir.resolve("settings elsewhere")));
        elsewhere.put("amplitudes", new byte[] {9});
        assertThat(elsewhere.get("amplitudes")).contains(new byte[] {9});
        assertThat(here.get("amplitudes")).isEmpty();

        here.put("amplitudes", new byte[] {1});
        Path kept = folder.resolve(folder.toFile().list()[0]);
        byte[] sealed = Files.readAllBytes(kept);
        here.put("other question", new byte[] {2});
        for (String name : folder.toFile().list()) {
            Files.write(folder.resolve(name), sealed);
        }
        assertThat(here.get("amplitudes")).contains(new byte[] {1});
        assertThat(here.get("other question")).isEmpty();
        assertThat(new ResultCache(results, MachineKey.in(dir.resolve("settings here"))).get("amplitudes"))
                .as("the key stays")
                .contains(new byte[] {1});
    }

    @Test
    void resultsAreKeptByWhatTheyDependOnAndMayVanishOrRotAtAnyTime() throws IOException {
        ResultCache cache = job().cache();
        assertThat(cache.get("hash + options")).isEmpty();

        cache.put("hash + options", new byte[] {1, 2, 3});
        assertThat(cache.get("hash + options")).contains(new byte[] {1, 2, 3});
        assertThat(cache.get("hash + other options")).isEmpty();

        Path folder = dir.resolve("job/cache");
        Path kept = folder.resolve(folder.toFile().list()[0]);
        byte[] bytes = Files.readAllBytes(kept);
        bytes[bytes.length - 1] ^= 1;
        Files.write(kept, bytes);
        assertThat(cache.get("hash + options")).isEmpty();
        Files.delete(kept);
        Files.delete(folder);
        cache.put("hash + options", new byte[0]);
        assertThat(cache.get("hash + options")).contains(new byte[0]);
    }
}
