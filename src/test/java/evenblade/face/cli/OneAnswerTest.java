package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.json.JsonWriter;
import evenblade.base.units.LengthUnit;
import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.CompareRuns;
import evenblade.face.app.JudgeTracking;
import evenblade.face.app.Progress;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.machine.installation.InstallationFile;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.tell.document.Block;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.Document;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.RunDocument;
import evenblade.tell.document.TrackingDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every figure that the report and the window show of a job is one that the command line writes, to the last digit. */
@Tag("long")
@DisplayName("Command line, window and report give one answer")
class OneAnswerTest {
    private static final Pattern ROW = Pattern.compile("<tr[^>]*>((?:<td[^>]*>[^<]*</td>)+)</tr>");
    private static final Pattern CELL = Pattern.compile("<td[^>]*>([^<]*)</td>");
    private static final Phrases WINDOW = new Phrases(Face.WINDOW, new FigureFormat(LengthUnit.MILLIMETRE));

    @TempDir
    static Path folder;

    private static Path job;
    private static String page;
    private static List<Event> runs;
    private static String installation;

    @BeforeAll
    static void made() throws IOException {
        job = folder.resolve("job");
        new PracticeJob(PracticeInstallation.geared(), List.of(Fault.BLADE_OUT_OF_TRACK), 11, 15, 4000)
                .brief()
                .write(job);
        JobRecord record = JobFolder.open(job).record();
        runs = record.standing(Kind.RUN);
        installation = Files.writeString(
                        folder.resolve("installation.json"),
                        JsonWriter.write(InstallationFile.written(record.installation())))
                .toString();
        written("report", job.toString(), "--out", folder.resolve("out").toString());
        page = Files.readString(folder.resolve("out").resolve("report.html"));
    }

    private static String written(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.status()).as(run.err()).isZero();
        return run.out().replaceAll("\\s+", " ");
    }

    private static String orders(Event run) {
        Detail.Run detail = (Detail.Run) run.detail();
        return written(
                "orders",
                job.resolve(detail.file().path()).toString(),
                "--installation",
                installation,
                "--mark-channel",
                detail.settings().markChannel().orElseThrow(),
                "--full-scale",
                detail.settings().fullScale().orElseThrow());
    }

    /** Rows of the page's tables between two headings, cells side by side. */
    private static List<String> rows(String from, String to) {
        String part = page.substring(page.indexOf(from), page.indexOf(to));
        List<String> rows = new ArrayList<>();
        Matcher row = ROW.matcher(part);
        while (row.find()) {
            List<String> cells = new ArrayList<>();
            Matcher cell = CELL.matcher(row.group(1));
            while (cell.find()) {
                cells.add(cell.group(1).replace("&#39;", "'"));
            }
            rows.add(plain(cells));
        }
        return rows;
    }

    private static List<String> rows(Document document) {
        return document.blocks().stream()
                .filter(Block.Table.class::isInstance)
                .flatMap(block -> ((Block.Table) block).rows().stream())
                .map(row -> plain(row.cells()))
                .toList();
    }

    private static String plain(List<String> cells) {
        return String.join(" ", cells).replaceAll("\\s+", " ").strip();
    }

    @Test
    @DisplayName("about every order of every run")
    void orders() throws IOException {
        StringBuilder all = new StringBuilder();
        List<String> window = new ArrayList<>();
        for (Event run : runs) {
            all.append(orders(run));
            RunOrders orders =
                    AnalyseRecording.ofRun(job, run.id(), Progress.SILENT).orders();
            for (ChannelOrders channel : orders.channels()) {
                channel.dwells()
                        .forEach(dwell -> window.addAll(rows(RunDocument.dwell(orders, channel, dwell, WINDOW))));
            }
        }
        String commandLine = all.toString();
        assertThat(window).hasSizeGreaterThan(400).allSatisfy(row -> assertThat(commandLine)
                .contains(row));
        assertThat(rows("<h2>The ground runs</h2>", "<h2>The installation</h2>"))
                .hasSizeGreaterThan(50)
                .allSatisfy(row -> assertThat(commandLine).contains(row));
    }

    @Test
    @DisplayName("about every change between two runs")
    void changes() {
        String last = runs.get(runs.size() - 1).id();
        StringBuilder all =
                new StringBuilder(written("compare", job.toString(), runs.get(0).id(), last));
        for (int i = 1; i < runs.size(); i++) {
            all.append(written(
                    "compare", job.toString(), runs.get(i - 1).id(), runs.get(i).id()));
        }
        String commandLine = all.toString();
        CompareRuns.Answer answer = CompareRuns.compare(job, runs.get(0).id(), last, OptionalDouble.empty());
        Document window = ComparisonDocument.of(
                answer.comparison(), answer.changes(), answer.warnings(), ComparisonDocument.Extent.ALL, WINDOW);
        assertThat(rows(window)).hasSizeGreaterThan(15).allSatisfy(row -> assertThat(commandLine)
                .contains(row));
        assertThat(rows("<h2>Before and after</h2>", "<h2>Static checks</h2>"))
                .hasSizeGreaterThan(20)
                .allSatisfy(row -> assertThat(commandLine).contains(row));
    }

    @Test
    @DisplayName("about every tip mark and what they say together")
    void marks() {
        String commandLine = written("tracking", job.toString());
        assertThat(rows(TrackingDocument.of(JudgeTracking.judge(job), WINDOW)))
                .hasSizeGreaterThan(2)
                .allSatisfy(row -> assertThat(commandLine).contains(row));
        assertThat(rows("<h2>Static checks</h2>", "<h3>1× and track over the runs"))
                .hasSizeGreaterThan(2)
                .allSatisfy(row -> assertThat(commandLine).contains(row));
    }
}
