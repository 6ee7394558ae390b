package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.ShowJob;
import evenblade.face.app.StartJob;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.TimeUnit;
import evenblade.keep.job.Detail;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.practice.PracticeInstallation;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JTextField;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("Taking a recording in")
class ImportFormTest {
    @TempDir
    Path scratch;

    private Path job;
    private Workplace workplace;
    private Hands hands;

    @BeforeEach
    void open() throws IOException {
        workplace = Workplace.in(scratch, 1280, 800);
        hands = workplace.hands();
        job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        workplace.open(job);
    }

    @AfterEach
    void close() {
        if (workplace != null) {
            workplace.close();
        }
    }

    /** Raw counts, no unit of time, an odd order of columns; invented. */
    private Path table() throws IOException {
        StringBuilder rows = new StringBuilder("raw1;tick;raw2\n");
        for (int i = 0; i < 2500; i++) {
            rows.append(String.format(
                    Locale.ROOT,
                    "%d;%.1f;%d\n",
                    Math.round(300 * Math.sin(2 * Math.PI * 32.9 * i / 500)),
                    2.0 * i,
                    Math.round(90 * Math.sin(2 * Math.PI * 98.7 * i / 500))));
        }
        return Files.writeString(scratch.resolve("logger.csv"), rows);
    }

