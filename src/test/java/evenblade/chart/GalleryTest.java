package evenblade.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every picture, from invented data, as PNG and SVG without a display; the files stay in target/gallery to look at. */
class GalleryTest {
    private static final Path FOLDER = Path.of("target", "gallery");

    @BeforeAll
    static void withoutDisplay() throws IOException {
        System.setProperty("java.awt.headless", "true");
        assertThat(GraphicsEnvironment.isHeadless()).isTrue();
        Files.createDirectories(FOLDER);
    }

    static Stream<Map.Entry<String, Picture>> pictures() {
        return Gallery.all().entrySet().stream();
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void isWrittenAsPngOfTheSizeAskedForWithMoreThanPaperOnIt(Map.Entry<String, Picture> picture) throws IOException {
        for (int[] size : new int[][] {{1200, 700}, {800, 500}}) {
            Path file = FOLDER.resolve(picture.getKey() + "-" + size[0] + ".png");
            picture.getValue().toPng(file, size[0], size[1]);
            BufferedImage read = ImageIO.read(file.toFile());
            assertThat(read.getWidth()).isEqualTo(size[0]);
            assertThat(read.getHeight()).isEqualTo(size[1]);
            assertThat(shareOfPaper(read)).isBetween(0.2, 0.97);
        }
    }

    @ParameterizedTest
    @MethodSource("pictures")
    void isWrittenAsWellFormedSvg(Map.Entry<String, Picture> picture) throws Exception {
        Path file = FOLDER.resolve(picture.getKey() + ".svg");
        picture.getValue().toSvg(file);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        var root = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(Files.readString(file).getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
        assertThat(root.getTagName()).isEqualTo("svg");
        assertThat(root.getElementsByTagName("path").getLength()).isGreaterThan(30);
        assertThat(Files.size(file)).isLessThan(1_500_000);
    }

    private static double shareOfPaper(BufferedImage image) {
        long paper = 0;
        int white = Palette.LIGHT.of(Ink.PAPER).getRGB();
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                paper += image.getRGB(x, y) == white ? 1 : 0;
            }
        }
        return (double) paper / image.getWidth() / image.getHeight();
    }
}
