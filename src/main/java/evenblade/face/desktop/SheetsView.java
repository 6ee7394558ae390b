package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import evenblade.tell.report.SheetImages;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.awt.print.Printable;
import java.awt.print.PrinterIOException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import javax.swing.SwingUtilities;

/** Sheets of paper below each other, as wide as there is room; each is drawn when it comes into sight. */
final class SheetsView extends WidePanel {
    private static final int PRINTED_PX = 2480; // a sheet of A4 at 300 to the inch
    private static final int KEPT = 6; // what is on the screen, and its neighbours
    private static final int MOST_WIDTH_EM = 62; // wider a page is tiring to read

    private final transient Work work;
    private final transient Map<Integer, Drawn> drawn = new LinkedHashMap<>();
    private transient Optional<SheetImages> sheets = Optional.empty();
    private int asked = -1;

    SheetsView(Work work) {
        super(null);
        this.work = work;
        setName("sheets");
        setFocusable(true);
        registerKeyboardAction(e -> leaf(1), javax.swing.KeyStroke.getKeyStroke("PAGE_DOWN"), WHEN_FOCUSED);
        registerKeyboardAction(e -> leaf(-1), javax.swing.KeyStroke.getKeyStroke("PAGE_UP"), WHEN_FOCUSED);
        getAccessibleContext().setAccessibleName("The sheets to print");
    }

    private record Drawn(int widthPx, BufferedImage image) {}

    /** Shows the sheets; those shown before are let go. */
    void show(SheetImages shown) {
        letGo();
        sheets = Optional.of(shown);
        getAccessibleContext().setAccessibleDescription(shown.count() + " sheets");
        scrollRectToVisible(new Rectangle(0, 0, 1, 1));
        revalidate();
        repaint();
    }

    /** Whether every sheet in sight is drawn. */
    boolean settled() {
        return sheets.isEmpty() || asked < 0 && !drawn.isEmpty();
    }

    /** Asks for a printer and prints the sheets shown. */
    void print(Consumer<String> said) {
        sheets.ifPresent(shown -> PrintOut.of("report", work, printable(shown), said));
    }

    /** Each sheet as large as the printer reaches. */
    private static Printable printable(SheetImages from) {
        return (graphics, format, page) -> {
            if (page >= from.count()) {
                return Printable.NO_SUCH_PAGE;
            }
            try {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(from.png(page, PRINTED_PX)));
                double scale = Math.min(
                        format.getImageableWidth() / image.getWidth(), format.getImageableHeight() / image.getHeight());
                AffineTransform place =
                        AffineTransform.getTranslateInstance(format.getImageableX(), format.getImageableY());
                place.scale(scale, scale);
                ((Graphics2D) graphics).drawImage(image, place, null);
                return Printable.PAGE_EXISTS;
            } catch (IOException e) {
                throw new PrinterIOException(e);
            }
        };
    }

    private void letGo() {
        drawn.clear();
        asked = -1;
        Optional<SheetImages> old = sheets;
        sheets = Optional.empty();
        old.ifPresent(gone -> work.aside(() -> close(gone)));
    }

    private static void close(SheetImages sheets) {
        try {
            sheets.close();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e); // nothing but memory is held
        }
    }

    private void leaf(int sheetsOn) {
        int on = sheetsOn * sheetHeight(0);
        Rectangle seen = getVisibleRect();
        seen.translate(0, on);
        scrollRectToVisible(seen);
    }

    private int gap() {
        return Look.em();
    }

    private int sheetWidth() {
        return Math.min(MOST_WIDTH_EM * Look.em(), Math.max(1, getWidth() - 2 * gap()));
    }

    private int sheetHeight(int sheet) {
        return sheets.map(s -> (int) Math.round(s.heightToWidth(sheet) * sheetWidth()))
                .orElse(1);
    }

    private int top(int sheet) {
        int y = gap();
        for (int i = 0; i < sheet; i++) {
            y += sheetHeight(i) + gap();
        }
        return y;
    }

    @Override
    public Dimension getPreferredSize() {
        int count = sheets.map(SheetImages::count).orElse(0);
        return new Dimension(20 * Look.em(), count == 0 ? 0 : top(count));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        if (sheets.isEmpty()) {
            return;
        }
        Graphics2D g = (Graphics2D) graphics;
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        int widthPx = (int) Math.round(sheetWidth() * g.getTransform().getScaleX());
        Rectangle seen = getVisibleRect();
        int left = (getWidth() - sheetWidth()) / 2;
        for (int i = 0; i < sheets.get().count(); i++) {
            Rectangle sheet = new Rectangle(left, top(i), sheetWidth(), sheetHeight(i));
            if (!sheet.intersects(seen)) {
                continue;
            }
            Drawn there = drawn.get(i);
            if (there == null) {
                g.setColor(java.awt.Color.WHITE);
                g.fill(sheet);
            } else {
                g.drawImage(there.image(), sheet.x, sheet.y, sheet.width, sheet.height, null);
            }
            g.setColor(Look.ink(Ink.GRID));
            g.draw(sheet);
            if (there == null || there.widthPx() != widthPx) {
                ask(sheets.get(), i, widthPx);
            }
        }
        if (hasFocus()) {
            g.setColor(Look.ink(Ink.CRANK));
            g.drawRect(seen.x, seen.y, seen.width - 1, seen.height - 1);
            g.drawRect(seen.x + 1, seen.y + 1, seen.width - 3, seen.height - 3);
        }
    }

    private void ask(SheetImages from, int sheet, int widthPx) {
        if (asked >= 0) {
            return;
        }
        asked = sheet;
        work.aside(() -> {
            try {
                BufferedImage image = ImageIO.read(new ByteArrayInputStream(from.png(sheet, widthPx)));
                SwingUtilities.invokeLater(() -> drawn(from, sheet, new Drawn(widthPx, image)));
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
    }

    private void drawn(SheetImages from, int sheet, Drawn image) {
        asked = -1;
        if (sheets.isPresent() && sheets.get() == from) {
            drawn.remove(sheet);
            drawn.put(sheet, image);
            if (drawn.size() > KEPT) {
                drawn.remove(drawn.keySet().iterator().next());
            }
            repaint();
        }
    }

    @Override
    public void removeNotify() {
        letGo();
        super.removeNotify();
    }

    @Override
    public boolean getScrollableTracksViewportHeight() {
        return sheets.isEmpty();
    }
}
