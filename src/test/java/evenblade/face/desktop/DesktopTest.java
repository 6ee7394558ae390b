package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.JobRecord;
import evenblade.keep.job.Kind;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import javax.swing.JTable;
import javax.swing.text.JTextComponent;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("The desktop")
class DesktopTest {
    @TempDir
    Path scratch;

    private Workplace place;
    private Hands hands;

    @BeforeEach
    void open() {
        place = Workplace.in(scratch);
        hands = place.hands();
    }

    @AfterEach
    void close() {
        if (place != null) {
            place.close();
        }
    }

    @Test
    @DisplayName("A job begun by typing is a job record with the machine that was typed")
    void aJobIsBegunByTyping() {
        Path folder = place.beginJob("first job");
        JobRecord record = Workplace.record(folder);
        assertThat(record.installation().propeller().blades()).isEqualTo(3);
        assertThat(record.installation().reduction().ratio()).isEqualTo(51.0 / 21);
        assertThat(hands.text("job")).isEqualTo("first job");
    }

    @Test
    @DisplayName("The lines grow while a new job is typed, and a wrong value is told at its field in the field's words")
    void linesGrowAndAWrongValueIsTold() {
        hands.click("new");
        hands.type("blades", "3");
        List<String> ofPropeller = lines();
        assertThat(ofPropeller).contains("propeller 1×", "blade pass").noneMatch(name -> name.contains("crank"));
        hands.type("ratio", "2.43");
        assertThat(lines()).containsAll(ofPropeller).contains("crank 1×").noneMatch(name -> name.contains("firing"));
        hands.choose("cycle", "four-stroke");
        hands.type("cylinders", "4");
        assertThat(lines()).containsAll(ofPropeller).contains("crank 1×", "firing");

        hands.type("folder", scratch.resolve("job").toString());
        hands.type("diameter", "17 rods");
        hands.click("begin");
        assertThat(hands.text("complaint"))
                .contains("Diameter: \"17 rods\", expected")
                .doesNotContain("installation");
        assertThat(Hands.onEventThread(() -> hands.named("diameter").getClientProperty("JComponent.outline")))
                .isEqualTo("error");
        assertThat(scratch.resolve("job")).doesNotExist();
    }

    private List<String> lines() {
        return Hands.onEventThread(() -> {
            JTable lines = (JTable) hands.named("order lines");
            return IntStream.range(0, lines.getRowCount())
                    .mapToObj(row -> String.valueOf(lines.getValueAt(row, 0)))
                    .toList();
        });
    }

    @Test
    @DisplayName("A change that is written down stands in front, and taking it back leaves both entries")
    void aChangeIsWrittenDownAndTakenBack() {
        Path folder = place.beginJob("first job");
        hands.click("add change");
        hands.type("text", "Hub cleaned.");
        hands.click("enter");
        hands.awaitNamed("entry text");
        assertThat(hands.text("entry text")).isEqualTo("Hub cleaned.");
        hands.awaitRest();
        hands.click("take back");
        hands.await("two entries", () -> Workplace.record(folder).events().size() == 2);
        assertThat(Workplace.record(folder).standing()).isEmpty();
        assertThat(Workplace.record(folder).events())
                .extracting(e -> e.kind())
                .containsExactly(Kind.CORRECTION, Kind.STRUCK_OUT);
    }

    @Test
    @DisplayName("Ctrl+Z while typing takes back what was typed and never an entry of the job")
    void undoInATextStaysInTheText() {
        Path folder = place.beginJob("first job");
        hands.click("add change");
        hands.type("text", "Hub cleaned.");
        hands.click("enter");
        hands.awaitNamed("entry text");
        hands.awaitRest();
        hands.click("add change");
        hands.type("text", "Oil");
        hands.pressTimes(30, KeyEvent.VK_CONTROL, KeyEvent.VK_Z);
        hands.awaitRest();
        assertThat(((JTextComponent) hands.named("text")).getText()).isEmpty();
        assertThat(Workplace.record(folder).events()).extracting(e -> e.kind()).containsExactly(Kind.CORRECTION);
    }

    @Test
    @DisplayName("What was typed and not entered is there again after the program was killed")
    void nothingTypedIsLost() throws Exception {
        Path folder = place.beginJob("first job");
        hands.click("add note");
        hands.type("text", "Left socket feels dry");
        Hands.pause(600);
        // A second window reads the same memory, as after a crash: the first one never closed.
        Hands second = Hands.open(Workplace.memory(scratch), 1000, 700);
        try {
            Hands.onEventThread(() -> {
                second.window().openJob(folder);
                return null;
            });
            second.click("add note");
            assertThat(second.text("text")).isEqualTo("Left socket feels dry");
        } finally {
            second.close();
        }
    }

    @Test
    @DisplayName("What can't be used is said in the form, and nothing is written")
    void refusalsStandInTheForm() {
        Path folder = place.beginJob("first job");
        hands.click("add run");
        hands.type("recording", scratch.resolve("none.wav").toString());
        hands.click("enter");
        hands.awaitNamed("complaint");
        assertThat(hands.text("complaint")).contains("none.wav").contains("no such file");
        assertThat(Workplace.record(folder).events()).isEmpty();
    }

    @Test
    @DisplayName("Tab goes round the hub as its positions are counted, blade and reading of each")
    void tabGoesRoundTheHub() {
        place.beginJob("first job");
        hands.click("add tip marks");
        hands.await("the first blade to have the focus", () -> hands.named("blade 1")
                .isFocusOwner());
        for (String next : List.of("reading 1", "blade 2", "reading 2", "blade 3", "reading 3")) {
            hands.press(KeyEvent.VK_TAB);
            hands.await("the focus in '" + next + "'", () -> hands.named(next).isFocusOwner());
        }
    }

    @Test
    @DisplayName(
            "With inches chosen spread and limit stand in inches first, as they are typed, and the millimetres beside them")
    void inchesFirst() {
        place.beginJob("first job");
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_M);
        hands.awaitNamed("timeline");
        place.typeMarks("0", "1/16", "3/16");
        // 3/16 in is 4.7625 mm and 1/8 in 3.175 mm, by the definition of the inch.
        assertThat(hands.text("says")).contains("3/16 in (4.76 mm)").contains("1/8 in (3.18 mm)");
    }
}
