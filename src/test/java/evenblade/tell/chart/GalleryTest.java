package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every picture, from invented data, as PNG and SVG without a display; the files stay in target/gallery to look at. */
class GalleryTest {
    private static final Map<String, Picture> GALLERY = Gallery.all();
    private static final Path FOLDER = Path.of("target", "gallery");

    @BeforeAll
    static void withoutDisplay() throws IOException {
        System.setProperty("java.awt.headless", "true");
        assertThat(GraphicsEnvironment.isHeadless()).isTrue();
        Files.createDirectories(FOLDER);
    }

    static Stream<Map.Entry<String, Picture>> pictures() {
        return GALLERY.entrySet().stream();
    }

    static Stream<Map.Entry<String, Picture>> oneOfEachKind() {
        return pictures().filter(p -> !p.getKey().contains("--"));
    }

    @ParameterizedTest
    @MethodSource("oneOfEachKind")
    void isWrittenAsPngWithMoreThanPaperOnIt(Map.Entry<String, Picture> picture) throws IOException {
        writePng(picture, 800, 500);
    }

    @ParameterizedTest
    @MethodSource("pictures")
    @Tag("long")
    void isWrittenInEverySizeAndShapeWithCrowdedAndOddDataToo(Map.Entry<String, Picture> picture) throws IOException {
        writePng(picture, 800, 500);
        writePng(picture, 1200, 700);
        picture.getValue().toSvg(FOLDER.resolve(picture.getKey() + ".svg"));
    }

    private static void writePng(Map.Entry<String, Picture> picture, int width, int height) throws IOException {
        Path file = FOLDER.resolve(picture.getKey() + "-" + width + ".png");
        picture.getValue().toPng(file, width, height);
        BufferedImage read = ImageIO.read(file.toFile());
        assertThat(read.getWidth()).isEqualTo(width);
        assertThat(read.getHeight()).isEqualTo(height);
        assertThat(shareOfPaper(read)).isBetween(0.2, 0.97);
    }

    @ParameterizedTest
    @MethodSource("oneOfEachKind")
    void isWrittenAsWellFormedSvg(Map.Entry<String, Picture> picture) throws Exception {
        Path file = FOLDER.resolve(picture.getKey() + ".svg");
        picture.getValue().toSvg(file);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        var root = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(Files.readString(file).getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
        assertThat(Files.readString(file)).doesNotContain("-opacity:0;");
        assertThat(root.getTagName()).isEqualTo("svg");
        assertThat(root.getElementsByTagName("*").getLength()).isGreaterThan(50);
        assertThat(Files.size(file)).isLessThan(1_500_000);
    }

    @Test
    void spectrumAndWaterfallAreWrittenInTheColoursOfADarkScreen() throws IOException {
        for (String name : List.of("spectrum", "waterfall", "trend")) {
            ChartTheme theme = ChartTheme.forPage(800, 500).in(Palette.DARK);
            BufferedImage image = GALLERY.get(name).image(800, 500, theme);
            ImageIO.write(image, "png", FOLDER.resolve(name + "-dark.png").toFile());
            assertThat(image.getRGB(1, 1)).isEqualTo(Palette.DARK.of(Ink.PAPER).getRGB());
        }
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
