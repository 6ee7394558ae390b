package evenblade.face.desktop;

import evenblade.tell.chart.ChartTheme;
import evenblade.tell.chart.Ink;
import evenblade.tell.chart.LaidOut;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.SeenPicture;
import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Zoom;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javax.swing.JPanel;
import javax.swing.Scrollable;
import javax.swing.SwingConstants;
import javax.swing.SwingUtilities;
import javax.swing.Timer;

/** A picture that one can point at and zoom, drawn off the event thread at the fineness of the screen. */
final class PictureView extends JPanel implements Scrollable {
    private static final int LEAST_WIDTH = 240; // smaller no picture can be read
    private static final int LEAST_HEIGHT = 160; // smaller no picture can be read
    /** So long after the last turn of the wheel a part is worked out more finely. */
    private static final int FINER_AFTER_MS = 250;

    private final transient Work work;
    private transient Optional<Picture> picture = Optional.empty();
    private transient Optional<Picture> shown = Optional.empty();
    private transient Optional<Drawn> drawn = Optional.empty();
    private transient Optional<DrawnSize> wished = Optional.empty();
    private final transient Deque<Zoom> before = new ArrayDeque<>();
    private final transient List<Spot> held = new ArrayList<>();
    private transient Optional<Spot> pointed = Optional.empty();
    private transient Optional<Rectangle> box = Optional.empty();
    private transient UnaryOperator<Picture> finer = UnaryOperator.identity();
    private final transient Timer rest = new Timer(FINER_AFTER_MS, e -> workOutFiner());
    private transient Runnable watcher = () -> {};
    private transient Runnable holding = () -> {};
    private int frames;
    private String instead = "";

    PictureView(Work work) {
        this.work = work;
        setName("picture");
        setFocusable(true);
        setMinimumSize(new Dimension(LEAST_WIDTH, LEAST_HEIGHT));
        rest.setRepeats(false);
        new PicturePointer(this);
    }

    /** What is to be drawn, in pixels of the screen. */
    private record DrawnSize(Picture picture, int width, int height, ChartTheme theme) {}

    private record Drawn(DrawnSize wish, BufferedImage image, LaidOut layout, double scale) {}

    /** Shows a picture; of one of the same kind the same part, with the cursors where they were. */
    void show(Picture made) {
        boolean same = picture.map(Picture::title).filter(made.title()::equals).isPresent();
        Optional<Zoom> part = same ? shown.flatMap(Picture::zoom) : Optional.empty();
        picture = Optional.of(made);
        if (!same) {
            letGo();
            before.clear();
        }
        held.replaceAll(spot -> made.again(spot).orElse(spot));
        pointed = pointed.flatMap(made::again);
        Optional<Zoom> whole = made.whole();
        part.filter(zoom -> !before.isEmpty() && whole.isPresent())
                .ifPresentOrElse(zoom -> showPart(zoom.within(whole.get())), () -> showing(made));
        getAccessibleContext()
                .setAccessibleDescription(
                        made.title() + ". " + String.join(", ", made.caption().parts()));
    }

    private void showing(Picture part) {
        shown = Optional.of(part);
        revalidate();
        repaint();
        watcher.run();
    }

    private void showPart(Zoom zoom) {
        picture.ifPresent(whole -> showing(whole.zoomedTo(zoom)));
        rest.restart();
    }

    private void workOutFiner() {
        Optional<Picture> coarse = shown;
        if (coarse.isEmpty() || before.isEmpty()) {
            return;
        }
        UnaryOperator<Picture> how = finer;
        work.aside(() -> {
            Picture fine = how.apply(coarse.get());
            SwingUtilities.invokeLater(() -> {
                if (fine != coarse.get() && shown.equals(coarse)) {
                    held.replaceAll(spot -> fine.again(spot).orElse(spot));
                    showing(fine);
                }
            });
        });
    }

    /** Shows words where there is no picture. */
    void showInstead(String words) {
        picture = Optional.empty();
        shown = Optional.empty();
        drawn = Optional.empty();
        before.clear();
        letGo();
        instead = words;
        repaint();
    }

    /** Called whenever the cursors or the part shown change. */
    void watchedBy(Runnable whoever) {
        watcher = whoever;
    }

    /** Called when a cursor is held by a click. */
    void onHold(Runnable then) {
        holding = then;
    }

    /** How a part is worked out more finely than the whole was; gives the same picture back where it can't be. */
    void finer(UnaryOperator<Picture> how) {
        finer = how;
    }

    /** The picture as it is in sight, without cursors. */
    Optional<Picture> picture() {
        return shown;
    }

    /** Exactly what is seen, cursors and all. */
    Optional<Picture> seen() {
        return shown.map(part -> cursors().isEmpty() ? part : new SeenPicture(part, cursors()));
    }

    /** Cursors in order: those held, and the one under the pointer while there is room for it. */
    List<Spot> cursors() {
        List<Spot> spots = new ArrayList<>(held);
        if (held.size() < 2) {
            pointed.ifPresent(spots::add);
        }
        return spots;
    }

    Optional<LaidOut> layoutDrawn() {
        return drawn.map(Drawn::layout);
    }

    /** Pixels of the drawing for each of the window's. */
    double scale() {
        return drawn.map(Drawn::scale).orElse(1.0);
    }

