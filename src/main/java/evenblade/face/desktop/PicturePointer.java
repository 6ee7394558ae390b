package evenblade.face.desktop;

import evenblade.tell.chart.Picture;
import evenblade.tell.chart.Spot;
import evenblade.tell.chart.Zoom;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.DoublePredicate;
import javax.swing.JComponent;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;

/**
 * Mouse and keys on a picture. The pointer reads, a click holds the cursor, a second click measures from there; the wheel and a box zoom. Keys
 * do the same.
 */
final class PicturePointer extends MouseAdapter implements FocusListener {
    /** A hand that clicks moves this far at times. */
    private static final int BOX_FROM_PX = 6;

    private static final double NOTCH = 1.25; // of the wheel: three notches halve what is seen
    private static final double PAGE = 0.5; // half of what is seen stays in sight
    /** Turns of the wheel within this time are one step of the way back. */
    private static final long ONE_STEP_NANOS = 700_000_000L;

    private final PictureView view;
    private Optional<Point> pressed = Optional.empty();
    private long turnedNanos = System.nanoTime() - ONE_STEP_NANOS;

    PicturePointer(PictureView view) {
        this.view = view;
        view.addMouseListener(this);
        view.addMouseMotionListener(this);
        view.addMouseWheelListener(this);
        view.addFocusListener(this);
        key("LEFT", () -> step(-1, 0));
        key("RIGHT", () -> step(1, 0));
        key("UP", () -> step(0, -1));
        key("DOWN", () -> step(0, 1));
        key("shift LEFT", () -> peak(x -> x < here(), Comparator.reverseOrder()));
        key("shift RIGHT", () -> peak(x -> x > here(), Comparator.naturalOrder()));
        key("ENTER", view::hold);
        key("typed +", () -> nearer(1 / NOTCH, false));
        key("typed -", () -> nearer(NOTCH, false));
        key("typed >", () -> nearer(1 / NOTCH, true));
        key("typed <", () -> nearer(NOTCH, true));
        key("PAGE_UP", () -> move(-PAGE, false));
        key("PAGE_DOWN", () -> move(PAGE, false));
        key("shift PAGE_UP", () -> move(-PAGE, true));
        key("shift PAGE_DOWN", () -> move(PAGE, true));
        key("BACK_SPACE", view::back);
        key("HOME", view::showWhole);
        key("ESCAPE", view::letGo);
    }

    private void key(String stroke, Runnable then) {
        view.registerKeyboardAction(e -> then.run(), KeyStroke.getKeyStroke(stroke), JComponent.WHEN_FOCUSED);
    }

    @Override
    public void focusGained(FocusEvent e) {
        view.repaint();
    }

    @Override
    public void focusLost(FocusEvent e) {
        view.repaint();
    }

    @Override
    public void mouseMoved(MouseEvent e) {
        view.point(at(e.getX(), e.getY()));
    }

    @Override
    public void mouseExited(MouseEvent e) {
        if (pressed.isEmpty()) {
            view.point(Optional.empty());
        }
    }

    private Optional<Spot> at(double x, double y) {
        return view.layoutDrawn().flatMap(layout -> layout.at(x * view.scale(), y * view.scale()));
    }

    @Override
    public void mousePressed(MouseEvent e) {
        view.requestFocusInWindow();
        if (SwingUtilities.isLeftMouseButton(e)) {
            pressed = Optional.of(e.getPoint());
        }
    }

    @Override
    public void mouseDragged(MouseEvent e) {
        pressed.filter(from -> zoomable()).ifPresent(from -> view.box(Optional.of(between(from, e.getPoint()))));
    }

    @Override
    public void mouseReleased(MouseEvent e) {
        Optional<Point> from = pressed;
        pressed = Optional.empty();
        view.box(Optional.empty());
        from.ifPresent(start -> {
            if (zoomable() && start.distance(e.getPoint()) > BOX_FROM_PX) {
                zoomTo(between(start, e.getPoint()));
            } else {
                view.point(at(e.getX(), e.getY()));
                view.hold();
            }
        });
    }

    /** The box between two corners; as high as the plot where only the lying axis is zoomed. */
    private Rectangle between(Point one, Point other) {
        Rectangle drawn = new Rectangle(one);
        drawn.add(other);
        boolean upright =
                view.picture().flatMap(Picture::zoom).flatMap(Zoom::upward).isPresent();
        view.plot().filter(plot -> !upright).ifPresent(plot -> {
            drawn.y = (int) plot.getY();
            drawn.height = (int) plot.getHeight();
        });
        return drawn;
    }

