package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.units.Length;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PictureTest {
    private static final int WIDTH = 800;
    private static final int HEIGHT = 500;

    @ParameterizedTest
    @EnumSource
    void everyKindOfMarkIsSeenInItsColourOnPaperAndScreen(Palette palette) {
        InventedRun run = InventedRun.usual();
        BufferedImage image = Gallery.spectrum(run, AmplitudeScale.DECADES)
                .image(WIDTH, HEIGHT, ChartTheme.forPage(WIDTH, HEIGHT).in(palette));
        for (Ink ink : List.of(Ink.PROPELLER, Ink.CRANK, Ink.OTHER, Ink.TEXT)) {
            assertThat(pixels(image, palette.of(ink))).as("%s", ink).isGreaterThan(30);
        }
        assertThat(pixels(image, palette.of(Ink.BOTH))).isZero();
        BufferedImage coinciding = Gallery.bars(InventedRun.coinciding())
                .image(WIDTH, HEIGHT, ChartTheme.forPage(WIDTH, HEIGHT).in(palette));
        assertThat(pixels(coinciding, palette.of(Ink.BOTH))).isGreaterThan(30);
    }

    /** Its one row used to shrink to a stroke, for the axis below took the room of its bars. */
    @Test
    void aStripOfOneRowHasBarsAsHighAsTheOthers() {
        PlottedEstimate one = new PlottedEstimate(1, 1, 1, true);
        BeforeAfterBarsPicture.Row row =
                new BeforeAfterBarsPicture.Row("invented", MarkKind.PROPELLER, one, one, "no change shown");
        for (int rows : new int[] {4, 14}) {
            BufferedImage image = new BeforeAfterBarsPicture(new BeforeAfterBarsPicture.Data(
                            InventedRun.CAPTION,
                            "run 1",
                            "run 2",
                            List.of(
                                    new BeforeAfterBarsPicture.Strip(
                                            "peak (m/s²)", java.util.Collections.nCopies(rows, row)),
                                    new BeforeAfterBarsPicture.Strip("ratio (no unit)", List.of(row)))))
                    .image(1200, 700);
            int after = Palette.LIGHT.of(Ink.AFTER).getRGB();
            int x = 500;
            List<Integer> heights = new java.util.ArrayList<>();
            int height = 0;
            for (int y = 130; y < 700; y++) {
                if (image.getRGB(x, y) == after) {
                    height++;
                } else if (height > 0) {
                    heights.add(height);
                    height = 0;
                }
            }
            assertThat(heights).hasSize(rows + 1);
            assertThat(heights.get(rows)).isBetween(heights.get(1) - 2, heights.get(1) + 2);
        }
    }

    @Test
    void theMarkStandsAtTheMeasuredAmplitudeAndFrequency() {
        // One detected crank line at half the width and half the height of the plot: 50 of 100 Hz, 0.5 of 1 m/s2.
        OrderMark mark = new OrderMark("crank 1×", MarkKind.CRANK, 1, 50, OptionalDouble.of(0.5), true);
        SpectrumPicture picture = new SpectrumPicture(new SpectrumPicture.Data(
                InventedRun.CAPTION,
                Series.of(0, 49, 50, 51, 100),
                Series.of(0.01, 0.01, 0.95, 0.01, 0.01),
                SignalUnit.METRE_PER_SECOND_SQUARED,
                List.of(mark),
                100,
                AmplitudeScale.LINEAR));
        BufferedImage image = picture.image(WIDTH, HEIGHT);
        Color crank = Palette.LIGHT.of(Ink.CRANK);
        int lowest = IntStream.range(0, HEIGHT)
                .filter(y -> IntStream.range(0, WIDTH)
                                .filter(x -> image.getRGB(x, y) == crank.getRGB())
                                .count()
                        > 5)
                .max()
                .orElseThrow();
        int first = IntStream.range(0, WIDTH)
                .filter(x -> image.getRGB(x, lowest) == crank.getRGB())
                .min()
                .orElseThrow();
        int last = IntStream.range(0, WIDTH)
                .filter(x -> image.getRGB(x, lowest) == crank.getRGB())
                .max()
                .orElseThrow();
        AxesFrame frame = new AxesFrame(
                Axis.linear("frequency (Hz)", 0, 100),
                Axis.linear("acceleration, peak (m/s²)", 0, 1),
                ChartTheme.forPage(WIDTH, HEIGHT));
        Plane plane = frame.place(new java.awt.geom.Rectangle2D.Double(0, 100, WIDTH - 8, HEIGHT - 100));
        assertThat((first + last) / 2.0).isCloseTo(plane.x(50), org.assertj.core.data.Offset.offset(2.0));
        assertThat(lowest).isCloseTo((int) plane.y(0.5), org.assertj.core.data.Offset.offset(16));
    }

    @Test
    void aPeakOneBinWideOutlivesTheThinning() {
        double[] x = new double[100_000];
        double[] y = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = i;
            y[i] = 0.1;
        }
        y[54_321] = 7;
        double[][] thin = Thinning.between(Series.of(x), Series.of(y), 0, x.length, 800);
        assertThat(thin[0].length).isEqualTo(thin[1].length).isLessThanOrEqualTo(4 * 800);
        int peak = IntStream.range(0, thin[1].length)
                .filter(i -> thin[1][i] == 7)
                .findFirst()
                .orElseThrow();
        assertThat(thin[0][peak]).isEqualTo(54_321);
        assertThat(thin[0]).isSorted();
    }

    @Test
    void aStrongLineOneBinWideIsSeenInTheWaterfall() {
        int frames = 50;
        int bins = 4000;
        double[] db = new double[frames * bins];
        java.util.Arrays.fill(db, -60);
        for (int frame = 0; frame < frames; frame++) {
            db[frame * bins + 2001] = 0;
        }
        WaterfallPicture picture = new WaterfallPicture(new WaterfallPicture.Data(
                InventedRun.CAPTION,
                0,
                1,
                frames,
                0.1,
                bins,
                Series.of(db),
                "level (dB re 1 m/s² peak)",
                List.of(),
                Series.of(0, 49),
                Series.of(30, 30),
                399));
        Color strongest = ColourRamp.of(Palette.LIGHT).at(1);
        assertThat(pixels(picture.image(WIDTH, HEIGHT), strongest)).isGreaterThan(300);
    }

    @Test
    void theSamePictureIsTheSameToTheLastByte() {
        Picture picture = Gallery.bars(InventedRun.usual());
        assertThat(picture.png(400, 300)).isEqualTo(picture.png(400, 300));
    }

    @Test
    void aFallOverTheJobIsSeenInTheLowestPictureToo() {
        // A fall from 1.4 to 0.27 m/s2 on an axis to 2: more than half the height of a plot of 20 px or so.
        BufferedImage image = Gallery.trend(6).image(240, 160);
        Color first = Palette.LIGHT.of(LineLook.INK);
        int[] rows = IntStream.range(70, 160)
                .filter(y -> IntStream.range(30, 240).anyMatch(x -> image.getRGB(x, y) == first.getRGB()))
                .toArray();
        assertThat(rows[rows.length - 1] - rows[0]).isGreaterThan(10);
    }

    @Test
    void aPictureTooSmallToReadIsRefusedWithTheLeastSize() {
        assertThatThrownBy(() -> Gallery.angle().image(100, 80))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("100 by 80")
                .hasMessageContaining("240 by 160");
    }

    @Test
    void spreadAndSixteenthsAreReadAsATechnicianWritesThem() {
        TipMarksPicture picture = new TipMarksPicture(new TipMarksPicture.Data(
                InventedRun.CAPTION,
                List.of(
                        new TipMarksPicture.Tip("A", "1", Length.ofInches(0)),
                        new TipMarksPicture.Tip("B", "2", Length.ofInches(0.1875))),
                Length.ofMillimetres(0.4),
                Optional.empty()));
        assertThat(picture.title()).isEqualTo("Tip marks on the block: spread 4.76 mm (3/16 in)");
        assertThat(IntStream.of(-3, 0, 1, 2, 8, 16, 19).mapToObj(TipMarksPicture::sixteenths))
                .containsExactly("-3/16", "0", "1/16", "1/8", "1/2", "1", "1 3/16");
    }

    @Test
    void axesEndOnRoundNumbersAndWholeDecades() {
        assertThat(Axis.fromZero("x", 1.13).max()).isEqualTo(1.2);
        assertThat(Axis.fromZero("x", 0).max()).isEqualTo(1);
        Axis decades = Axis.decades("x", 0.0034, 1.6, 5);
        assertThat(decades.min()).isCloseTo(0.001, org.assertj.core.data.Offset.offset(1e-12));
        assertThat(decades.max()).isCloseTo(10, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(decades.share(0.1)).isCloseTo(0.5, org.assertj.core.data.Offset.offset(1e-12));
    }

    private static long pixels(BufferedImage image, Color colour) {
        long count = 0;
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                count += image.getRGB(x, y) == colour.getRGB() ? 1 : 0;
            }
        }
        return count;
    }
}
