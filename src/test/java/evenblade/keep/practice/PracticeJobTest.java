package evenblade.keep.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.base.problem.BadInput;
import evenblade.base.units.Length;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PracticeJobTest {
    @TempDir
    static Path folder;

    private static JobFolder job;
    private static PracticeJob.Made made;

    @BeforeAll
    static void makeOne() throws IOException {
        made = PracticeJob.of(PracticeInstallation.geared(), List.of(Fault.BLADE_OUT_OF_TRACK), 5)
                .brief()
                .write(folder.resolve("job"));
        job = JobFolder.open(made.folder());
    }

    @Test
    void theJobTellsFiveRunsAndThreeCorrectionsAndSaysThatItIsInvented() {
        JobRecord record = job.record();
        assertThat(record.invented()).isTrue();
        assertThat(record.name())
                .contains("Invented")
                .contains("blade-out-of-track")
                .contains("seed 5");
        assertThat(record.events())
                .extracting(Event::kind)
                .containsExactly(
                        Kind.NOTE,
                        Kind.TRACKING,
                        Kind.PITCH,
                        Kind.RUN_OUT,
                        Kind.RUN,
                        Kind.CORRECTION,
                        Kind.RUN,
                        Kind.CORRECTION,
                        Kind.TRACKING,
                        Kind.RUN,
                        Kind.CORRECTION,
                        Kind.TRACKING,
                        Kind.PITCH,
                        Kind.RUN_OUT,
                        Kind.RUN,
                        Kind.RUN);
        assertThat(record.events()).extracting(Event::at).isSorted();
        assertThat(job.check(Thoroughness.EVERY_BYTE)).isEmpty();
    }

    /** Usual sizes are 6 mm, 3 g and 35 %; the sizes of seeds are 0.8, 1, 1.3 and 1.6 of them. */
    @Test
    void placeAndSizeOfFaultsGoWithTheSeedInPairsToo() {
        Machine machine = Machine.healthy(PracticeInstallation.geared(), 1);
        List<Fault> pair = List.of(Fault.BLADE_OUT_OF_TRACK, Fault.MASS_IMBALANCE);
        List<String> said = LongStream.range(0, 12)
                .mapToObj(seed -> Ailment.of(pair, machine, seed).stream()
                        .map(each -> each.words(machine))
                        .collect(Collectors.joining("; ")))
                .toList();

        assertThat(said).doesNotHaveDuplicates();
        assertThat(said.get(0))
                .isEqualTo("the tip of blade B runs 4.8 mm ahead of the others;"
                        + " blade C is 2.4 g heavy at its centre of gravity");
        assertThat(said.get(3)).startsWith("the tip of blade B runs 6.0 mm ahead");
        assertThat(said.get(4)).startsWith("the tip of blade C runs 6.0 mm ahead");
        assertThat(Ailment.of(List.of(Fault.WEAK_CYLINDER), machine, -1).get(0).words(machine))
                .isEqualTo("cylinder 1 (in firing order) gives 28 % too little");
    }

    @Test
    void theJobWrittenBySeedNamesTheBladeItPutRight() throws IOException {
        Path written = PracticeJob.of(PracticeInstallation.geared(), List.of(Fault.BLADE_OUT_OF_TRACK), 4)
                .brief()
                .writeBySeed(folder.resolve("by-seed"))
                .folder();
        assertThat(JobFolder.open(written).record().events())
                .extracting(Event::text)
                .contains("Blade C shimmed into track.");
    }

    @Test
    void tipMarksFollowTheBladeThatIsOut() {
        List<Detail.Tracking> sessions = job.record().events().stream()
                .filter(event -> event.kind() == Kind.TRACKING)
                .map(event -> (Detail.Tracking) event.detail())
                .toList();
        assertThat(sessions.get(0).layout().blades()).containsExactly("A", "B", "C");
        assertThat(sessions.get(1).layout().blades()).containsExactly("C", "A", "B");
        // 6 mm out; two readings of 0.4 mm each side scatter by 0.4 mm.
        assertThat(ahead(sessions.get(0), 2)).isCloseTo(6, within(1.6));
        assertThat(ahead(sessions.get(1), 3)).isCloseTo(6, within(1.6));
        assertThat(ahead(sessions.get(2), 3)).isCloseTo(0, within(1.6));
    }

    @Test
    void propellerOncePerRevFallsOnlyWhenItIsPutRight() {
        double found = once(1);
        assertThat(once(2)).isCloseTo(found, within(0.05 * found));
        assertThat(once(3)).isCloseTo(found, within(0.1 * found));
        assertThat(once(4)).isLessThan(0.3 * found);
        assertThat(once(5)).isLessThan(0.3 * found);
    }

    @Test
    void aFolderWithSomethingInItIsRefused() {
        assertThatThrownBy(() -> PracticeJob.of(PracticeInstallation.geared(), List.of(), 1)
                        .write(made.folder()))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("a job is here already");
    }

    @Test
    void theWorkshopIsLeftTidy() throws IOException {
        try (var files = Files.list(made.folder())) {
            assertThat(files.map(file -> file.getFileName().toString())).contains("job.json", "truth");
        }
        assertThat(made.truths()).hasSize(5).allMatch(Files::isRegularFile);
    }

    /** How far a tip stands ahead of the mean of the others, in millimetres. */
    private static double ahead(Detail.Tracking session, int position) {
        List<Double> means = session.session(java.time.Instant.EPOCH).readings().stream()
                .map(marks -> marks.stream()
                        .mapToDouble(Length::millimetres)
                        .average()
                        .orElseThrow())
                .toList();
        double sum = means.stream().mapToDouble(x -> x).sum();
        double own = means.get(position - 1);
        return own - (sum - own) / (means.size() - 1);
    }

    /** True propeller 1× along the shaft in the middle dwell. */
    private static double once(int run) {
        JsonObject dwell =
                JsonDocument.read(made.truths().get(run - 1)).objects("dwells").get(1);
        return dwell.objects("channels").get(0).objects("orders").get(0).number("amplitude");
    }
}
