package evenblade.face.desktop;

import java.awt.AWTError;
import java.awt.GraphicsEnvironment;
import org.junit.jupiter.api.Assumptions;

/** Whether there is a display to test on. */
final class Display {
    private Display() {}

    /** Skips the test without a display; where displays were promised, fails it. */
    static void require() {
        if (there()) {
            return;
        }
        if ("1".equals(System.getenv("EVENBLADE_REQUIRE_DEVICES"))) {
            throw new AssertionError("EVENBLADE_REQUIRE_DEVICES is 1, but there is no display");
        }
        Assumptions.abort("no display: the desktop isn't tested here");
    }

    private static boolean there() {
        try {
            return !GraphicsEnvironment.isHeadless()
                    && GraphicsEnvironment.getLocalGraphicsEnvironment().getScreenDevices().length > 0;
        } catch (AWTError | java.awt.HeadlessException e) {
            return false;
        }
    }
}
