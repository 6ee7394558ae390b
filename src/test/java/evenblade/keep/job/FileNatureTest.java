package evenblade.keep.job;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FileNatureTest {
    /** Pictures as the platform's own writers make them. */
    @ParameterizedTest
    @CsvSource({"jpg, JPEG", "png, PNG", "gif, GIF", "bmp, BMP", "tiff, TIFF"})
    void aPictureIsKnownByItsContent(String ending, FileNature nature) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(ImageIO.write(new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB), ending, out))
                .isTrue();

        assertThat(FileNature.of(start(out.toByteArray()))).isEqualTo(nature);
        assertThat(FileNature.promisedBy("Photo.of.hub." + ending.toUpperCase(Locale.ROOT)))
                .contains(nature);
    }

    @Test
    void anArchiveIsKnownByItsContent() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("a"));
            zip.write(1);
        }

        assertThat(FileNature.of(start(out.toByteArray()))).isEqualTo(FileNature.ZIP);
    }

    /** The marks of these formats, from memory. */
    @ParameterizedTest
    @CsvSource({
        "%PDF-1.7, PDF",
        "RIFF....WEBPVP8, WEBP",
        "....ftypheic...., HEIF",
        "....ftypisom...., VIDEO",
        "torque as found, TEXT",
        "RIFF....WAVEfmt, TEXT",
        "BMW, TEXT"
    })
    void otherFilesAreKnownByTheirMark(String start, FileNature nature) {
        assertThat(FileNature.of(start.getBytes(StandardCharsets.ISO_8859_1))).isEqualTo(nature);
    }

    @Test
    void bytesThatFitNothingAreUnknown() {
        assertThat(FileNature.of(new byte[] {0, 1, 2, 3})).isEqualTo(FileNature.UNKNOWN);
        assertThat(FileNature.promisedBy("scan.xyz")).isEmpty();
        assertThat(FileNature.promisedBy("scan")).isEmpty();
    }

    @Test
    void everyNatureIsFoundAgainByItsMediaType() {
        assertThat(FileNature.values()).allSatisfy(n -> assertThat(FileNature.ofMediaType(n.mediaType()))
                .contains(n));
    }

    private static byte[] start(byte[] file) {
        return Arrays.copyOf(file, Math.min(file.length, FileNature.BYTES_NEEDED));
    }
}
