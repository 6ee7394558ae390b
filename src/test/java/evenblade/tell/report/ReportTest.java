package evenblade.tell.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.units.LengthUnit;
import evenblade.judge.comparison.BeforeAndAfter;
import evenblade.judge.comparison.MeasuredRun;
import evenblade.judge.findings.Carried;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.EvidenceRef;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.FindingFact;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.Particulars;
import evenblade.tell.document.Html;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Node;

@DisplayName("The report of a job")
class ReportTest {
    private static final byte[] DOT = Base64.getDecoder()
            .decode("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAIAAACQd1PeAAAADElEQVR4nGP4//8/AAX+Av4N70a4AAAAAElFTkSuQmCC");

    private static ReportInput input(boolean invented, List<Warning> fileWarnings, List<Finding> findings) {
        JobRecord record = InventedReport.record(invented);
        List<Event> runs = record.standing(Kind.RUN);
        ReportedRun before = InventedReport.reported(runs.get(0), InventedReport.orders(2.0, 0.02));
        ReportedRun after = InventedReport.reported(runs.get(1), InventedReport.orders(1.0, 0.01));
        MeasuredRun one = before.measured().orElseThrow();
        MeasuredRun other = after.measured().orElseThrow();
        ReportedComparison compared = new ReportedComparison(
                "'shimmed' against 'as found'",
                List.of("Blade C <shimmed> into track."),
                BeforeAndAfter.compare(one, other, List.of()),
                List.of(ReportFigure.wide("dot", DOT)),
                true);
        return new ReportInput(
                record,
                InventedReport.MORNING.plusDays(1),
                "0.0-test",
                fileWarnings,
                List.of(before, after),
                List.of(compared),
                List.of(),
                List.of(),
                List.of(new ReportContent.Photo("e9", ReportFigure.photo("the hub", DOT), "the hub & flange")),
                LengthUnit.MILLIMETRE,
                List.of(),
                List.of(new Section(
                        evenblade.tell.document.Document.begin()
                                .subject("Shaking and track")
                                .say("At perfect track little would be left.")
                                .done(),
                        java.util.Map.of())),
                new FirstPageFacts(Particulars.NONE, findings));
    }

