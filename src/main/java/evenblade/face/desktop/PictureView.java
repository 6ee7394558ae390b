package evenblade.face.desktop;

import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.Ink;
import evenblade.tell.chart.Picture;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.image.BufferedImage;
import java.util.Optional;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;

/** Shows a picture, drawn off the event thread at the fineness of the screen. */
final class PictureView extends JPanel {
    private static final int LEAST_WIDTH = 240; // smaller no picture can be read
    private static final int LEAST_HEIGHT = 160; // smaller no picture can be read

    /** Letters of body text that a picture is wide and high at least, so that curves have room. */
    private static final double LEAST_LETTERS_ACROSS = 44;

    private static final double LEAST_LETTERS_DOWN = 35; // so many rows of text a picture needs
    private static final double LEAST_LETTER_PX = 8; // smaller letters can't be read

    private final transient Work work;
    private transient Optional<Picture> picture = Optional.empty();
    private transient Optional<Drawn> drawn = Optional.empty();
    private transient Optional<DrawnSize> wished = Optional.empty();
    private String instead = "";

    PictureView(Work work) {
        this.work = work;
        setName("picture");
        setFocusable(true);
        setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent e) {
                requestFocusInWindow();
            }
        });
        setPreferredSize(new Dimension(2 * LEAST_WIDTH, 2 * LEAST_HEIGHT));
    }

    /** What is to be drawn, in pixels of the screen. */
    private record DrawnSize(Picture picture, int width, int height, ChartTheme theme) {}

    private record Drawn(DrawnSize wish, BufferedImage image) {}

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
            words(g, instead);
            return;
        }
        if (getWidth() < LEAST_WIDTH || getHeight() < LEAST_HEIGHT) {
            g.setColor(Look.ink(Ink.QUIET_TEXT));
            words(g, "Make the window larger.");
            return;
        }
        double scale = g.getTransform().getScaleX();
        DrawnSize wish =
                new DrawnSize(picture.get(), (int) (getWidth() * scale), (int) (getHeight() * scale), theme(scale));
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

    /** The usual letters, or smaller ones where the picture would else have no room left beside its words. */
    private ChartTheme theme(double scale) {
        ChartTheme usual = Look.theme(scale);
        double room = Math.min(getWidth() * scale / LEAST_LETTERS_ACROSS, getHeight() * scale / LEAST_LETTERS_DOWN);
        return new ChartTheme(usual.palette(), Math.max(LEAST_LETTER_PX * scale, Math.min(usual.textPx(), room)));
    }

    /** Writes words that wrap. */
    private void words(Graphics2D g, String text) {
        g.setFont(getFont());
        FontMetrics letters = g.getFontMetrics();
        int em = Look.em();
        int y = 2 * em;
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (!line.isEmpty() && letters.stringWidth(line + " " + word) > getWidth() - 2 * em) {
                g.drawString(line.toString(), em, y);
                y += letters.getHeight();
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        g.drawString(line.toString(), em, y);
    }

    private void ask(DrawnSize wish) {
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
