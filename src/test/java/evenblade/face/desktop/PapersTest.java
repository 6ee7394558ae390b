package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.StartJob;
import evenblade.keep.practice.PracticeInstallation;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JTabbedPane;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("Papers of a job in the window")
class PapersTest {
    @TempDir
    Path scratch;

    private Path job;
    private Workplace workplace;
    private Hands hands;

    @BeforeEach
    void open() throws IOException {
        workplace = Workplace.in(scratch, 1280, 800);
        hands = workplace.hands();
        job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        workplace.open(job);
        workplace.typeMarks("0", "6.0", "0.5");
        hands.click("enter");
        hands.awaitNamed("together");
    }

    @AfterEach
    void close() {
        if (workplace != null) {
            workplace.close();
        }
    }

    private static String text(Path pdf) throws IOException {
        try (PDDocument sheets = Loader.loadPDF(pdf.toFile())) {
            return new PDFTextStripper().getText(sheets);
        }
    }

    private void choose(String name, String what) {
        Hands.onEventThread(() -> {
            ((JComboBox<?>) hands.named(name)).setSelectedItem(what);
            return null;
        });
    }

    @Test
    @DisplayName("hold a sheet for the propeller maker, with what is asked, to be looked at, printed and written")
    void aSheetForTheMaker() throws IOException {
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_7);
        hands.awaitNamed("what to hand over");
        assertThat(hands.find("question to the maker"))
                .as("asked of the maker alone")
                .isEmpty();
        choose("what to hand over", "Sheet for the propeller maker");
        hands.await("one sheet", () -> hands.find("sheets word")
                .filter(word -> ((javax.swing.JLabel) word).getText().endsWith(": 1 sheet"))
                .isPresent());
        hands.type("question to the maker", "Is blade B straight?");
        Path out = scratch.resolve("papers");
        hands.type("report folder", out.toString());
        hands.await("the sheet", () -> ((SheetsView) hands.named("sheets")).settled());
        hands.photograph(Path.of("target", "screens", "sheet-for-maker.png"));
        hands.click("write report");
        hands.awaitNamed("written");
        assertThat(text(out.resolve("for-maker.pdf"))).contains("Is blade B straight?");
        assertThat(out.resolve("for-maker.html")).exists();
        assertThat(out.resolve("report.pdf")).doesNotExist();
    }

    @Test
    @DisplayName("hold the run card as the sheet with blanks that is printed")
    void aRunCardWithBlanks() throws IOException {
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_5);
        hands.awaitNamed("run card");
        Hands.onEventThread(() -> {
            ((JTabbedPane) hands.named("run card tabs")).setSelectedIndex(2);
            return null;
        });
        hands.await(
                "the sheet",
                () -> hands.named("print card").isEnabled() && ((SheetsView) hands.named("sheets")).settled());
        hands.photograph(Path.of("target", "screens", "run-card-to-print.png"));
        hands.type("card speeds", "4100");
        hands.click("show card");
        hands.await("it anew", () -> hands.named("print card").isEnabled());
        hands.click("write card");
        hands.await("the file", () -> Files.exists(job.resolve("run-card.pdf")));
        hands.awaitRest();
        assertThat(text(job.resolve("run-card.pdf"))).contains("Run card", "4100", "rpm read");
    }
}
