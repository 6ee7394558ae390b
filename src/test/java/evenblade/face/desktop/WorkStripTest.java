package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Component;
import java.util.Arrays;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JButton;
import javax.swing.SwingUtilities;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.Test;

class WorkStripTest {
    private final WorkStrip strip = new WorkStrip();

    private Component part(String name) {
        return Arrays.stream(strip.getComponents())
                .filter(each -> name.equals(each.getName()))
                .findFirst()
                .orElseThrow();
    }

    private String said() {
        return part("said").isVisible() ? ((JTextComponent) part("said")).getText() : "";
    }

    /** The end of the work that failed used to wipe out what was said about it. */
    @Test
    void aMessageStaysAfterTheWorkHasEndedUntilItIsRead() throws Exception {
        AtomicReference<Throwable> wrong = new AtomicReference<>();
        SwingUtilities.invokeAndWait(() -> {
            try {
                Work.Task task = new Work.Task("Saving");
                strip.began(task);
                strip.say("The disk refused: full");
                strip.ended(task);
                assertThat(said()).isEqualTo("The disk refused: full");
                strip.began(task);
                strip.say("Saved b.png");
                strip.ended(task);
                assertThat(said()).isEqualTo("The disk refused: full\nSaved b.png");
                WorkStrip next = new WorkStrip();
                next.takeOver(strip);
                ((JButton) part("read")).doClick();
                assertThat(said()).isEmpty();
                assertThat(part("read").isVisible()).isFalse();
                assertThat(Arrays.stream(next.getComponents())
                                .filter(each -> "said".equals(each.getName()))
                                .allMatch(Component::isVisible))
                        .isTrue();
            } catch (Throwable e) {
                wrong.set(e);
            }
        });
        assertThat(wrong.get()).isNull();
    }
}
