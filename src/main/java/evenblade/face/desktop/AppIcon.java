package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import evenblade.tell.chart.Palette;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;

/** The program's own sign: three even blades round a hub, and one wave under them. Drawn, so that it is sharp at any size. */
final class AppIcon {
    /** Two look like a bow, four like a cross. */
    private static final int BLADES = 3;

    private AppIcon() {}

    static Image of(int size) {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.scale(size / 100.0, size / 100.0);
        g.setColor(Palette.LIGHT.of(Ink.PROPELLER));
        g.fill(new Ellipse2D.Double(0, 0, 100, 100));
        g.setColor(Palette.LIGHT.of(Ink.PAPER));
        for (int blade = 0; blade < BLADES; blade++) {
            Graphics2D turned = (Graphics2D) g.create();
            turned.rotate(2 * Math.PI * blade / BLADES, 50, 46);
            turned.fill(new Ellipse2D.Double(44, 8, 12, 40));
            turned.dispose();
        }
        g.setColor(Palette.LIGHT.of(Ink.CRANK));
        g.fill(new Ellipse2D.Double(41, 37, 18, 18));
        Path2D wave = new Path2D.Double();
        wave.moveTo(14, 82);
        wave.curveTo(26, 66, 38, 66, 50, 82);
        wave.curveTo(62, 98, 74, 98, 86, 82);
        g.setStroke(new BasicStroke(6, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.draw(wave);
        g.dispose();
        return image;
    }
}
