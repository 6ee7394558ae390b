package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Series;
import evenblade.tell.chart.Spot.What;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Figures are those that the invented curves below are made of. */
@DisplayName("A cursor")
class CursorTest {
    private static final double BIN_HZ = 0.25;

    /** A floor of 0.001 with peaks of 0.5 at 20 Hz, 0.2 at 50 Hz and 0.1 at 75 Hz; the line at 50 Hz was measured as 0.21 ± 0.01. */
    private static SpectrumPicture spectrum() {
        double[] hz = new double[400];
        double[] height = new double[hz.length];
        Arrays.setAll(hz, i -> i * BIN_HZ);
        Arrays.fill(height, 0.001);
        height[80] = 0.5;
        height[200] = 0.2;
        height[300] = 0.1;
        OrderMark mark = new OrderMark("blade pass", MarkKind.PROPELLER, 2, 50, OptionalDouble.of(0.21), 0.01, true);
        return new SpectrumPicture(new SpectrumPicture.Data(
                        Caption.of("invented"),
                        Series.of(hz),
                        Series.of(height),
                        SignalUnit.METRE_PER_SECOND_SQUARED,
                        List.of(mark),
                        99,
                        AmplitudeScale.DECADES)
                .turning(Optional.of(new ShaftSpeeds(25, 2.5))));
    }

    private static LaidOut layout(Picture picture) {
        BufferedImage image = new BufferedImage(900, 500, BufferedImage.TYPE_INT_RGB);
        return picture.paint(image.createGraphics(), 900, 500, new ChartTheme(Palette.LIGHT, 14));
    }

    private static Spot at(Picture picture, double shareX, double shareY) {
        LaidOut layout = layout(picture);
        Rectangle2D plot = layout.plot().orElseThrow();
        return layout.at(plot.getX() + shareX * plot.getWidth(), plot.getMaxY() - shareY * plot.getHeight())
                .orElseThrow();
    }

    private static double value(Spot spot, What what) {
        return spot.reading(what).orElseThrow().value();
    }

    @Test
    @DisplayName("goes to the peak beside it and reads Hz, both orders and the height")
    void snapsToAPeak() {
        Spot spot = at(spectrum(), 20.4 / 99, 0.4);
        assertThat(value(spot, What.FREQUENCY)).isEqualTo(20);
        assertThat(value(spot, What.PROPELLER_ORDER)).isEqualTo(0.8);
        assertThat(value(spot, What.CRANK_ORDER)).isEqualTo(0.32);
        assertThat(value(spot, What.AMPLITUDE)).isEqualTo(0.5);
        assertThat(spot.words()).contains("20.00 Hz", "0.800 × propeller", "0.320 × crank", "0.500 m/s² peak");
    }

    @Test
    @DisplayName("reads what was measured of a marked line, with its ±, not the curve")
    void readsTheMeasuredLine() {
        Spot spot = at(spectrum(), 50.3 / 99, 0.4);
        assertThat(spot.words()).contains("blade pass", "50.00 Hz", "0.210 ± 0.010 m/s² peak");
    }

    @Test
    @DisplayName("reads the curve where there is no peak near")
    void readsTheCurve() {
        assertThat(value(at(spectrum(), 35.0 / 99, 0.4), What.AMPLITUDE)).isEqualTo(0.001);
    }

    @Test
    @DisplayName("measures from another: Hz, orders, times and dB")
    void measuresTheDifference() {
        Spot one = at(spectrum(), 75.0 / 99, 0.4);
        Spot other = at(spectrum(), 20.0 / 99, 0.4);
        // 0.5 / 0.1 = 5 times, 20 log10 5 = 13.98 dB.
        assertThat(one.differenceTo(other))
                .containsExactly("−55.00 Hz", "−2.200 × propeller", "−0.880 × crank", "5.00 times", "+14.0 dB");
    }

    @Test
    @DisplayName("stays where it stands when the picture is zoomed, and says so where that isn't in sight")
    void staysInAZoomedPicture() {
        Spot spot = at(spectrum(), 20.0 / 99, 0.4);
        LaidOut near = layout(spectrum().zoomedTo(Zoom.across(10, 30)));
        Rectangle2D plot = near.plot().orElseThrow();
        assertThat(near.place(spot).orElseThrow().getX()).isCloseTo(plot.getCenterX(), offset(1.0));
        assertThat(layout(spectrum().zoomedTo(Zoom.across(30, 60))).place(spot)).isEmpty();
    }

