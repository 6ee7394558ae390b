package evenblade.tell.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value.Listed;
import evenblade.base.units.LengthUnit;
import evenblade.judge.comparison.BeforeAndAfter;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.Confidence;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.FindingFact;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import evenblade.keep.job.Particulars;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("The first page of a report")
class FirstPageTest {
    /** Propeller 1× of the invented job lies at 4800·21/51/60 Hz. */
    private static final double ONCE_HZ = 4800 * 21 / 51.0 / 60;

    static final Finding TRACK_CURED = new Finding(
            Cause.TRACK,
            Fact.of(FindingFact.POINTS_TO_TRACK_OF, Listed.quoted(List.of("C"))),
            List.of(),
            List.of(),
            Fact.of(FindingFact.KEEP_AN_EYE),
            new Confidence(0.9),
            Optional.of(new RunRef("e6", "shimmed")),
            Optional.empty(),
            List.of());

    private static final Finding CYLINDER_OPEN = open(Cause.WEAK_CYLINDER, FindingFact.COMPARE_COMPRESSION, 0.6);

    /** Two runs of an invented job; propeller 1× of each in m/s². */
    static ReportInput job(double before, double after, Particulars particulars, Finding... findings) {
        return job(InventedReport.record(true), LengthUnit.MILLIMETRE, before, after, particulars, findings);
    }

    private static ReportInput job(
            JobRecord record,
            LengthUnit unit,
            double before,
            double after,
            Particulars particulars,
            Finding... findings) {
        List<Event> runs = record.standing(Kind.RUN);
        ReportedRun first = InventedReport.reported(runs.get(0), InventedReport.orders(before, 0.01));
        ReportedRun last = InventedReport.reported(runs.get(1), InventedReport.orders(after, 0.01));
        return new ReportInput(
                record,
                InventedReport.MORNING.plusDays(1),
                "0.0-test",
                List.of(),
                List.of(first, last),
                List.of(new ReportedComparison(
                        "first and last",
                        between(record, runs.get(0), runs.get(1)),
                        BeforeAndAfter.compare(
                                first.measured().orElseThrow(), last.measured().orElseThrow(), List.of()),
                        List.of(),
                        true)),
                List.of(),
                List.of(),
                List.of(),
                unit,
                List.of(),
                List.of(),
                new FirstPageFacts(particulars, List.of(findings)));
    }

    private static List<String> between(JobRecord record, Event first, Event last) {
        return record.standing().stream()
                .filter(event -> event.changesMachine() && record.before(first, event) && record.before(event, last))
                .map(Event::text)
                .toList();
    }

    private static FirstPage page(double before, double after, Finding... findings) {
        return FirstPageComposition.of(job(before, after, Particulars.NONE, findings));
    }

    @Test
    @DisplayName("tells what was cured before what is left, though the leftover is the finding that stands")
    void curedFirst() {
        String story =
                String.join(" ", page(2.0, 0.38, CYLINDER_OPEN, TRACK_CURED).story());
        // 2.0 to 0.38 is 81 % less by the definition of a change; mm/s = 1000·a/(2πf).
        assertThat(story)
                .startsWith("It shook once per propeller turn because blade C was out of track."
                        + " This was done: Blade C <shimmed> into track. That shaking is now 81\u00a0% less (")
                .contains(String.format(
                        "from %.2f to %.2f\u00a0mm/s.", 2e3 / 2 / Math.PI / ONCE_HZ, 0.38e3 / 2 / Math.PI / ONCE_HZ))
                .contains("Still open: A weak cylinder (leans that way, not settled; about ")
                .contains("of the shaking that is left)");
        assertThat(story.indexOf("blade C")).isLessThan(story.indexOf("weak cylinder"));
    }

