package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JFrame;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the tests of windows stand on. */
@Tag("screen")
@DisplayName("The screen")
class ScreenTest {
    @Test
    @DisplayName("shows a window where we put it")
    void showsAWindow() throws Exception {
        boolean screen = !GraphicsEnvironment.isHeadless();
        if (!"1".equals(System.getenv("EVENBLADE_REQUIRE_DEVICES"))) {
            Assumptions.assumeTrue(screen, "no display here, so no test of windows");
        }
        assertThat(screen).as("a display").isTrue();
        AtomicReference<Rectangle> place = new AtomicReference<>();
        SwingUtilities.invokeAndWait(() -> {
            JFrame window = new JFrame("Evenblade");
            window.setBounds(40, 60, 1280, 720);
            window.setVisible(true);
            place.set(new Rectangle(window.getLocationOnScreen(), window.getSize()));
            window.dispose();
        });
        assertThat(place.get()).isEqualTo(new Rectangle(40, 60, 1280, 720));
    }
}
