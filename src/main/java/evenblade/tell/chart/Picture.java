package evenblade.tell.chart;

import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.svg.SVGProcessor;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A picture that is drawn once and rendered many ways: on a panel, as PNG, as SVG. Needs no display.
 *
 * <p>Every picture has a title, a caption that says what it was drawn from, a key, and a body that
 * each kind of picture draws for itself.
 */
public interface Picture {
    /** Size of a drawing in SVG, and of a bitmap where nothing else is asked for. */
    int USUAL_WIDTH = 1200;

    int USUAL_HEIGHT = 700; // 12 to 7 with the width

    int LEAST_WIDTH = 240; // smaller no picture can be read
    int LEAST_HEIGHT = 160; // smaller no picture can be read
    /** Title, caption, key, axis and a little plot. */
    double LEAST_HEIGHT_EM = 20;

    /** What the picture shows, in a few words. */
    String title();

    /** What it was drawn from. */
    Caption caption();

    List<KeyEntry> key();

    /** Draws everything below title, caption and key. */
    LaidOut paintBody(Pen pen, Rectangle2D area);

    /** What is shown of it; empty where all of it always is. */
    default Optional<Zoom> zoom() {
        return Optional.empty();
    }

    /** All that could be shown of it. */
    default Optional<Zoom> whole() {
        return zoom();
    }

    /** This picture of another part; only where there is a {@link #zoom}. */
    default Picture zoomedTo(Zoom zoom) {
        return this;
    }

    /** The units that its amplitudes can be shown in; none where there is no choice. */
    default List<ShownUnit> units() {
        return List.of();
    }

    /** This picture in another of its {@link #units}. */
    default Picture in(ShownUnit unit) {
        return this;
    }

    /** Its ten highest peaks in what is shown, the highest first; none where peaks mean nothing. */
    default List<Spot> peaks() {
        return List.of();
    }

    /** A place again in this picture, which may be one of a later moment or another unit. */
    default Optional<Spot> again(Spot spot) {
        return Optional.of(spot);
    }

    /** How high it is at least, in text heights, so that its letters don't lie on each other. */
    default double leastHeightEm() {
        return LEAST_HEIGHT_EM;
    }

    /**
     * Draws the whole picture from the surface's origin on.
     *
     * @param surface a panel's, a bitmap's or any other
     * @param width in pixels, at least 240
     * @param height in pixels, at least 160
     * @param theme colours and text size
     * @return where everything lies
     */
    default LaidOut paint(Graphics2D surface, int width, int height, ChartTheme theme) {
        if (width < LEAST_WIDTH || height < LEAST_HEIGHT) {
            throw new IllegalArgumentException("a picture of " + width + " by " + height
                    + " pixels can't be read; at least " + LEAST_WIDTH + " by " + LEAST_HEIGHT + " is needed");
        }
        Pen pen = new Pen(surface, theme);
        pen.fill(new Rectangle2D.Double(0, 0, width, height), pen.colour(Ink.PAPER));
        double margin = pen.em(0.8);
        double y = margin;
        double room = width - 2 * margin;
        y += pen.lineHeight(TextStyle.TITLE);
        pen.text(
                Caption.shortened(title(), room, TextStyle.TITLE, theme),
                margin,
                y - pen.em(0.35),
                TextStyle.TITLE,
                pen.colour(Ink.TEXT),
                Pen.Align.LEFT);
        for (String line : caption().lines(room, TextStyle.SMALL, theme)) {
            y += pen.lineHeight(TextStyle.SMALL);
            pen.text(line, margin, y - pen.em(0.25), TextStyle.SMALL, pen.colour(Ink.QUIET_TEXT), Pen.Align.LEFT);
        }
        y = paintKey(pen, margin, y + pen.em(0.2), room);
        return paintBody(pen, new Rectangle2D.Double(0, y, width, height - y));
    }

    /** The picture as a bitmap for the page, in light colours. */
    default BufferedImage image(int width, int height) {
        return image(width, height, ChartTheme.forPage(width, height));
    }

    /** The picture as a bitmap. */
    default BufferedImage image(int width, int height, ChartTheme theme) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D surface = image.createGraphics();
        try {
            paint(surface, width, height, theme);
        } finally {
            surface.dispose();
        }
        return image;
    }

    /** The bytes of a PNG file for the page. */
    default byte[] png(int width, int height) {
        return png(width, height, ChartTheme.forPage(width, height));
    }

    /** The bytes of a PNG file. */
    default byte[] png(int width, int height, ChartTheme theme) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        // Not into a file between: while the program ends, after Ctrl-C, none can be registered any more.
        try (MemoryCacheImageOutputStream png = new MemoryCacheImageOutputStream(bytes)) {
            ImageIO.write(image(width, height, theme), "png", png);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The text of an SVG file for the page, {@value #USUAL_WIDTH} by {@value #USUAL_HEIGHT}. */
    default String svg() {
        VectorGraphics2D surface = new VisibleInk();
        paint(surface, USUAL_WIDTH, USUAL_HEIGHT, ChartTheme.forPage(USUAL_WIDTH, USUAL_HEIGHT));
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            new SVGProcessor()
                    .getDocument(surface.getCommands(), new PageSize(USUAL_WIDTH, USUAL_HEIGHT))
                    .writeTo(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toString(StandardCharsets.UTF_8);
    }

    /** Writes a PNG file; the file is begun only when the picture is ready. */
    default void toPng(Path file, int width, int height) throws IOException {
        Files.write(file, png(width, height));
    }

    /** Writes an SVG file; the file is begun only when the picture is ready. */
    default void toSvg(Path file) throws IOException {
        Files.writeString(file, svg());
    }

    private double paintKey(Pen pen, double left, double top, double room) {
        List<KeyEntry> entries = key();
        if (entries.isEmpty()) {
            return top;
        }
        double sample = pen.em(KeyEntry.SAMPLE_EM);
        double x = left;
        double y = top + 0.5 * pen.lineHeight(TextStyle.SMALL);
        for (KeyEntry entry : entries) {
            double width = sample + pen.em(0.4) + pen.width(entry.words(), TextStyle.SMALL);
            if (x > left && x + width > left + room) {
                x = left;
                y += pen.lineHeight(TextStyle.SMALL);
            }
            entry.sample().draw(pen, x + sample / 2, y);
            pen.textAcross(
                    entry.words(), x + sample + pen.em(0.4), y, TextStyle.SMALL, pen.colour(Ink.TEXT), Pen.Align.LEFT);
            x += width + pen.em(1.2);
        }
        return y + 0.5 * pen.lineHeight(TextStyle.SMALL) + pen.em(0.2);
    }
}
