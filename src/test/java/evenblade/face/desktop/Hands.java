package evenblade.face.desktop;

import java.awt.AWTException;
import java.awt.Component;
import java.awt.Container;
import java.awt.Point;
import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.event.InputEvent;
import java.awt.event.KeyEvent;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JTabbedPane;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;

/** A person's hands and eyes on a window: clicks where things are, types, and waits until something shows. */
final class Hands {
    private static final long PATIENCE_MS = 60_000;

    private final MainWindow window;
    private final Robot robot;

    Hands(MainWindow window) {
        this.window = window;
        try {
            this.robot = new Robot();
        } catch (AWTException e) {
            throw new IllegalStateException(e);
        }
        robot.setAutoDelay(2);
    }

    /** Opens a window of that size with a memory of its own. */
    static Hands open(Path memory, int width, int height) {
        Hands hands = new Hands(onEventThread(() -> {
            MainWindow made = Desktop.window(Settings.read(memory));
            made.setBounds(0, 0, width, height);
            made.setVisible(true);
            return made;
        }));
        hands.await("the window", () -> hands.window.isShowing());
        return hands;
    }

    MainWindow window() {
        return window;
    }

    void close() {
        onEventThread(() -> {
            window.dispose();
            return null;
        });
    }

    static <T> T onEventThread(Callable<T> look) {
        if (SwingUtilities.isEventDispatchThread()) {
            throw new IllegalStateException("on the event thread already");
        }
        FutureTask<T> task = new FutureTask<>(look);
        SwingUtilities.invokeLater(task);
        try {
            return task.get();
        } catch (ExecutionException e) {
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Waits until something holds; it is looked at on the event thread. */
    void await(String what, Callable<Boolean> holds) {
        await(what, PATIENCE_MS / 1000, holds);
    }

    /** The same with another patience. */
    void await(String what, long seconds, Callable<Boolean> holds) {
        long end = System.nanoTime() + seconds * 1_000_000_000;
        while (System.nanoTime() < end) {
            if (onEventThread(holds)) {
                return;
            }
            pause(15);
        }
        photographNow(Path.of("target", "screens", "in-vain.png"));
        throw new AssertionError("waited in vain for " + what + "; target/screens/in-vain.png shows the window");
    }

    void awaitNamed(String name) {
        await("'" + name + "'", () -> find(name).isPresent());
    }

    /** Waits until nothing is worked at and every picture is drawn. */
    void awaitRest() {
        await("an end of the work", () -> {
            WorkStrip strip = (WorkStrip) named("work");
            return !strip.busy() && picturesSettled(window.getContentPane());
        });
        robot.waitForIdle();
    }

    private static boolean picturesSettled(Container in) {
        for (Component each : in.getComponents()) {
            if (each instanceof PictureView view && view.isShowing() && !view.settled()) {
                return false;
            }
            if (each instanceof SheetsView sheets && sheets.isShowing() && !sheets.settled()) {
                return false;
            }
            if (each instanceof Container inner && !picturesSettled(inner)) {
                return false;
            }
        }
        return true;
    }

    void click(String name) {
        awaitNamed(name);
        Point middle = onEventThread(() -> {
            JComponent there = named(name);
            ((JComponent) there.getParent()).scrollRectToVisible(there.getBounds());
            Point at = there.getLocationOnScreen();
            at.translate(there.getWidth() / 2, there.getHeight() / 2);
            return at;
        });
        clickAt(middle);
    }

    /** Where on the screen a place of the showing picture lies, in shares of its first plot from the left and from the foot. */
    Point inPlot(String pane, double shareX, double shareY) {
        awaitRest();
        await("a picture", () -> picture(pane).plot().isPresent());
        return onEventThread(() -> {
            PictureView view = picture(pane);
            java.awt.geom.Rectangle2D plot = view.plot().orElseThrow();
            Point corner = view.getLocationOnScreen();
            return new Point(
                    corner.x + (int) Math.round(plot.getX() + shareX * plot.getWidth()),
                    corner.y + (int) Math.round(plot.getMaxY() - shareY * plot.getHeight()));
        });
    }

    /** The picture in a pane of that name, in sight. Called on the event thread. */
    PictureView picture(String pane) {
        return (PictureView) find((Container) named(pane), each -> each instanceof PictureView && each.isShowing())
                .orElseThrow(() -> new AssertionError("no picture in '" + pane + "'"));
    }

    void point(Point at) {
        robot.mouseMove(at.x, at.y);
        robot.waitForIdle();
    }

    /** Draws a box with the pointer. */
    void drag(Point from, Point to) {
        robot.mouseMove(from.x, from.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseMove((from.x + to.x) / 2, (from.y + to.y) / 2);
        robot.mouseMove(to.x, to.y);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    void wheel(int notches) {
        robot.mouseWheel(notches);
        robot.waitForIdle();
    }

    void clickAt(Point at) {
        robot.mouseMove(at.x, at.y);
        robot.mousePress(InputEvent.BUTTON1_DOWN_MASK);
        robot.mouseRelease(InputEvent.BUTTON1_DOWN_MASK);
        robot.waitForIdle();
    }

    /** Clicks into a field and types over what stands there. */
    void type(String field, String text) {
        awaitNamed(field);
        await("'" + field + "' to be open", () -> named(field).isEnabled());
        click(field);
        await("typing to go into '" + field + "'", () -> named(field).isFocusOwner());
        onEventThread(() -> {
            ((JTextComponent) named(field)).selectAll();
            return null;
        });
        for (char each : text.toCharArray()) {
            typed(each);
        }
        robot.waitForIdle();
    }

    /** A typed letter goes to whatever has the focus; keyboards differ too much to press the keys of all letters. */
    private void typed(char letter) {
        onEventThread(() -> {
            Component owner = java.awt.KeyboardFocusManager.getCurrentKeyboardFocusManager()
                    .getFocusOwner();
            owner.dispatchEvent(new KeyEvent(
                    owner, KeyEvent.KEY_TYPED, System.currentTimeMillis(), 0, KeyEvent.VK_UNDEFINED, letter));
            return null;
        });
    }

    /** Presses keys together, the last one last. */
    void press(int... keys) {
        pressTimes(1, keys);
    }

    /** The same again and again, and only then waits: an X server may take ten seconds to say that it is idle. */
    void pressTimes(int times, int... keys) {
        for (int i = 0; i < times; i++) {
            for (int key : keys) {
                robot.keyPress(key);
            }
            for (int k = keys.length - 1; k >= 0; k--) {
                robot.keyRelease(keys[k]);
            }
        }
        robot.waitForIdle();
    }

    void choose(String box, Object item) {
        awaitNamed(box);
        onEventThread(() -> {
            ((JComboBox<?>) named(box)).setSelectedItem(item);
            return null;
        });
    }

    void tab(String tabs, String title) {
        awaitNamed(tabs);
        Point at = onEventThread(() -> {
            JTabbedPane pane = (JTabbedPane) named(tabs);
            for (int i = 0; i < pane.getTabCount(); i++) {
                if (pane.getTitleAt(i).startsWith(title)) {
                    Rectangle tab = pane.getUI().getTabBounds(pane, i);
                    Point corner = pane.getLocationOnScreen();
                    return new Point(corner.x + (int) tab.getCenterX(), corner.y + (int) tab.getCenterY());
                }
            }
            throw new AssertionError("no tab '" + title + "'");
        });
        clickAt(at);
    }

    String text(String name) {
        awaitNamed(name);
        return onEventThread(() -> {
            JComponent there = named(name);
            return there instanceof JTextComponent field ? field.getText() : ((javax.swing.JLabel) there).getText();
        });
    }

    boolean shows(String name) {
        return onEventThread(() -> find(name).isPresent());
    }

    /** Like {@link #find}, for what must be there. Called on the event thread. */
    JComponent named(String name) {
        return find(name).orElseThrow(() -> new AssertionError("nothing named '" + name + "' shows"));
    }

    Optional<JComponent> find(String name) {
        return find(window, each -> name.equals(each.getName()) && each.isShowing());
    }

    /** The first of a kind that shows. */
    <C extends JComponent> Optional<C> findAny(Class<C> kind) {
        return onEventThread(() ->
                find(window, each -> kind.isInstance(each) && each.isShowing()).map(kind::cast));
    }

    static Optional<JComponent> find(Container in, Predicate<Component> wanted) {
        for (Component each : in.getComponents()) {
            if (each instanceof JComponent component && wanted.test(each)) {
                return Optional.of(component);
            }
            if (each instanceof Container inner) {
                Optional<JComponent> found = find(inner, wanted);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** The window as it stands on the screen. */
    BufferedImage look() {
        robot.waitForIdle();
        Rectangle bounds = onEventThread(() -> new Rectangle(window.getLocationOnScreen(), window.getSize()));
        // At the fineness of the screen, where one point of the window is more than one of its pixels.
        java.util.List<java.awt.Image> variants =
                robot.createMultiResolutionScreenCapture(bounds).getResolutionVariants();
        return (BufferedImage) variants.get(variants.size() - 1);
    }

    void photograph(Path file) {
        awaitRest();
        pause(120);
        photographNow(file);
    }

    /** What never comes to rest. */
    void photographNow(Path file) {
        try {
            java.nio.file.Files.createDirectories(file.toAbsolutePath().getParent());
            ImageIO.write(look(), "png", file.toFile());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }

    static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
