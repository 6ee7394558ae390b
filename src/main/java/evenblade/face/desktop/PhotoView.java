package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.Optional;
import javax.swing.JPanel;

/** A photo as large as there is room for. */
final class PhotoView extends JPanel {
    private final String name;
    private transient Optional<BufferedImage> photo = Optional.empty();
    private String words = "opening…";

    PhotoView(String name) {
        this.name = name;
        setPreferredSize(new Dimension(400, 300));
    }

    void show(Optional<BufferedImage> image) {
        photo = image;
        words = name + " is not a picture that can be shown here; it is kept in the job's folder.";
        repaint();
    }

    void wrong(String why) {
        words = why;
        repaint();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        if (photo.isEmpty()) {
            g.setColor(Look.ink(Ink.QUIET_TEXT));
            g.drawString(words, 0, 2 * Look.em());
        } else {
            BufferedImage image = photo.get();
            double fit = Math.min((double) getWidth() / image.getWidth(), (double) getHeight() / image.getHeight());
            g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            g.drawImage(image, 0, 0, (int) (fit * image.getWidth()), (int) (fit * image.getHeight()), null);
        }
        g.dispose();
    }
}
