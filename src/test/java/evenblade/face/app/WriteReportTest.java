package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.tell.report.PaperSize;
import evenblade.tell.report.ReportExtent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@DisplayName("Writing the report of a job")
class WriteReportTest {
    @TempDir
    static Path temp;

    private Path job;
    private Path out;
    private WriteReport.Written written;
    private String html;

    /** A practice job, one of whose recordings is gone and another changed. */
    @BeforeAll
    void writeOne() throws IOException {
        job = temp.resolve("Prüfstand 1");
        PracticeJob.of(PracticeInstallation.geared(), List.of(Fault.BLADE_OUT_OF_TRACK), 4)
                .brief()
                .write(job);
        JobFolder folder = JobFolder.open(job);
        List<Event> runs = folder.record().standing(Kind.RUN);
        Files.delete(recording(folder, runs.get(1)));
        Files.write(recording(folder, runs.get(2)), new byte[64], StandardOpenOption.APPEND);
        out = temp.resolve("out here");
        Files.createDirectories(out);
        Files.writeString(out.resolve(WriteReport.HTML), "an earlier report");
        written = WriteReport.write(
                job, Optional.of(out), PaperSize.A4, Optional.empty(), ReportExtent.FULL, Progress.SILENT);
        html = Files.readString(out.resolve(WriteReport.HTML), StandardCharsets.UTF_8);
    }

    private static Path recording(JobFolder folder, Event run) {
        return folder.locate(((Detail.Run) run.detail()).file());
    }

    @Test
    @DisplayName("replaces an earlier one, leaves nothing half-written, and puts tables beside it")
    void writesWholeFiles() throws IOException {
        try (Stream<Path> files = Files.walk(out)) {
            List<String> names = files.filter(Files::isRegularFile)
                    .map(file -> out.relativize(file).toString())
                    .sorted()
                    .toList();
            // Four of the five runs have results.
            assertThat(names).hasSize(2 + 2 * 4 + 1).contains("report.html", "report.pdf", "tables/trend.csv");
            assertThat(names.stream().filter(name -> name.endsWith("orders.csv")))
                    .hasSize(4);
            assertThat(names.stream().filter(name -> name.endsWith("spectrum.csv")))
                    .hasSize(4);
        }
        assertThat(written.files()).hasSize(11).allMatch(Files::isRegularFile);
        assertThat(html).doesNotContain("an earlier report");
        assertThat(Files.readString(out.resolve("report.pdf"), StandardCharsets.ISO_8859_1))
                .startsWith("%PDF-");
    }

    @Test
    @DisplayName("says what the measurements point to, and how surely, without the run whose recording was changed")
    void saysWhatItPointsTo() {
        assertThat(html)
                .contains("point to track: blade B")
                .contains("no longer seen since &#39;put right&#39;")
                .contains("tip marks spread 6.6 mm", "<th>Points to</th>");
    }

    @Test
    @DisplayName("goes on without a recording that is missing, and marks one that was changed")
    void goesOn() {
        assertThat(html)
                .contains("The recording is MISSING from the record: no results.")
                .contains("The recording was CHANGED since it was added")
                .contains(": MISSING</p>", ": CHANGED since it was added</p>");
        assertThat(written.warnings().stream().map(w -> w.code().word()))
                .contains("recording-missing", "recording-changed", "run-in-trouble");
    }

    @Test
    @DisplayName("tells of the true change: 1× fell when the blade was put into track")
    void tellsTheChange() {
        assertThat(html)
                .contains("INVENTED FOR PRACTICE")
                .containsPattern("Propeller 1× at \\d+ engine rpm: lower by [\\d.]+ % \\(95 % interval");
    }

    @Test
    @DisplayName("refuses a place that can't be written to, and keeps what is there")
    void refusesAPlaceThatIsAFile() throws IOException {
        Path file = Files.writeString(temp.resolve("taken"), "mine");
        assertThatThrownBy(() -> WriteReport.write(job, Optional.of(file), PaperSize.A4, Progress.SILENT))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("taken")
                .hasMessageContaining("a folder to write into");
        assertThat(Files.readString(file)).isEqualTo("mine");
    }

    @Test
    @DisplayName("keeps the earlier file where the new one can't be finished")
    void keepsTheEarlierFile() throws IOException {
        OutFolder folder = new OutFolder(temp.resolve("full"));
        folder.put("a.txt", "whole");
        assertThatThrownBy(() -> folder.put("a.txt", sink -> {
                    sink.write('h');
                    throw new IOException("no space left");
                }))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("no space left");
        try (Stream<Path> files = Files.list(temp.resolve("full"))) {
            assertThat(files.map(file -> file.getFileName().toString())).containsExactly("a.txt");
        }
        assertThat(Files.readString(temp.resolve("full/a.txt"))).isEqualTo("whole");
    }
}