    void point(Optional<Spot> spot) {
        pointed = spot;
        repaint();
        watcher.run();
    }

    /** Holds the cursor under the pointer; a third one takes the place of the first two. */
    void hold() {
        pointed.ifPresent(spot -> {
            if (held.size() == 2) {
                held.clear();
            }
            held.add(spot);
            point(Optional.empty());
            holding.run();
        });
    }

    void letGo() {
        held.clear();
        point(Optional.empty());
    }

    /** Whether there are cursors to let go. */
    boolean holds() {
        return !held.isEmpty();
    }

    /** Shows a part; the way back leads to what was shown before. */
    void zoom(Zoom part, boolean step) {
        shown.flatMap(Picture::zoom).filter(now -> !now.equals(part)).ifPresent(now -> {
            if (step || before.isEmpty()) {
                before.push(now);
            }
            showPart(part);
        });
    }

    /** One step back to the whole. */
    void back() {
        if (!before.isEmpty()) {
            showPart(before.pop());
        }
    }

    /** All that could be shown. */
    Optional<Zoom> whole() {
        return picture.flatMap(Picture::whole);
    }

    void showWhole() {
        picture.filter(whole -> !before.isEmpty()).ifPresent(whole -> {
            before.clear();
            showing(whole);
        });
    }

    boolean zoomed() {
        return !before.isEmpty();
    }

    /** The box that is being drawn with the pointer. */
    void box(Optional<Rectangle> drawing) {
        box = drawing;
        repaint();
    }

    /** Drawings so far, for whoever measures how fluent it is. */
    int frames() {
        return frames;
    }

    /** Whether what is on screen is the picture asked for, at its size. */
    boolean settled() {
        return shown.isEmpty() || drawn.isPresent() && drawn.get().wish().picture() == shown.get() && wished.isEmpty();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics;
        g.setColor(Look.ink(Ink.PAPER));
        g.fillRect(0, 0, getWidth(), getHeight());
        if (shown.isEmpty()) {
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
                new DrawnSize(shown.get(), (int) (getWidth() * scale), (int) (getHeight() * scale), Look.theme(scale));
        if (drawn.isEmpty() || !drawn.get().wish().equals(wish)) {
            ask(wish, scale);
        }
        drawn.ifPresent(d -> {
            g.drawImage(d.image(), 0, 0, getWidth(), getHeight(), null);
            paintCursors((Graphics2D) g.create(), d);
        });
        if (hasFocus()) {
            g.setColor(Look.ink(Ink.CRANK));
            g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
            g.drawRect(1, 1, getWidth() - 3, getHeight() - 3);
        }
    }

    private void paintCursors(Graphics2D g, Drawn on) {
        box.ifPresent(drawing -> {
            g.setColor(Look.ink(Ink.LIMIT));
            g.draw(drawing);
        });
        g.scale(1 / on.scale(), 1 / on.scale());
        on.layout().paint(g, on.wish().theme(), cursors());
        g.dispose();
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

    /** The latest wish is drawn next; what took its time is shown all the same, until the next is there. */
    private void ask(DrawnSize wish, double scale) {
        boolean busy = wished.isPresent();
        if (busy && wished.get().equals(wish)) {
            return;
        }
        wished = Optional.of(wish);
        if (!busy) {
            draw(scale);
        }
    }

    private void draw(double scale) {
        DrawnSize wish = wished.orElseThrow();
        work.aside(() -> {
            BufferedImage image = new BufferedImage(wish.width(), wish.height(), BufferedImage.TYPE_INT_RGB);
            Graphics2D surface = image.createGraphics();
            LaidOut layout = wish.picture().paint(surface, wish.width(), wish.height(), wish.theme());
            surface.dispose();
            SwingUtilities.invokeLater(() -> {
                boolean latest = wished.filter(wish::equals).isPresent();
                if (shown.isPresent()) {
                    drawn = Optional.of(new Drawn(wish, image, layout, scale));
                    frames++;
                    repaint();
                    watcher.run();
                }
                if (latest) {
                    wished = Optional.empty();
                } else {
                    draw(scale);
                }
            });
        });
    }

    /** Where the plot lies, in pixels of the window. */
    Optional<Rectangle2D> plot() {
        return drawn.flatMap(d -> d.layout()
                .plot()
                .map(plot -> new Rectangle2D.Double(
                        plot.getX() / d.scale(),
                        plot.getY() / d.scale(),
                        plot.getWidth() / d.scale(),
                        plot.getHeight() / d.scale())));
    }

    private int leastHeight() {
        return shown.map(made -> (int) (made.leastHeightEm() * Look.theme(1).textPx()))
                .orElse(LEAST_HEIGHT);
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(2 * LEAST_WIDTH, leastHeight());
    }

    @Override
    public Dimension getPreferredScrollableViewportSize() {
        return new Dimension(2 * LEAST_WIDTH, 2 * LEAST_HEIGHT);
    }

    @Override
    public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
        return 2 * Look.em();
    }

    @Override
    public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
        return orientation == SwingConstants.VERTICAL ? visible.height / 2 : visible.width / 2;
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return getParent() == null || getParent().getHeight() >= leastHeight();
    }
}
