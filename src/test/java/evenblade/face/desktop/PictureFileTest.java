package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.tell.chart.AmplitudeScale;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.SpectrumPicture;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PictureFileTest {
    @TempDir
    private Path folder;

    private static Picture picture(String... caption) {
        return new SpectrumPicture(new SpectrumPicture.Data(
                Caption.of(caption),
                Series.of(0, 1),
                Series.of(1, 1),
                SignalUnit.FULL_SCALE,
                List.of(),
                1,
                AmplitudeScale.DECADES));
    }

    @Test
    void aPictureIsNamedByJobRunAndSpeed() {
        assertThat(PictureFile.of(Optional.of("Invented Trainer / 3"), picture("run-1.wav", "engine 4800 rpm"))
                        .stem())
                .isEqualTo("invented-trainer-3-averaged-spectrum-run-1-wav-engine-4800-rpm");
        assertThat(PictureFile.of(Optional.empty(), picture("x".repeat(300))).stem())
                .hasSizeLessThanOrEqualTo(110);
    }

    @Test
    void theNameOfferedIsNeverOneThatIsThere() throws IOException {
        PictureFile name = new PictureFile("bars");
        assertThat(name.freeIn(folder)).isEqualTo(folder.resolve("bars.png"));
        Files.writeString(folder.resolve("bars.png"), "");
        Files.writeString(folder.resolve("bars-2.png"), "");
        assertThat(name.freeIn(folder)).isEqualTo(folder.resolve("bars-3.png"));
    }

    @Test
    void whatHasNoEndingIsSavedAsPng() {
        assertThat(PictureFile.withEnding(Path.of("a"))).isEqualTo(Path.of("a.png"));
        assertThat(PictureFile.withEnding(Path.of("a.SVG"))).isEqualTo(Path.of("a.SVG"));
        assertThat(PictureFile.withEnding(Path.of("a.png"))).isEqualTo(Path.of("a.png"));
    }
}
