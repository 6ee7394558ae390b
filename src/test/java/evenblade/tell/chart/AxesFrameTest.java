package evenblade.tell.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

@DisplayName("The frame of a picture")
class AxesFrameTest {
    private static final int ABOVE_PX = 200;
    private static final int LOW_PX = 150; // what a spectrum keeps beside large letters in a small window

    @Test
    @DisplayName("writes the unit alone beside a plot that is too low for the title, and nothing above it")
    void aLowPlotHasTheUnitAlone() {
        AxesFrame frame = new AxesFrame(
                Axis.linear("frequency (Hz)", 0, 400),
                Axis.linear("amplitude, peak (share of full scale)", 0, 1),
                new ChartTheme(Palette.LIGHT, 14));
        BufferedImage image = new BufferedImage(400, ABOVE_PX + 2 * LOW_PX, BufferedImage.TYPE_INT_RGB);
        Graphics2D surface = image.createGraphics();
        surface.setColor(Color.WHITE);
        surface.fillRect(0, 0, image.getWidth(), image.getHeight());

        frame.place(new Rectangle2D.Double(0, ABOVE_PX, 400, LOW_PX));
        frame.paint(surface);
        surface.dispose();

        int inkAbove = 0;
        int inkBeside = 0;
        for (int x = 0; x < image.getWidth(); x++) {
            for (int y = 0; y < ABOVE_PX + LOW_PX; y++) {
                boolean ink = image.getRGB(x, y) != Color.WHITE.getRGB();
                inkAbove += ink && y < ABOVE_PX - 14 ? 1 : 0; // a line of text less
                inkBeside += ink && y >= ABOVE_PX && x < 20 ? 1 : 0;
            }
        }
        assertThat(inkAbove).isZero();
        assertThat(inkBeside).as("the unit").isPositive();
        assertThat(AxesFrame.unitOf("amplitude, peak (share of full scale)")).isEqualTo("share of full scale");
        assertThat(AxesFrame.unitOf("order")).isEqualTo("order");
    }
}
