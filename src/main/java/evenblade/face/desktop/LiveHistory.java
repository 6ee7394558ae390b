package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.JPanel;

/** How 1× and blade pass went since the start of the recording, each against its own largest. */
final class LiveHistory extends JPanel {
    private final transient List<Point> points = new ArrayList<>();

    private record Point(double atS, Optional<Double> once, Optional<Double> pass) {}

    private String unit = "";

    LiveHistory() {
        setName("history");
    }

    void clear() {
        points.clear();
        repaint();
    }

    /** Adds amplitudes in a unit that stays the same. */
    void add(double atS, Optional<Double> once, Optional<Double> pass, String unit) {
        this.unit = unit;
        points.add(new Point(atS, once, pass));
        repaint();
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setColor(Look.ink(Ink.PAPER));
        g.fillRect(0, 0, getWidth(), getHeight());
        int half = getHeight() / 2;
        row(g, "1×", 0, half, Point::once, Look.ink(Ink.PROPELLER));
        row(g, "blade pass", half, getHeight() - half, Point::pass, Look.ink(Ink.PROPELLER));
        g.dispose();
    }

    private void row(
            Graphics2D g, String name, int top, int height, Function<Point, Optional<Double>> of, Color colour) {
        int em = Look.em();
        g.setColor(Look.ink(Ink.GRID));
        g.drawLine(0, top + height - 1, getWidth(), top + height - 1);
        g.setColor(Look.ink(Ink.TEXT));
        double most = points.stream()
                .flatMap(point -> of.apply(point).stream())
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double last = points.isEmpty()
                ? 1
                : Math.max(20, points.get(points.size() - 1).atS());
        g.setFont(getFont().deriveFont(getFont().getSize2D() * 0.9f));
        g.drawString(name, em / 2, top + em);
        g.drawString(most > 0 ? "top " + FigureFormat.plain(most) + " " + unit : "none yet", em / 2, top + 2 * em + 2);
        String seconds = FigureFormat.fixed(last, 0) + " s";
        g.drawString("0", em / 2, top + height - 4);
        g.drawString(seconds, getWidth() - em / 2 - g.getFontMetrics().stringWidth(seconds), top + height - 4);
        g.setColor(colour);
        g.setStroke(new BasicStroke(3));
        int foot = top + height - 3 * em / 2;
        int room = height - 4 * em - em / 2;
        int lastX = -1;
        int lastY = 0;
        for (Point point : points) {
            Optional<Double> value = of.apply(point);
            if (value.isEmpty()) {
                lastX = -1;
                continue;
            }
            int x = (int) (point.atS() / last * (getWidth() - em));
            int y = foot - (int) (value.get() / most * room);
            if (lastX >= 0) {
                g.drawLine(lastX, lastY, x, y);
            } else {
                g.fillOval(x - 3, y - 3, 6, 6);
            }
            lastX = x;
            lastY = y;
        }
    }
}
