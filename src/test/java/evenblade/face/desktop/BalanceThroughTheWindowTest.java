package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.MakePractice;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.swing.JEditorPane;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@Tag("long")
@DisplayName("An invented job is balanced through the window:")
class BalanceThroughTheWindowTest {
    @TempDir
    Path scratch;

    private Workplace place;

    @AfterEach
    void close() {
        if (place != null) {
            place.close();
        }
    }

    @Test
    @DisplayName("trial weight, correction, check run")
    void toTheEnd() throws IOException {
        Path job = scratch.resolve("job");
        MakePractice.toBalance(job, List.of(), 3, true);
        place = Workplace.in(scratch, 1280, 800);
        place.open(job);
        assertThat(balance()).contains("NO CORRECTION IS GIVEN").contains("Nobody has said yet which way angles");

        place.hands().click("add weight");
        type("10 g", "0", "trial");
        place.hands().choose("counted", "against-rotation");
        place.hands().awaitRest();
        place.hands().photograph(Path.of("target", "screens", "weight-question.png"));
        enter();
        MakePractice.nextRun(job, Optional.of("trial"));
        place.open(job);
        assertThat(balance()).contains("put on 16.42 g at 60 mm, at 58.6°").contains("ignition off");

        place.hands().click("add weight");
        type("16 g", "60", "hole 2");
        place.hands().choose("off", "trial");
        enter();
        MakePractice.nextRun(job, Optional.of("check"));
        place.open(job);
        assertThat(balance()).contains("Check run 'check'").contains("It fits.");
        place.hands().tab("balance tabs", "Hub");
        place.hands().awaitRest();
        place.hands().photograph(Path.of("target", "screens", "balance-hub.png"));
    }

    private void type(String mass, String angle, String label) {
        place.hands().type("mass", mass);
        place.hands().type("radius", "60 mm");
        place.hands().type("angle", angle);
        place.hands().type("label", label);
    }

    private void enter() {
        place.hands().click("enter");
        place.hands().awaitNamed("entry");
        place.hands().awaitRest();
    }

    private String balance() {
        place.hands().press(KeyEvent.VK_CONTROL, KeyEvent.VK_8);
        place.hands().awaitNamed("balance words");
        place.hands().awaitRest();
        return Hands.onEventThread(() -> {
            JEditorPane words = (JEditorPane) place.hands().named("balance words");
            return words.getDocument()
                    .getText(0, words.getDocument().getLength())
                    .replaceAll("[\\s\\u00a0]+", " ");
        });
    }
}
