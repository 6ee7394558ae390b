package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.json.JsonWriter;
import evenblade.base.units.LengthUnit;
import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.BalanceJob;
import evenblade.face.app.CompareRuns;
import evenblade.face.app.JudgeTracking;
import evenblade.face.app.Progress;
import evenblade.face.app.ShowTrend;
import evenblade.face.app.WeighFindings;
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
import evenblade.tell.document.BalanceDocument;
import evenblade.tell.document.Block;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.Document;
import evenblade.tell.document.Face;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.FindingsDocument;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.RunDocument;
import evenblade.tell.document.TieDocument;
import evenblade.tell.document.TrackingDocument;
import evenblade.tell.document.TrendDocument;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
        written(
                "report",
                job.toString(),
                "--full",
                "--out",
                folder.resolve("out").toString());
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

    /** Every sentence and every row of a document, blanks closed up. */
    private static List<String> said(Document document) {
        List<String> said = new ArrayList<>(rows(document));
        for (Block block : document.blocks()) {
            if (block instanceof Block.Heading heading) {
                said.add(heading.text());
            } else if (block instanceof Block.Paragraph paragraph) {
                said.add(paragraph.sentence().text());
            } else if (block instanceof Block.Known known) {
                said.add(known.sentence().text());
            }
        }
        return said.stream().map(text -> plain(List.of(text))).toList();
    }

    /** The words of the report between two headings. */
    private static String report(String from, String to) {
        int start = page.indexOf(from);
        return words(page.substring(start, page.indexOf(to, start)));
    }

    private static String words(String html) {
        return html.replaceAll("<[^>]*>", " ")
                .replace("&#39;", "'")
                .replace("&quot;", "\"")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&amp;", "&")
                .replaceAll("\\s+", " ");
    }

    @Test
    @DisplayName("about the speed of every run, in the words that go with it")
    void speed() {
        for (Event run : runs) {
            String commandLine = orders(run);
            Document window = RunDocument.speed(
                    AnalyseRecording.ofRun(job, run.id(), Progress.SILENT).orders(), WINDOW);
            String paper = report("<h2>The ground runs</h2>", "<h2>The installation</h2>");
            assertThat(said(window)).hasSizeGreaterThan(3).allSatisfy(text -> {
                assertThat(commandLine).contains(text);
                assertThat(paper).contains(text);
            });
        }
    }

    @Test
    @DisplayName("about the trend over all runs")
    void trend() {
        String commandLine = written("trend", job.toString());
        Document window = TrendDocument.of(
                ShowTrend.follow(job, OptionalDouble.empty()).channels().get(0), WINDOW);
        assertThat(said(window)).hasSizeGreaterThan(10).allSatisfy(text -> assertThat(commandLine)
                .containsPattern(withNameCut(text)));
    }

    /** A run's name may end in "…" where a table is wider than the terminal; every figure behind it must stand whole. */
    private static String withNameCut(String text) {
        StringBuilder cut = new StringBuilder(Pattern.quote(text));
        for (Event run : runs) {
            String name = run.label().orElseThrow();
            for (int kept = 1; text.startsWith(name + " ") && kept < name.length(); kept++) {
                String start = name.substring(0, kept).strip();
                cut.append('|').append(Pattern.quote(start + "…" + text.substring(name.length())));
            }
        }
        return cut.toString();
    }

    @Test
    @DisplayName("about every finding, its evidence, and the tie of shaking and track")
    void findings() {
        String commandLine = written("findings", job.toString());
        WeighFindings.Answer answer = WeighFindings.weigh(job);
        Document window = FindingsDocument.of(answer.findings().list(), answer.tie(), answer.warnings(), WINDOW);
        assertThat(answer.tie()).isPresent();
        assertThat(said(window)).hasSizeGreaterThan(15).allSatisfy(text -> assertThat(commandLine)
                .contains(text));
        String paper = report("<h2>What it points to</h2>", "<h2>What was done, and when</h2>");
        assertThat(said(FindingsDocument.of(
                        answer.findings().list(),
                        Optional.empty(),
                        List.of(),
                        new Phrases(Face.PAPER, WINDOW.figures()))))
                .hasSizeGreaterThan(15)
                .allSatisfy(text -> assertThat(paper).contains(text));
        String tie = report("<h3>1× and track over the runs", "<h2>The ground runs</h2>");
        assertThat(said(TieDocument.of(answer.tie().orElseThrow(), WINDOW)))
                .hasSizeGreaterThan(3)
                .allSatisfy(text -> assertThat(tie).contains(text));
    }

    @Test
    @DisplayName("about the balance weight")
    void balance() throws IOException {
        Path shop = folder.resolve("shop");
        written("practice", shop.toString(), "--to-balance", "--seed", "3");
        written("job", "weight", shop.toString(), "--angles", "against-rotation");
        written(
                "job",
                "weight",
                shop.toString(),
                "--mass",
                "10 g",
                "--radius",
                "60 mm",
                "--angle",
                "0 deg",
                "--label",
                "trial");
        written("practice", shop.toString(), "--next-run", "--label", "trial");
        String commandLine = written("balance", shop.toString());
        Document window =
                BalanceDocument.of(BalanceJob.balance(shop, OptionalDouble.empty(), Optional.empty()), WINDOW);
        written(
                "report",
                shop.toString(),
                "--full",
                "--out",
                folder.resolve("paper").toString());
        String paper = words(Files.readString(folder.resolve("paper").resolve("report.html")));
        assertThat(said(window)).hasSizeGreaterThan(8).allSatisfy(text -> {
            assertThat(commandLine).contains(text);
            assertThat(paper).contains(text);
        });
    }
}