    private void zoomTo(Rectangle box) {
        withZoom((now, whole, plot) -> {
            double left = (box.getMinX() - plot.getX()) / plot.getWidth();
            double right = (box.getMaxX() - plot.getX()) / plot.getWidth();
            double foot = (plot.getMaxY() - box.getMaxY()) / plot.getHeight();
            double top = (plot.getMaxY() - box.getMinY()) / plot.getHeight();
            if (right > 0 && left < 1 && top > 0 && foot < 1) {
                view.zoom(now.box(left, right, foot, top, whole), true);
            }
        });
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent e) {
        if (!zoomable()) {
            view.getParent().dispatchEvent(SwingUtilities.convertMouseEvent(view, e, view.getParent()));
            return;
        }
        double factor = Math.pow(NOTCH, e.getPreciseWheelRotation());
        withZoom((now, whole, plot) -> wheel(
                factor,
                (e.getX() - plot.getX()) / plot.getWidth(),
                (plot.getMaxY() - e.getY()) / plot.getHeight(),
                e.isShiftDown()));
        view.point(Optional.empty());
    }

    private void wheel(double factor, double shareX, double shareY, boolean other) {
        boolean step = System.nanoTime() - turnedNanos > ONE_STEP_NANOS;
        turnedNanos = System.nanoTime();
        withZoom((now, whole, plot) -> view.zoom(now.wheel(factor, held(shareX), held(shareY), other, whole), step));
    }

    private static double held(double share) {
        return Math.max(0, Math.min(1, share));
    }

    /** Nearer to the cursor, or to the middle where there is none in sight. */
    private void nearer(double factor, boolean other) {
        withZoom((now, whole, plot) -> {
            Optional<Point2D> at = cursor();
            double x = at.map(p -> (p.getX() - plot.getX()) / plot.getWidth()).orElse(0.5);
            double y =
                    at.map(p -> (plot.getMaxY() - p.getY()) / plot.getHeight()).orElse(0.5);
            wheel(factor, x, y, other);
        });
    }

    private void move(double share, boolean other) {
        withZoom((now, whole, plot) -> view.zoom(now.moved(share, other, whole), true));
    }

    private boolean zoomable() {
        return view.picture().flatMap(Picture::zoom).isPresent() && view.plot().isPresent();
    }

    private interface Zooming {
        void with(Zoom now, Zoom whole, Rectangle2D plot);
    }

    private void withZoom(Zooming then) {
        view.plot().ifPresent(plot -> view.picture().flatMap(Picture::zoom).ifPresent(now -> view.whole()
                .ifPresent(whole -> then.with(now, whole, plot))));
    }

    /** Where the last cursor stands, in pixels of the window. */
    private Optional<Point2D> cursor() {
        return view.layoutDrawn()
                .flatMap(layout ->
                        view.cursors().stream().reduce((one, later) -> later).flatMap(layout::place))
                .map(p -> new Point2D.Double(p.getX() / view.scale(), p.getY() / view.scale()));
    }

    /** Moves the cursor on until it reads something else. */
    private void step(int dx, int dy) {
        view.plot().ifPresent(plot -> {
            Point2D from = cursor().orElse(new Point2D.Double(plot.getCenterX(), plot.getCenterY()));
            Optional<Spot> now = view.cursors().stream().reduce((one, later) -> later);
            double x = from.getX();
            double y = from.getY();
            do {
                x += dx;
                y += dy;
                Optional<Spot> next = at(x, y);
                boolean on = next.isPresent()
                        && now.filter(spot ->
                                        next.get().x() == spot.x() && next.get().y() == spot.y())
                                .isEmpty()
                        && now.filter(spot -> dx * (next.get().x() - spot.x()) < 0)
                                .isEmpty();
                if (on) {
                    view.point(next);
                    return;
                }
            } while (plot.contains(x, y));
        });
    }

    private double here() {
        return view.cursors().stream()
                .reduce((one, later) -> later)
                .map(Spot::x)
                .orElse(Double.NEGATIVE_INFINITY);
    }

    private void peak(DoublePredicate wanted, Comparator<Double> nearest) {
        view.picture().stream()
                .flatMap(made -> made.peaks().stream())
                .filter(spot -> wanted.test(spot.x()))
                .min(Comparator.comparing(Spot::x, nearest))
                .ifPresent(spot -> view.point(Optional.of(spot)));
    }
}