    @Test
    @DisplayName("A recording that another program hands over waits for a job and then stands in the form")
    void aHandedRecordingWaitsForAJob() throws IOException {
        Path table = table();
        hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_W);
        hands.await("no job", () -> hands.find("timeline").isEmpty());
        Hands.onEventThread(() -> {
            hands.window().hand(table);
            return null;
        });
        workplace.open(job);
        hands.await("the form", () -> hands.find("recording")
                .filter(field -> ((JTextField) field).getText().equals(table.toString()))
                .isPresent());
    }

    private void awaitSeen(String words) {
        try {
            hands.await("it", () -> seen().contains(words));
        } catch (AssertionError e) {
            throw new AssertionError("waited in vain for '" + words + "' in: " + Hands.onEventThread(this::seen), e);
        }
    }

    private String seen() {
        return ((WrappedLabel) hands.named("seen text")).getText();
    }

    @Test
    @DisplayName("shows what the reader assumed, lets it be put right, and keeps it with the run")
    void whatWasAssumedIsPutRight() throws IOException {
        hands.click("add run");
        hands.type("recording", table().toString());
        awaitSeen("500 samples a second");
        awaitSeen("milliseconds were assumed");

        Hands.onEventThread(() -> {
            choice("time unit").setSelectedItem(Optional.of(TimeUnit.MICROSECONDS));
            return null;
        });
        awaitSeen("at least 1 s");
        Hands.onEventThread(() -> {
            choice("time unit").setSelectedItem(Optional.of(TimeUnit.MILLISECONDS));
            return null;
        });
        awaitSeen("500 samples a second");
        hands.type("channel of column 1", "across");
        hands.type("scale of column 1", "0.01 kg");
        awaitSeen("unknown unit");
        hands.type("scale of column 1", "0.01 m/s2");
        awaitSeen("across, in m/s²");
        hands.photograph(Path.of("target", "screens", "import-table.png"));
        hands.type("label", "as found");
        hands.click("enter");
        hands.awaitNamed("orders");
        hands.awaitRest();

        Detail.Run run = (Detail.Run)
                ShowJob.show(job, Thoroughness.QUICK).record().run("as found").detail();
        TableReading table = run.settings().table();
        assertThat(table.timeUnit()).contains(TimeUnit.MILLISECONDS);
        assertThat(table.columns()).singleElement().satisfies(column -> {
            assertThat(column.column()).isEqualTo("1");
            assertThat(column.name()).contains("across");
            assertThat(column.scale().orElseThrow().text()).isEqualTo("0.01 m/s2");
        });
        assertThat(Hands.onEventThread(() -> ((javax.swing.JComboBox<?>) hands.named("channel")).getItemAt(0)))
                .asString()
                .contains("across");
    }

    @Test
    @DisplayName("is filled in as the run before was where the file has its shape, and emptied for another shape")
    void whatWasSaidOfTheRunBeforeStandsThere() throws IOException {
        hands.click("add run");
        hands.type("recording", table().toString());
        awaitSeen("milliseconds were assumed");
        hands.type("channel of column 1", "across");
        hands.type("scale of column 1", "0.01 m/s2");
        hands.type("place", "gearbox top");
        hands.type("wind", "4 kt");
        hands.type("engine rpm", "4800");
        hands.type("label", "as found");
        awaitSeen("across, in m/s²");
        hands.click("enter");
        hands.awaitNamed("orders");
        hands.awaitRest();

        Path next = Files.writeString(
                scratch.resolve("next.csv"), Files.readString(table()).replace("\n30", "\n31"));
        hands.click("add run");
        hands.type("recording", next.toString());
        awaitSeen("across, in m/s²");
        hands.await("the place", () -> text("place").equals("gearbox top"));
        hands.await("the column", () -> text("channel of column 1").equals("across"));
        assertThat(text("scale of column 1")).isEqualTo("0.01 m/s2");
        assertThat(text("wind")).as("of each run itself").isEmpty();
        assertThat(text("engine rpm")).as("of each run itself").isEmpty();
        assertThat(Hands.onEventThread(() -> ((WrappedLabel) hands.named("as before")).getText()))
                .isEqualTo("What isn't typed is as in 'as found'. Change what isn't so.");
        hands.photograph(Path.of("target", "screens", "import-as-before.png"));
        hands.type("place", "seat rail");

        hands.type("recording", longSound(scratch.resolve("other.wav")).toString());
        hands.await("the other file", () -> !seen().contains("across"));
        hands.await("nothing as before", () -> hands.find("as before").isEmpty());
        assertThat(text("place")).as("typed").isEqualTo("seat rail");
    }

    private String text(String field) {
        return hands.find(field).map(there -> ((JTextField) there).getText()).orElse("not there");
    }

    @Test
    @DisplayName("keeps what was said of a table while the form is left")
    void whatWasSaidStays() throws IOException {
        hands.click("add run");
        hands.type("recording", table().toString());
        awaitSeen("milliseconds were assumed");
        Hands.onEventThread(() -> {
            choice("time unit").setSelectedItem(Optional.of(TimeUnit.MICROSECONDS));
            return null;
        });
        awaitSeen("at least 1 s");
        hands.click("leave");
        hands.click("add run");
        hands.awaitNamed("time unit");
        hands.await(
                "the unit that was said", () -> choice("time unit").said().equals(Optional.of(TimeUnit.MICROSECONDS)));
        awaitSeen("at least 1 s");
    }

    @Test
    @DisplayName("marks the field whose value can't be used")
    void aWrongValueIsMarkedAtItsField() throws IOException {
        hands.click("add run");
        hands.type("recording", table().toString());
        awaitSeen("milliseconds were assumed");
        hands.type("engine rpm", "fast");
        hands.click("enter");
        assertThat(outline("engine rpm")).isEqualTo("error");
        hands.type("engine rpm", "4800");
        hands.type("when", "noon");
        hands.click("enter");
        assertThat(outline("engine rpm")).isNull();
        assertThat(outline("when")).isEqualTo("error");
    }

    private Object outline(String field) {
        return Hands.onEventThread(() -> hands.named(field).getClientProperty("JComponent.outline"));
    }

    @SuppressWarnings("unchecked")
    private Choice<TimeUnit> choice(String name) {
        return (Choice<TimeUnit>) hands.named(name);
    }

    @Test
    @DisplayName("can be stopped while it is read, and then nothing is in the job")
    void takingInCanBeStopped() throws IOException {
        Path sound = longSound(scratch.resolve("long.wav"));
        hands.click("add run");
        hands.type("recording", sound.toString());
        awaitSeen("WAV");
        hands.awaitRest();
        Hands.onEventThread(() -> {
            ((JButton) hands.named("enter")).doClick(0);
            ((JButton) hands.find("stop").map(JComponent.class::cast).orElseThrow()).doClick(0);
            return null;
        });
        hands.await("the word that it was stopped", () -> hands.find("complaint")
                .filter(said -> ((Complaint) said).getText().contains("Stopped"))
                .isPresent());
        assertThat(ShowJob.show(job, Thoroughness.QUICK).record().events()).isEmpty();
        try (Stream<Path> left = Files.walk(job)) {
            assertThat(left.filter(Files::isRegularFile).map(Path::getFileName).map(Path::toString))
                    .containsOnly("job.json", "job.lock");
        }
        assertThat(Hands.onEventThread(() -> hands.named("enter").isEnabled())).isTrue();
    }

    /** Twenty minutes of one 16-bit channel at 48 kHz. */
    private static Path longSound(Path file) throws IOException {
        int frames = 20 * 60 * 48_000;
        ByteBuffer header = ByteBuffer.allocate(44).order(ByteOrder.LITTLE_ENDIAN);
        header.put("RIFF".getBytes()).putInt(36 + 2 * frames).put("WAVEfmt ".getBytes());
        header.putInt(16).putShort((short) 1).putShort((short) 1).putInt(48_000).putInt(96_000);
        header.putShort((short) 2).putShort((short) 16).put("data".getBytes()).putInt(2 * frames);
        byte[] second = new byte[96_000];
        for (int i = 0; i < second.length; i++) {
            second[i] = (byte) (i * 31);
        }
        try (OutputStream out = Files.newOutputStream(file)) {
            out.write(header.array());
            for (int i = 0; i < 20 * 60; i++) {
                out.write(second);
            }
        }
        return file;
    }
}
