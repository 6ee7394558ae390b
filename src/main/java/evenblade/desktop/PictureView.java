package evenblade.desktop;

import evenblade.chart.ChartTheme;
import evenblade.chart.Ink;
import evenblade.chart.Picture;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.util.Optional;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;

/** Shows a picture, drawn off the event thread at the fineness of the screen. */
final class PictureView extends JPanel {
    private static final int LEAST_WIDTH = 240;
    private static final int LEAST_HEIGHT = 160;

    private final transient Work work;
    private transient Optional<Picture> picture = Optional.empty();
    private transient Optional<Drawn> drawn = Optional.empty();
    private transient Optional<Wish> wished = Optional.empty();
    private String instead = "";

    PictureView(Work work) {
        this.work = work;
        setName("picture");
        setFocusable(true);
        setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
        setPreferredSize(new Dimension(2 * LEAST_WIDTH, 2 * LEAST_HEIGHT));
    }

    /** What is to be drawn, in pixels of the screen. */
    private record Wish(Picture picture, int width, int height, ChartTheme theme) {}

    private record Drawn(Wish wish, BufferedImage image) {}

    void show(Picture shown) {
        picture = Optional.of(shown);
        setToolTipText(null);
        getAccessibleContext()
                .setAccessibleDescription(
                        shown.title() + ". " + String.join(", ", shown.caption().parts()));
        repaint();
    }

    /** Shows words where there is no picture. */
    void showInstead(String words) {
        picture = Optional.empty();
        drawn = Optional.empty();
        instead = words;
        repaint();
    }

    Optional<Picture> picture() {
        return picture;
    }

    /** Whether what is on screen is the picture asked for, at its size. */
    boolean settled() {
        return picture.isEmpty()
                || drawn.isPresent() && drawn.get().wish().picture() == picture.get() && wished.isEmpty();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics;
        g.setColor(Look.ink(Ink.PAPER));
        g.fillRect(0, 0, getWidth(), getHeight());
        if (picture.isEmpty()) {
            g.setColor(Look.ink(Ink.QUIET_TEXT));
            g.setFont(getFont());
            g.drawString(instead, Look.em(), 2 * Look.em());
            return;
        }
        if (getWidth() < LEAST_WIDTH || getHeight() < LEAST_HEIGHT) {
            g.setColor(Look.ink(Ink.QUIET_TEXT));
            g.drawString("Make the window larger", Look.em(), 2 * Look.em());
            return;
        }
        double scale = g.getTransform().getScaleX();
        Wish wish = new Wish(picture.get(), (int) (getWidth() * scale), (int) (getHeight() * scale), Look.theme(scale));
        drawn.ifPresent(d -> g.drawImage(d.image(), 0, 0, getWidth(), getHeight(), null));
        if (drawn.isEmpty() || !drawn.get().wish().equals(wish)) {
            ask(wish);
        }
        if (hasFocus()) {
            g.setColor(Look.ink(Ink.CRANK));
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
            g.drawRect(1, 1, getWidth() - 3, getHeight() - 3);
        }
    }

    private void ask(Wish wish) {
        if (wished.isPresent() && wished.get().equals(wish)) {
            return;
        }
        wished = Optional.of(wish);
        work.aside(() -> {
            BufferedImage image = wish.picture().image(wish.width(), wish.height(), wish.theme());
            SwingUtilities.invokeLater(() -> {
                if (wished.isPresent() && wished.get().equals(wish)) {
                    wished = Optional.empty();
                    drawn = Optional.of(new Drawn(wish, image));
                    repaint();
                }
            });
        });
    }
}
