package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.units.SignalUnit;
import evenblade.tell.chart.PlottedEstimate.PlacedEstimate;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Bars of runs that scatter much, beside values near 1. */
@DisplayName("An error bar")
class BarRoomTest {
    private static final PlottedEstimate USUAL = new PlottedEstimate(1, 0.8, 1.25, true);
    private static final PlottedEstimate ENORMOUS = new PlottedEstimate(1.1, 0.005, 235, true);

    private static TrendPicture trend(PlottedEstimate... estimates) {
        return new TrendPicture(
                Caption.of("invented job"),
                Stream.of(estimates).map(e -> "run").toList(),
                List.of(new TrendPicture.Band(
                        "amplitude (m/s² peak)",
                        List.of(new TrendPicture.Line(
                                "propeller 1×",
                                Stream.of(estimates).map(Optional::of).toList())))),
                List.of());
    }

    private static List<String> key(Picture picture) {
        return picture.key().stream().map(KeyEntry::words).toList();
    }

    @Test
    @DisplayName("that ends near the values is shown whole, and nothing is said")
    void usualBarsAreWhole() {
        assertThat(BarRoom.axis("", List.of(USUAL)).max()).isGreaterThanOrEqualTo(1.25);
        assertThat(key(trend(USUAL, USUAL))).noneMatch(words -> words.contains("cut at the frame"));
    }

    @Test
    @DisplayName("that would press the values flat doesn't make the axis longer; the key says how far it goes on")
    void enormousBarsAreCutAndSaid() {
        assertThat(BarRoom.axis("", List.of(USUAL, ENORMOUS)).max()).isBetween(1.25, 2.2);
        assertThat(key(trend(USUAL, ENORMOUS))).contains("bar cut at the frame: amplitude goes up to 235 m/s² peak");
    }

    @Test
    @DisplayName("is cut against engine speed too")
    void alsoAgainstRpm() {
        Picture picture = new AmplitudeAgainstRpmPicture(
                Caption.of("invented"),
                SignalUnit.METRE_PER_SECOND_SQUARED,
                List.of(new AmplitudeAgainstRpmPicture.Line(
                        "blade pass", List.of(new PlacedEstimate(3000, USUAL), new PlacedEstimate(4000, ENORMOUS)))));
        assertThat(key(picture)).anyMatch(words -> words.contains("cut at the frame") && words.contains("235"));
    }

    @Test
    @DisplayName("of a line that stands out nowhere has the axis to itself")
    void whereNothingStandsOut() {
        PlottedEstimate hidden = new PlottedEstimate(0, 0, 3, false);
        assertThat(BarRoom.axis("", List.of(hidden)).max()).isGreaterThanOrEqualTo(3);
        assertThat(BarRoom.key("", List.of(hidden))).isEmpty();
    }

    @Test
    @DisplayName("that is cut ends in an arrow at the frame, and nothing of it is drawn above")
    void anArrowStandsAtTheFrame() {
        ChartTheme theme = new ChartTheme(Palette.LIGHT, 14);
        BufferedImage cut = trend(USUAL, ENORMOUS).image(800, 500, theme);
        Rectangle2D plot = trend(USUAL, ENORMOUS)
                .paint(cut.createGraphics(), 800, 500, theme)
                .plot()
                .orElseThrow();
        // Two runs on an axis from −0.6 to 1.6: the second stands at 1.6/2.2 of the width.
        int x = (int) Math.round(plot.getX() + 1.6 / 2.2 * plot.getWidth());
        int top = (int) Math.round(plot.getY());
        assertThat(darkest(cut, x, top + 2, top + 6)).as("the arrow").isLessThan(110);
        assertThat(darkest(cut, x, top - 5, top - 2)).as("above the frame").isGreaterThan(200);
        BufferedImage whole = trend(USUAL, USUAL).image(800, 500, theme);
        assertThat(darkest(whole, x, top + 2, top + 6)).as("no arrow there").isGreaterThan(200);
    }

    private static int darkest(BufferedImage image, int x, int fromY, int toY) {
        int darkest = 255;
        for (int y = fromY; y <= toY; y++) {
            darkest = Math.min(darkest, new Color(image.getRGB(x, y)).getGreen());
        }
        return darkest;
    }

    @Test
    @DisplayName("wider than its value is read as a range, for plus and minus would reach below zero")
    void aCursorReadsTheRange() {
        ChartTheme theme = new ChartTheme(Palette.LIGHT, 14);
        TrendPicture picture = trend(USUAL, ENORMOUS);
        LaidOut layout = picture.paint(
                new BufferedImage(800, 500, BufferedImage.TYPE_INT_RGB).createGraphics(), 800, 500, theme);
        Rectangle2D plot = layout.plot().orElseThrow();
        Spot wide = layout.at(plot.getX() + 1.6 / 2.2 * plot.getWidth(), plot.getCenterY())
                .orElseThrow();
        assertThat(wide.words()).contains("run, propeller 1×, 95 %: 0.0050 to 235 m/s² peak", "1.10 m/s² peak");
        Spot usual = layout.at(plot.getX() + 0.6 / 2.2 * plot.getWidth(), plot.getCenterY())
                .orElseThrow();
        assertThat(usual.words()).contains("run, propeller 1×", "1.00 ± 0.22 m/s² peak");
    }
}
