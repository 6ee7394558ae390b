package evenblade.tell.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Particulars;
import evenblade.keep.job.Particulars.Item;
import evenblade.machine.plan.Planner;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("A paper of one sheet")
class OneSheetTest {
    private static final Particulars SAID = new Particulars(Map.of(
            Item.BLADE_SERIALS, "A=101, B=102,C=103", Item.PROPELLER_SERIAL, "invented 7", Item.OWNER, "somebody"));

    @Test
    @DisplayName("for the propeller's maker gives serials, marks with hub positions, what was tried and what is asked")
    void forTheMaker() throws IOException {
        OneSheet sheet = MakersSheet.of(FirstPageTest.job(2.0, 0.38, SAID), Optional.of("Is blade C straight?"));
        try (PDDocument pdf = pdf(sheet)) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(text(pdf))
                    .contains("invented 7", "C 103", "Is blade C straight?")
                    // Marks of the invented record: see InventedReport.
                    .contains("at 3")
                    .contains("What was tried and what it did")
                    // The customer is none of the maker's business.
                    .doesNotContain("somebody");
        }
    }

    @Test
    @DisplayName("for the propeller's maker names no cause, whatever was found")
    void judgesNobody() throws IOException {
        OneSheet sheet =
                MakersSheet.of(FirstPageTest.job(2.0, 0.38, SAID, FirstPageTest.TRACK_CURED), Optional.empty());
        try (PDDocument pdf = pdf(sheet)) {
            assertThat(text(pdf)).doesNotContain("because", "points to", "out of track", "fault");
        }
    }

    @Test
    @DisplayName("for the run has cautions, blanks to fill in, and all speeds in one table")
    void runCard() throws IOException {
        OneSheet sheet =
                RunCardSheet.of(Planner.plan(InventedReport.installation(), List.of(), OptionalDouble.empty()));
        try (PDDocument pdf = pdf(sheet)) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
            assertThat(text(pdf)).contains("ignition off", "Wind, air ____", "Who stands where ____", "rpm read");
        }
    }

    private static PDDocument pdf(OneSheet sheet) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        sheet.writePdf(PaperSize.A4, out);
        return Loader.loadPDF(out.toByteArray());
    }

    private static String text(PDDocument pdf) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        return stripper.getText(pdf).replaceAll("\\s+", " ");
    }
}
