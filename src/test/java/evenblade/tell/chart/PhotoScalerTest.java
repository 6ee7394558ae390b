package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("A photo for a page")
class PhotoScalerTest {
    @TempDir
    Path temp;

    private static BufferedImage read(byte[] jpeg) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(jpeg));
    }

    @Test
    @DisplayName("is brought down to its longest side and never up")
    void isScaledDown() throws IOException {
        Path large = write("large.png", new BufferedImage(900, 300, BufferedImage.TYPE_INT_RGB), "png");
        BufferedImage small = read(PhotoScaler.jpeg(large, 300).orElseThrow());
        assertThat(small.getWidth()).isEqualTo(300);
        assertThat(small.getHeight()).isEqualTo(100);
        Path tiny = write("tiny.png", new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB), "png");
        assertThat(read(PhotoScaler.jpeg(tiny, 300).orElseThrow()).getWidth()).isEqualTo(40);
    }

    @Test
    @DisplayName("of much grain is made coarser until it fits")
    void fitsItsBudget() throws IOException {
        BufferedImage grain = new BufferedImage(800, 600, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(5);
        for (int y = 0; y < 600; y++) {
            for (int x = 0; x < 800; x++) {
                grain.setRGB(x, y, random.nextInt(0xFFFFFF));
            }
        }
        Path file = write("grain.png", grain, "png");
        byte[] free = PhotoScaler.jpeg(file, 800).orElseThrow();
        for (int share : new int[] {1, 2, 3}) {
            assertThat(PhotoScaler.lighter(free, free.length / share)).hasSizeLessThanOrEqualTo(free.length / share);
        }
        assertThat(PhotoScaler.lighter(free, free.length)).isSameAs(free);
    }

    @Test
    @DisplayName("is turned upright as the camera noted")
    void isTurnedUpright() throws IOException {
        // Left half red; turned a quarter clockwise (Exif orientation 6), red is on top.
        BufferedImage lying = new BufferedImage(64, 32, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < 32; y++) {
            for (int x = 0; x < 64; x++) {
                lying.setRGB(x, y, x < 32 ? Color.RED.getRGB() : Color.BLUE.getRGB());
            }
        }
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(lying, "jpg", plain);
        Path file = temp.resolve("turned.jpg");
        Files.write(file, withOrientation(plain.toByteArray(), 6));

        BufferedImage upright = read(PhotoScaler.jpeg(file, 100).orElseThrow());

        assertThat(upright.getWidth()).isEqualTo(32);
        assertThat(upright.getHeight()).isEqualTo(64);
        assertThat(new Color(upright.getRGB(16, 8)).getRed()).isGreaterThan(200);
        assertThat(new Color(upright.getRGB(16, 56)).getBlue()).isGreaterThan(200);
    }

    @Test
    @DisplayName("keeps nothing of what the camera wrote beside the picture")
    void leavesThePlaceBehind() throws IOException {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "jpg", plain);
        byte[] picture = plain.toByteArray();
        byte[] place = "GPS 12.3456 N 65.4321 E, invented".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        ByteArrayOutputStream tagged = new ByteArrayOutputStream();
        tagged.write(picture, 0, 2);
        // A comment segment (marker FFFE), where any camera may write what it likes.
        tagged.write(new byte[] {(byte) 0xFF, (byte) 0xFE, 0, (byte) (place.length + 2)});
        tagged.write(place);
        tagged.write(picture, 2, picture.length - 2);
        Path file = temp.resolve("tagged.jpg");
        Files.write(file, tagged.toByteArray());

        byte[] shown = PhotoScaler.jpeg(file, 100).orElseThrow();

        assertThat(new String(shown, java.nio.charset.StandardCharsets.ISO_8859_1))
                .doesNotContain("GPS", "invented");
    }

    @Test
    @DisplayName("of a size that no memory holds is none")
    void isNoneWhereItIsAsLargeAsAWall() throws IOException {
        Path file = write("wall.png", new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "png");
        byte[] bytes = Files.readAllBytes(file);
        // Width and height in the header, with its check sum (PNG specification, 11.2.2, from memory).
        java.nio.ByteBuffer header =
                java.nio.ByteBuffer.wrap(bytes).putInt(16, 60_000).putInt(20, 60_000);
        java.util.zip.CRC32 sum = new java.util.zip.CRC32();
        sum.update(bytes, 12, 17);
        header.putInt(29, (int) sum.getValue());
        Files.write(file, bytes);
        assertThat(PhotoScaler.jpeg(file, 100)).isEmpty();
    }

    @Test
    @DisplayName("of a kind that cameras don't write is none, whatever its name says")
    void otherKindIsNone() throws IOException {
        BufferedImage image = new BufferedImage(40, 20, BufferedImage.TYPE_INT_RGB);
        assertThat(PhotoScaler.jpeg(write("tiff.png", image, "tiff"), 100)).isEmpty();
        assertThat(PhotoScaler.jpeg(write("png.jpg", image, "png"), 100)).isPresent();
    }

    @Test
    @DisplayName("that can't be read is none")
    void damagedIsNone() throws IOException {
        Path file = temp.resolve("damaged.jpg");
        Files.write(file, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, 0, 1, 2});
        assertThat(PhotoScaler.jpeg(file, 100)).isEmpty();
        assertThat(PhotoScaler.jpeg(temp.resolve("missing.jpg"), 100)).isEmpty();
    }

    private Path write(String name, BufferedImage image, String format) throws IOException {
        Path file = temp.resolve(name);
        ImageIO.write(image, format, file.toFile());
        return file;
    }

    /** The picture with an Exif block of one entry put behind its first marker. */
    private static byte[] withOrientation(byte[] jpeg, int orientation) {
        byte[] block = {
            (byte) 0xFF,
            (byte) 0xE1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0,
            0,
            0,
            0,
            0
        };
        byte[] all = new byte[jpeg.length + block.length];
        System.arraycopy(jpeg, 0, all, 0, 2);
        System.arraycopy(block, 0, all, 2, block.length);
        System.arraycopy(jpeg, 2, all, 2 + block.length, jpeg.length - 2);
        return all;
    }
}
