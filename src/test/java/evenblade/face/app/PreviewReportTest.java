package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.tell.report.PaperSize;
import evenblade.tell.report.ReportExtent;
import evenblade.tell.report.SheetImages;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("long")
@DisplayName("The sheets of a report, looked at before they are written,")
class PreviewReportTest {
    @TempDir
    Path scratch;

    @Test
    @DisplayName("are as many as are written, of the paper asked for, with something on each, and nothing is written")
    void asManyAsAreWritten() throws IOException {
        Path job = scratch.resolve("job");
        MakePractice.make(job, List.of(), 1, Optional.empty());
        PaperSize paper = PaperSize.named("A4").orElseThrow();
        try (SheetImages sheets = WriteReport.preview(job, paper, ReportExtent.SHORT, Progress.SILENT)) {
            assertThat(Files.exists(job.resolve(WriteReport.PDF))).isFalse();
            WriteReport.write(job, Optional.empty(), paper, Progress.SILENT);
            try (PDDocument written =
                    Loader.loadPDF(job.resolve(WriteReport.PDF).toFile())) {
                assertThat(sheets.count()).isEqualTo(written.getNumberOfPages());
            }
            // ISO 216: an A4 sheet is 297 mm high and 210 mm wide.
            assertThat(sheets.heightToWidth(0)).isBetween(297.0 / 210 - 0.01, 297.0 / 210 + 0.01);
            for (int i = 0; i < sheets.count(); i++) {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(sheets.png(i, 400)));
                assertThat(image.getWidth()).isBetween(399, 401);
                assertThat(darkPoints(image)).as("sheet %d", i).isGreaterThan(100);
            }
        }
    }

    private static int darkPoints(BufferedImage image) {
        int dark = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                dark += (image.getRGB(x, y) & 0xFF) < 128 ? 1 : 0;
            }
        }
        return dark;
    }
}