    private static String html(ReportInput input) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Report(input.content(), PaperSize.A4, ReportExtent.FULL).writeHtml(out);
        return out.toString(StandardCharsets.UTF_8);
    }

    private static byte[] pdf(ReportInput input, PaperSize paper) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Report(input.content(), paper, ReportExtent.FULL).writePdf(out);
        assertThat(FontMappers.instance()
                        .getFontBoxFont("Helvetica", null)
                        .getFont()
                        .getName())
                .as("no font of the system is looked for, no list of them left in the user's home")
                .isEqualTo("DejaVuSansCondensed");
        return out.toByteArray();
    }

    private static Document parsed(String html) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
    }

    private static String words(String html) throws Exception {
        StringBuilder words = new StringBuilder();
        collect(parsed(html).getElementsByTagName("body").item(0), words);
        return words.toString().replaceAll("\\s+", " ");
    }

    private static void collect(Node node, StringBuilder words) {
        for (Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child.getNodeType() == Node.TEXT_NODE) {
                words.append(child.getNodeValue()).append(' ');
            }
            collect(child, words);
        }
    }

    @Test
    @DisplayName("answers on its first lines what was measured, how it stands against before, how sure, what is open")
    void answersFirst() throws Exception {
        String words = words(html(input(false, List.of(), List.of())));
        assertThat(words)
                .contains("Measured 2 ground runs, 1 change, 1 tracking check, on 4 May 2026")
                .contains(
                        "As it is now Run 'shimmed' at 4800 engine rpm, channel across: propeller 1× 1.000 ± 0.020 m/s²")
                // 2.0 to 1.0 at the same speed is half by the definition of a change.
                .contains("Propeller 1× at 4800 engine rpm: lower by 50 %")
                .contains("Blade pass at 4800 engine rpm: no change shown")
                .contains("No run was repeated with nothing changed")
                // 0, 1/16 and 3/16 in: 3/16 in is 4.7625 mm, beyond 1/8 in.
                .contains(
                        "Not marked since the last change; before it: track spread 4.76 mm (3/16 in), BEYOND the limit of 3.18 mm (1/8 in) (invented maker's sheet)");
        assertThat(words.indexOf("In short")).isLessThan(words.indexOf("What was done, and when"));
    }

    @Test
    @DisplayName("tells the whole story in order of time, and strikes out what was struck out")
    void tellsTheStory() throws Exception {
        String html = html(input(false, List.of(), List.of()));
        assertThat(words(html))
                .containsSubsequence(
                        "Ground run: as found",
                        "Tracking checked",
                        "Blade C <shimmed> into track.",
                        "Crossed out, no longer counts",
                        "Wrong note",
                        "Takes entry e4 out of account",
                        "Ground run: shimmed",
                        "hub.jpg, a JPEG picture");
        assertThat(html).containsPattern("<tr class=\"\\s*struck\"><td class=\"when\">[^§]*?Wrong note");
    }

    @Test
    @DisplayName("is well-formed, takes nothing a user wrote for markup, and fetches nothing")
    void standsAlone() throws Exception {
        String html = html(input(false, List.of(), List.of()));
        parsed(html);
        assertThat(html)
                .doesNotContain("<script")
                .contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; &quot;Prüfläufe&quot; ½ Ω")
                .doesNotContain("http://localhost", "src=\"file", "@import", "url(");
        Matcher address = Pattern.compile("(?:src|href)=\"([^\"]{0,12})").matcher(html);
        int found = 0;
        while (address.find()) {
            assertThat(address.group(1)).startsWith("data:image/");
            found++;
        }
        assertThat(found).isGreaterThanOrEqualTo(2);
    }

    @Test
    @DisplayName("leaves out what XML can't hold instead of breaking")
    void survivesControlCharacters() {
        assertThat(Html.escaped("a\u0000b\u0007c\ud800d<e>'\"&")).isEqualTo("abcd&lt;e&gt;&#39;&quot;&amp;");
    }

    @Test
    @DisplayName("names each recording with its hash, and says which is missing or changed")
    void namesTheEvidence() throws Exception {
        Warning missing = Warning.of(
                WarningCode.RECORDING_MISSING,
                new Subject.StoredFile("recordings/before.wav"),
                new Quoted("e1"),
                new Quoted("recordings/before.wav"),
                new Quoted("before.wav"));
        Warning changed = Warning.of(
                WarningCode.ATTACHMENT_CHANGED,
                new Subject.StoredFile("attachments/hub-1.jpg"),
                new Quoted("it was changed"));
        String words = words(html(input(false, List.of(missing, changed), List.of())));
        assertThat(words)
                .contains("recordings/before.wav (came as before.wav, 1234 bytes) : MISSING")
                .contains("attachments/hub-1.jpg (came as hub.jpg, 1234 bytes) : CHANGED since it was added")
                .contains("recordings/after.wav (came as after.wav, 1234 bytes) : as added")
                .contains("SHA-256 " + InventedReport.HASH)
                .contains("Files of the record are missing, changed or not named by it");
        assertThat(words(html(input(false, List.of(), List.of()))))
                .doesNotContain("MISSING")
                .contains("is as it was when it was added");
    }

    @Test
    @DisplayName("of an invented job says so at its head")
    void saysThatItIsInvented() throws Exception {
        assertThat(words(html(input(true, List.of(), List.of())))).contains("INVENTED FOR PRACTICE");
        assertThat(words(html(input(false, List.of(), List.of())))).doesNotContain("INVENTED FOR PRACTICE");
    }

    @Test
    @DisplayName("has a place for findings, with what speaks for and against each")
    void placesFindings() throws Exception {
        Finding finding = new Finding(
                Cause.TRACK,
                Fact.of(FindingFact.POINTS_TO_TRACK_OF, Listed.quoted(List.of("C"))),
                List.of(new EvidenceItem(
                        Fact.of(FindingFact.RUN_OUT_MAKES, Measure.SHARE.of(0.4)),
                        3,
                        EvidenceItem.Origin.STANDING,
                        EvidenceRef.Whole.TIP_MARKS)),
                List.of(new EvidenceItem(
                        Fact.of(FindingFact.TWICE_NOT_TRACK, Measure.NUMBER.of(0.5)),
                        -1,
                        EvidenceItem.Origin.RUNNING,
                        EvidenceRef.Whole.ALL_RUNS)),
                Fact.of(FindingFact.RESEAT_BLADE),
                new Confidence(0.82),
                Optional.empty(),
                Optional.of(new Carried(3.21, 5.07)),
                List.of());
        assertThat(words(html(input(false, List.of(), List.of(finding)))))
                .containsSubsequence(
                        "What it points to",
                        "1. Tip marks and shaking point to track: blade C.",
                        "82 %, fairly sure.",
                        "3.2 mm/s peak",
                        "40 % of the power",
                        "+3 the flange's run-out alone makes 40 %",
                        "−1 2× along is 0.50 of 1×",
                        "Reseat that blade");
        assertThat(words(html(input(false, List.of(), List.of())))).contains("No findings are worked out");
    }

    @Test
    @DisplayName("on paper has numbered sheets with a running head and fonts inside, and can be searched")
    void isLaidOutOnSheets() throws Exception {
        try (PDDocument sheets = Loader.loadPDF(pdf(input(false, List.of(), List.of()), PaperSize.A4))) {
            int pages = sheets.getNumberOfPages();
            assertThat(pages).isBetween(2, 12);
            for (int page = 1; page <= pages; page++) {
                PDPage sheet = sheets.getPage(page - 1);
                // A4 is 210 × 297 mm (ISO 216).
                assertSize(sheet, PDRectangle.A4);
                assertThat(text(sheets, page))
                        .contains("Page " + page + " of " + pages)
                        .contains("Prüfläufe")
                        .contains("Invented two-seater 'Distelfink'");
                for (COSName name : sheet.getResources().getFontNames()) {
                    PDFont font = sheet.getResources().getFont(name);
                    assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                }
            }
            assertThat(text(sheets, 0)).contains("1×", " ± ", "m/s²", "½", "Ω", "−", "ü", "confirmed", "findings");
        }
    }

    @Test
    @DisplayName("of an invented job says so on every sheet, of Letter size where that was asked for")
    void everySheetSaysThatItIsInvented() throws Exception {
        try (PDDocument sheets = Loader.loadPDF(pdf(input(true, List.of(), List.of()), PaperSize.LETTER))) {
            for (int page = 1; page <= sheets.getNumberOfPages(); page++) {
                // Letter is 8.5 × 11 in.
                assertSize(sheets.getPage(page - 1), PDRectangle.LETTER);
                assertThat(text(sheets, page)).as("sheet %d", page).contains("INVENTED FOR PRACTICE");
            }
        }
    }

    private static void assertSize(PDPage sheet, PDRectangle size) {
        assertThat(sheet.getMediaBox().getWidth()).isCloseTo(size.getWidth(), within(1f));
        assertThat(sheet.getMediaBox().getHeight()).isCloseTo(size.getHeight(), within(1f));
    }

    /** The text of one sheet, or of all where the number is 0. */
    private static String text(PDDocument sheets, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        if (page > 0) {
            stripper.setStartPage(page);
            stripper.setEndPage(page);
        }
        return stripper.getText(sheets).replaceAll("\\s+", " ");
    }
}