    @Test
    @DisplayName("reads the same line in mm/s and µm")
    void readsInOtherUnits() {
        // v = a / 2πf: 0.5 / (2π 20) = 3.9789 mm/s; x = v / 2πf = 31.663 µm, at 20 Hz.
        Spot velocity = spectrum()
                .in(ShownUnit.VELOCITY)
                .again(at(spectrum(), 20.0 / 99, 0.4))
                .orElseThrow();
        assertThat(value(velocity, What.AMPLITUDE)).isCloseTo(3.9789, offset(1e-4));
        Spot way = spectrum().in(ShownUnit.DISPLACEMENT).again(velocity).orElseThrow();
        assertThat(value(way, What.AMPLITUDE)).isCloseTo(31.663, offset(1e-3));
        assertThat(way.words()).contains("31.7 µm peak");
        assertThat(velocity.differenceTo(way)).as("no ratio between units").doesNotContain("times");
    }

    @Test
    @DisplayName("has no choice of unit where the scale isn't known")
    void noUnitsWithoutAScale() {
        assertThat(ShownUnit.of(SignalUnit.FULL_SCALE)).containsExactly(ShownUnit.AS_MEASURED);
        assertThat(ShownUnit.of(SignalUnit.VOLT)).containsExactly(ShownUnit.AS_MEASURED);
        assertThat(spectrum().units()).hasSize(5);
    }

    @Test
    @DisplayName("finds the peaks listed, highest first, one for each line, noise left out")
    void listsThePeaks() {
        assertThat(spectrum().peaks()).extracting(Spot::x).containsExactly(20.0, 50.0, 75.0);
        assertThat(spectrum().peaks()).extracting(Spot::y).containsExactly(0.5, 0.21, 0.1);
        assertThat(spectrum().zoomedTo(Zoom.across(40, 80)).peaks()).hasSize(2);
    }

    @Test
    @DisplayName("reads the second curve too")
    void readsASecondCurve() {
        SpectrumCurve other = new SpectrumCurve(
                "the loudest", new Curve(Series.of(0, 20, 40), Series.of(0.1, 0.9, 0.1)), SpectrumCurve.Role.LOUDEST);
        Spot spot = at(spectrum().with(List.of(other)), 20.0 / 99, 0.4);
        assertThat(spot.words()).contains("the loudest 0.900 m/s² peak");
    }

    @Test
    @DisplayName("in a saved picture is in its caption")
    void standsInTheCaption() {
        SeenPicture seen = new SeenPicture(spectrum(), List.of(at(spectrum(), 20.0 / 99, 0.4)));
        assertThat(seen.caption().parts()).last().asString().startsWith("cursor 1: 20.00 Hz");
        assertThat(seen.image(900, 500)).isNotEqualTo(spectrum().image(900, 500));
    }

    @Test
    @DisplayName("in a waterfall reads time, Hz, order, speed and level of the strongest beside it")
    void readsAWaterfall() {
        int bins = 100;
        double[] db = new double[10 * bins];
        Arrays.fill(db, -60);
        for (int frame = 0; frame < 10; frame++) {
            db[frame * bins + 40] = -10;
        }
        WaterfallPicture fall = new WaterfallPicture(new WaterfallPicture.Data(
                Caption.of("invented"),
                0.5,
                1,
                10,
                1,
                bins,
                Series.of(db),
                "level (dB)",
                List.of(new OrderMark("propeller 2×", MarkKind.PROPELLER, 2, 40, OptionalDouble.empty(), true)),
                Series.of(0, 10),
                Series.of(20, 20),
                99));
        Spot spot = at(fall, 0.5, 0.41);
        assertThat(spot.words())
                .containsExactly("5.00 s", "40.00 Hz", "2.000 × propeller", "1200 rpm propeller", "−10.0 dB");
        Zoom near = fall.zoom()
                .orElseThrow()
                .wheel(0.25, 0.5, 0.4, false, fall.whole().orElseThrow());
        assertThat(value(at(fall.zoomedTo(near), 0.5, 0.4), What.FREQUENCY)).isEqualTo(40);
    }

    @Test
    @DisplayName("in bars reads the row it is at")
    void readsARow() {
        Spot spot = at(Gallery.bars(InventedRun.usual()), 0.2, 0.98);
        assertThat(spot.name())
                .isEqualTo(OrderRows.bars(InventedRun.usual().orders()).get(0).name());
    }
}