    private static Finding open(Cause cause, FindingFact next, double sureness) {
        return new Finding(
                cause,
                Fact.of(FindingFact.NO_WEAK_CYLINDER),
                List.of(),
                List.of(),
                Fact.of(next),
                new Confidence(sureness),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    @Test
    @DisplayName("names no cause where the measurements show none, and no shaking where none stands out")
    void noCause() {
        assertThat(page(2.0, 2.0, open(Cause.UNTOLD, FindingFact.MEASURE_ALL, 0.9))
                        .story()
                        .get(0))
                .startsWith("It shakes once per propeller turn; these measurements can't show why yet.");
        assertThat(page(0.1, 0.1, open(Cause.NOTHING, FindingFact.MEASURE_ALL, 0.9))
                        .story()
                        .get(0))
                .startsWith("Nothing in the shaking stands out.")
                .doesNotContain("did not help");
        assertThat(page(2.0, 2.0, open(Cause.LOOSE_MOUNT, FindingFact.MEASURE_ALL, 0.9))
                        .story()
                        .get(0))
                .startsWith("It shakes once per propeller turn. What stands out most: a loose mount.");
    }

    @Test
    @DisplayName("gives leftovers by their share of the shaking, the larger one first")
    void leftoversByShare() {
        // What is left: 1× at 0.38, all other lines at 0.1 m/s²; in mm/s slow lines count for more.
        Finding mass = new Finding(
                Cause.MASS,
                Fact.of(FindingFact.POINTS_TO_MASS),
                List.of(),
                List.of(),
                Fact.of(FindingFact.BALANCE),
                new Confidence(0.6),
                Optional.empty(),
                Optional.empty(),
                List.of());
        String open = page(2.0, 0.38, CYLINDER_OPEN, mass, TRACK_CURED).story().get(1);
        assertThat(open.indexOf("Balance of the propeller")).isPositive().isLessThan(open.indexOf("A weak cylinder"));
    }

    @Test
    @DisplayName("says as plainly that nothing helped, and that it became worse")
    void nothingHelped() {
        assertThat(page(2.0, 2.0, CYLINDER_OPEN).story().get(0))
                .contains("What was done so far did not help.")
                .contains("No change of that shaking is shown");
        assertThat(page(1.0, 2.0).story().get(0))
                .contains("What was done made it no better.")
                .contains("100\u00a0% more (");
    }

    @Test
    @DisplayName("a change after the last run is no change between the runs")
    void changedTooLate() {
        JobRecord all = InventedReport.record(true, 1);
        JobRecord record = new JobRecord(
                all.name(),
                all.invented(),
                all.installation(),
                all.installationAsWritten(),
                all.events().stream().filter(event -> !event.id().equals("e3")).toList());
        ReportInput input = job(record, LengthUnit.MILLIMETRE, 1.0, 2.0, Particulars.NONE);
        assertThat(FirstPageComposition.of(input).story().get(0))
                .contains("Nothing was entered as changed between the first run and the last.")
                .doesNotContain("What was done");
    }

    @Test
    @DisplayName("shows one pair of bars in mm/s, each as long as its value, and every change with number and day")
    void pairOfBars() {
        FirstPage page = page(2.0, 1.0, TRACK_CURED);
        assertThat(page.bars()).extracting(FirstPage.Bar::widthPercent).containsExactly(100, 50);
        assertThat(page.bars()).allMatch(bar -> bar.value().endsWith(" mm/s"));
        assertThat(page.changes())
                .containsExactly(new FirstPage.NumberedChange(1, "4 May 2026", "Blade C <shimmed> into track."));
    }

    @Test
    @DisplayName("names the owner and the serial numbers where they are known, and leaves out what isn't")
    void whoAndWhat() throws IOException {
        Particulars said = new Particulars(
                Map.of(Particulars.Item.REGISTRATION, "X-TEST", Particulars.Item.PROPELLER_SERIAL, "invented 17 & 18"));
        String html = html(job(2.0, 1.0, said, TRACK_CURED));
        assertThat(html)
                .contains("Registration: <b>X-TEST</b>", "Propeller, serial number: <b>invented 17 &amp; 18</b>")
                .contains("<td>Signature</td>")
                .doesNotContain("Owner");
    }

    @Test
    @DisplayName("is the first sheet, whole, and the short report has four sheets at most with what a stranger needs")
    void oneSheetOfFour() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Report(
                        job(2.0, 0.38, Particulars.NONE, CYLINDER_OPEN, TRACK_CURED)
                                .content(),
                        PaperSize.A4,
                        ReportExtent.SHORT)
                .writePdf(out);
        try (PDDocument sheets = Loader.loadPDF(out.toByteArray())) {
            assertThat(sheets.getNumberOfPages()).isBetween(2, 4);
            assertThat(text(sheets, 1))
                    .contains("It shook once per propeller turn")
                    .contains("Still open")
                    .contains("How sure")
                    .contains("ignition off")
                    .contains("Signature");
            assertThat(text(sheets, 2)).doesNotContain("Signature");
            String rest = text(sheets, 0);
            assertThat(rest)
                    .contains("Orders of the first run and of the last")
                    .contains("What was measured with what")
                    .contains("The installation")
                    .contains(InventedReport.HASH.substring(0, 20));
        }
    }

    /** A job about which everything is said, with a picture of the tips and so many more changes. */
    private static ReportInput busy(int moreChanges) {
        Map<Particulars.Item, String> said = new EnumMap<>(Particulars.Item.class);
        for (Particulars.Item item : Particulars.Item.values()) {
            if (item != Particulars.Item.UNITS) {
                said.put(item, "invented particulars of a job");
            }
        }
        return job(
                InventedReport.record(true, moreChanges),
                LengthUnit.MILLIMETRE,
                2.0,
                0.38,
                new Particulars(said),
                CYLINDER_OPEN,
                TRACK_CURED);
    }

    @Test
    @DisplayName("stays one sheet with its place to sign, however much is said and done, and its picture stays on it")
    void oneSheetHoweverMuchWasDone() throws IOException {
        try (PDDocument sheets = sheets(busy(7))) {
            assertThat(text(sheets, 1)).contains("Bolt 7 of the engine mount", "How sure", "Signature");
            assertThat(sheets.getPage(0).getResources().getXObjectNames()).isNotEmpty();
        }
    }

    @Test
    @DisplayName("carries its end over where changes fill it, and what follows begins on that sheet")
    void noSheetForTheEndAlone() throws IOException {
        try (PDDocument sheets = sheets(busy(60))) {
            assertThat(text(sheets, 1)).doesNotContain("Signature");
            int last = 2;
            while (!text(sheets, last).contains("Signature")) {
                last++;
            }
            assertThat(text(sheets, last)).contains("How sure").contains("Tracking before and after");
        }
    }

    @Test
    @DisplayName("says velocities in in/s where the job is in inches")
    void inInches() {
        ReportInput input = job(
                InventedReport.record(true), LengthUnit.INCH, 2.0, 0.38, Particulars.NONE, CYLINDER_OPEN, TRACK_CURED);
        FirstPage page = FirstPageComposition.of(input);
        // An inch is 25.4 mm.
        assertThat(String.join(" ", page.story()))
                .contains(String.format("from %.3f to ", 2e3 / 2 / Math.PI / ONCE_HZ / 25.4))
                .contains("\u00a0in/s.")
                .doesNotContain("mm/s");
        assertThat(page.bars().get(0).value()).endsWith(" in/s");
    }

    private static PDDocument sheets(ReportInput input) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Report(input.content(), PaperSize.A4, ReportExtent.SHORT).writePdf(out);
        return Loader.loadPDF(out.toByteArray());
    }

    private static String html(ReportInput input) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        new Report(input.content(), PaperSize.A4, ReportExtent.SHORT).writeHtml(out);
        return out.toString(StandardCharsets.UTF_8);
    }

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
