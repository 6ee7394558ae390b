package evenblade.face.desktop;

import evenblade.keep.job.Kind;
import evenblade.tell.chart.Ink;
import java.awt.BasicStroke;
import java.awt.Component;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import javax.swing.Icon;

/** A small sign for a kind of entry; each has a shape of its own, so that none hangs on its colour. */
record KindMark(Kind kind, int size) implements Icon {
    @Override
    public void paintIcon(Component on, Graphics graphics, int x, int y) {
        Graphics2D g = (Graphics2D) graphics.create(x, y, size, size);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.setColor(Look.ink(ink()));
        double s = size;
        g.setStroke(new BasicStroke((float) (s / 9), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        switch (kind) {
            case RUN -> g.draw(wave(s));
            case CORRECTION -> g.fill(triangle(s));
            case TRACKING -> {
                g.draw(new Line2D.Double(0.15 * s, 0.85 * s, 0.85 * s, 0.85 * s));
                g.draw(new Line2D.Double(0.25 * s, 0.6 * s, 0.25 * s, 0.85 * s));
                g.draw(new Line2D.Double(0.5 * s, 0.2 * s, 0.5 * s, 0.85 * s));
                g.draw(new Line2D.Double(0.75 * s, 0.45 * s, 0.75 * s, 0.85 * s));
            }
            case PITCH -> {
                g.draw(new Line2D.Double(0.12 * s, 0.8 * s, 0.88 * s, 0.8 * s));
                g.draw(new Line2D.Double(0.12 * s, 0.8 * s, 0.75 * s, 0.2 * s));
            }
            case RUN_OUT -> {
                g.draw(new Ellipse2D.Double(0.15 * s, 0.15 * s, 0.7 * s, 0.7 * s));
                g.draw(new Line2D.Double(0.5 * s, 0.5 * s, 0.7 * s, 0.3 * s));
            }
            case BALANCE -> g.fill(new Ellipse2D.Double(0.25 * s, 0.25 * s, 0.5 * s, 0.5 * s));
            case AMENDMENT, INSTALLATION -> {
                g.draw(new Line2D.Double(0.2 * s, 0.8 * s, 0.75 * s, 0.25 * s));
                g.draw(new Line2D.Double(0.2 * s, 0.8 * s, 0.45 * s, 0.8 * s));
            }
            case NOTE -> {
                g.draw(new Line2D.Double(0.15 * s, 0.3 * s, 0.85 * s, 0.3 * s));
                g.draw(new Line2D.Double(0.15 * s, 0.53 * s, 0.85 * s, 0.53 * s));
                g.draw(new Line2D.Double(0.15 * s, 0.76 * s, 0.6 * s, 0.76 * s));
            }
            case ATTACHMENT -> g.draw(new Rectangle2D.Double(0.2 * s, 0.15 * s, 0.6 * s, 0.7 * s));
            case STRUCK_OUT -> {
                g.draw(new Line2D.Double(0.2 * s, 0.2 * s, 0.8 * s, 0.8 * s));
                g.draw(new Line2D.Double(0.8 * s, 0.2 * s, 0.2 * s, 0.8 * s));
            }
        }
        g.dispose();
    }

    private Ink ink() {
        return switch (kind) {
            case RUN -> Ink.PROPELLER;
            case CORRECTION, BALANCE -> Ink.CRANK;
            case TRACKING, PITCH, RUN_OUT -> Ink.OTHER;
            case AMENDMENT, INSTALLATION, NOTE, ATTACHMENT, STRUCK_OUT -> Ink.QUIET_TEXT;
        };
    }

    private static Shape wave(double s) {
        Path2D path = new Path2D.Double();
        path.moveTo(0.08 * s, 0.5 * s);
        path.curveTo(0.25 * s, -0.1 * s, 0.35 * s, -0.1 * s, 0.5 * s, 0.5 * s);
        path.curveTo(0.65 * s, 1.1 * s, 0.75 * s, 1.1 * s, 0.92 * s, 0.5 * s);
        return path;
    }

    private static Shape triangle(double s) {
        Path2D path = new Path2D.Double();
        path.moveTo(0.5 * s, 0.12 * s);
        path.lineTo(0.9 * s, 0.85 * s);
        path.lineTo(0.1 * s, 0.85 * s);
        path.closePath();
        return path;
    }

    @Override
    public int getIconWidth() {
        return size;
    }

    @Override
    public int getIconHeight() {
        return size;
    }
}
