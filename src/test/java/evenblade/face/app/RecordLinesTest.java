package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.input.capture.Ending;
import evenblade.input.capture.PseudoTerminals;
import evenblade.input.capture.SerialLine;
import evenblade.input.recording.TableReading;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.Detail;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.practice.Noise;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.measure.speed.SpeedResult;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordLinesTest {
    private static final Path INSTALLATION = Path.of("samples/geared-three-blade/installation.json");
    private static final double RATE_HZ = 400;
    private static final double PROPELLER_HZ = 31;

    @TempDir
    Path folder;

    /** An invented accelerometer that has ten seconds of a run to tell. */
    private static String lines() {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(PROPELLER_HZ, 10))
                .withLine(1, 1.5, 20)
                .withLine(3, 3, 100)
                .withLine(51 / 21.0, 2, 10)
                .withLine(2 * 51 / 21.0, 2, 40)
                .withNoise(new Noise(0.1, 0))
                .withSeed(8);
        double[] values = run.samples(run.evenClock(RATE_HZ));
        StringBuilder lines = new StringBuilder("time (s),x (m/s2)\n");
        for (int i = 0; i < values.length; i++) {
            lines.append(String.format(Locale.ROOT, "%.4f,%.4f%n", i / RATE_HZ, values[i]));
        }
        return lines.toString();
    }

    /** The same for a sensor that also sends a mark once per revolution. */
    private static String markedLines(double seconds) {
        SpeedProfile speed = SpeedProfile.steady(PROPELLER_HZ, seconds);
        SyntheticRun run = SyntheticRun.at(speed)
                .withLine(1, 1.5, 20)
                .withLine(3, 3, 100)
                .withNoise(new Noise(0.1, 0))
                .withSeed(8);
        double[] values = run.samples(run.evenClock(1000));
        StringBuilder lines = new StringBuilder("time (s),x (m/s2),tach (V)\n");
        for (int i = 0; i < values.length; i++) {
            double turn = speed.revolutionsAt(i / 1000.0) % 1;
            lines.append(String.format(Locale.ROOT, "%.3f,%.4f,%d%n", i / 1000.0, values[i], turn < 0.2 ? 5 : 0));
        }
        return lines.toString();
    }

    /** Sends lines ten times as fast as their stamps. */
    private static void sendTenfold(OutputStream to, String lines) {
        Thread sender = new Thread(() -> {
            try (to) {
                int count = 0;
                for (String line : lines.split("(?<=\n)")) {
                    to.write(line.getBytes(StandardCharsets.UTF_8));
                    if (++count % 1000 == 0) {
                        to.flush();
                        Thread.sleep(100);
                    }
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        sender.setDaemon(true);
        sender.start();
    }

    private RecordLines.Request marked(InputStream input, String mark, Optional<RecordRun.Steps> steps) {
        return new RecordLines.Request(
                folder.resolve("job"),
                input,
                "invented sensor",
                OptionalDouble.empty(),
                NewRun.labelled("first", RunSettings.NONE.withMarkChannel(mark)),
                Optional.empty(),
                Optional.empty(),
                steps);
    }

    @Test
    @Tag("long")
    void linesKnowAMarkStepsAndTheChecksOfATakeAsSoundDoes() throws Exception {
        JobFolder.create(folder.resolve("job"), NewJob.fromFile("invented", INSTALLATION));
        PipedInputStream input = new PipedInputStream(1 << 20);
        sendTenfold(new PipedOutputStream(input), markedLines(80));
        double engineRpm = 60 * PROPELLER_HZ * 51 / 21;
        RecordLines run =
                RecordLines.prepare(marked(input, "tach", Optional.of(new RecordRun.Steps(List.of(engineRpm), 50))));

        LiveRecording.Recorded recorded = run.record();

        LiveRecording.View view = run.view();
        assertThat(view.reading().orElseThrow().speed().orElseThrow().origin()).isEqualTo(SpeedResult.Origin.MARK);
        assertThat(view.reading().orElseThrow().propellerRpm().orElseThrow()).isCloseTo(60 * PROPELLER_HZ, within(0.2));
        assertThat(view.reading().orElseThrow().toS()).isCloseTo(80, within(0.1));
        assertThat(view.finished()).singleElement().satisfies(step -> {
            assertThat(step.done()).isTrue();
            assertThat(step.heldS()).isGreaterThan(19);
        });
        assertThat(recorded.warnings())
                .extracting(w -> w.code().word())
                .doesNotContain("mark-without-pulses", "take-not-checked", "level-too-high", "mark-channel-unknown");
        Detail.Run kept = (Detail.Run) recorded.event().orElseThrow().detail();
        assertThat(kept.settings().markChannel()).contains("tach");
    }

    @Test
    void aMarkThatIsNotAmongTheChannelsCostsNoRun() throws Exception {
        JobFolder.create(folder.resolve("job"), NewJob.fromFile("invented", INSTALLATION));
        InputStream input = new ByteArrayInputStream(lines().getBytes(StandardCharsets.UTF_8));

        LiveRecording.Recorded recorded =
                RecordLines.prepare(marked(input, "tach", Optional.empty())).record();

        assertThat(recorded.warnings()).extracting(w -> w.code().word()).contains("mark-channel-unknown");
        Detail.Run kept = (Detail.Run) recorded.event().orElseThrow().detail();
        assertThat(kept.settings().markChannel()).isEmpty();
    }

    @Test
    void aMarkWithoutPulsesIsTold() throws Exception {
        Path file = folder.resolve("a.csv");
        StringBuilder lines = new StringBuilder("time (s),x (m/s2),tach (V)\n");
        for (String line : lines().lines().skip(1).toList()) {
            lines.append(line).append(",0.1\n");
        }
        InputStream input = new ByteArrayInputStream(lines.toString().getBytes(StandardCharsets.UTF_8));
        RecordLines.Request plain = request(file, input, OptionalDouble.empty());

        LiveRecording.Recorded recorded = RecordLines.prepare(new RecordLines.Request(
                        file,
                        input,
                        plain.device(),
                        plain.seconds(),
                        NewRun.labelled("first", RunSettings.NONE.withMarkChannel("2")),
                        plain.installation(),
                        Optional.empty(),
                        Optional.empty()))
                .record();

        assertThat(recorded.warnings())
                .extracting(w -> w.code().word())
                .contains("mark-without-pulses", "channel-dead");
    }

    @Test
    void aSensorThatSendsNothingLeavesNoFile() {
        Path file = folder.resolve("a.csv");
        RecordLines run = RecordLines.prepare(request(file, InputStream.nullInputStream(), OptionalDouble.empty()));

        assertThatThrownBy(run::record)
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("invented sensor: not one line came");
        assertThat(file).doesNotExist();
    }

    @Test
    void aSerialPortThatIsPulledOutEndsTheRecordingWithWhatThereIs() throws Exception {
        PseudoTerminals pair = PseudoTerminals.in(folder);
        InputStream port = SerialLine.open(pair.port(), 115_200);
        String lines = lines().substring(0, 3000);
        send(Files.newOutputStream(pair.far()), lines, 5000);
        Path file = folder.resolve("a.csv");
        RecordLines run = RecordLines.prepare(request(file, port, OptionalDouble.empty()));
        Thread pull = new Thread(() -> {
            while (run.view().seconds() < 0.5) {
                Thread.onSpinWait();
            }
            pair.close();
        });
        pull.setDaemon(true);
        pull.start();

        LiveRecording.Recorded recorded = run.record();

        assertThat(recorded.ending()).isEqualTo(Ending.DEVICE_GONE);
        assertThat(recorded.warnings()).extracting(w -> w.code().word()).contains("recording-cut-short");
        assertThat(Files.readString(file)).as("every byte that came").isEqualTo(lines);
    }

    private RecordLines.Request request(Path target, InputStream input, OptionalDouble seconds) {
        return new RecordLines.Request(
                target,
                input,
                "invented sensor",
                seconds,
                NewRun.labelled("first", RunSettings.NONE),
                Optional.of(INSTALLATION),
                Optional.empty(),
                Optional.empty());
    }

    private static void send(OutputStream to, String lines, long holdMs) {
        Thread sender = new Thread(() -> {
            try (to) {
                to.write(lines.getBytes(StandardCharsets.UTF_8));
                to.flush();
                Thread.sleep(holdMs);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        });
        sender.setDaemon(true);
        sender.start();
    }

    @Test
    void linesOnStandardInputAreKeptAsTheyCameAndReadLikeTheFile() throws Exception {
        JobFolder job = JobFolder.create(folder.resolve("job"), NewJob.fromFile("invented", INSTALLATION));
        PipedInputStream input = new PipedInputStream(1 << 20);
        String lines = lines();
        send(new PipedOutputStream(input), lines, 100);
        RecordLines run = RecordLines.prepare(request(folder.resolve("job"), input, OptionalDouble.empty()));

        LiveRecording.Recorded recorded = run.record();

        assertThat(recorded.ending()).isEqualTo(Ending.INPUT_ENDED);
        assertThat(run.view().reading().orElseThrow().propellerRpm().orElseThrow())
                .isCloseTo(60 * PROPELLER_HZ, within(0.5));
        Path kept = job.locate(
                ((evenblade.keep.job.Detail.Run) recorded.event().orElseThrow().detail()).file());
        assertThat(Files.readString(kept)).isEqualTo(lines);
    }

    @Test
    void linesFromASerialPortAreKeptAsTheyCame() throws Exception {
        try (PseudoTerminals pair = PseudoTerminals.in(folder)) {
            InputStream port = SerialLine.open(pair.port(), 115_200);
            String lines = lines().substring(0, 8000);
            send(Files.newOutputStream(pair.far()), lines, 5000);
            Path file = folder.resolve("a.csv");
            RecordLines run = RecordLines.prepare(request(file, port, OptionalDouble.of(2)));

            LiveRecording.Recorded recorded = run.record();

            assertThat(recorded.ending()).isEqualTo(Ending.LENGTH_REACHED);
            String whole = lines.substring(0, lines.lastIndexOf('\n') + 1);
            assertThat(Files.readString(file)).isEqualTo(whole);
        }
    }

    private Detail.Run recorded(String device, String lines, NewRun said, List<String> warned) {
        RecordLines.Request request = new RecordLines.Request(
                folder.resolve("job"),
                new ByteArrayInputStream(lines.getBytes(StandardCharsets.UTF_8)),
                device,
                OptionalDouble.empty(),
                said,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        LiveRecording.Recorded recorded = RecordLines.prepareLikeBefore(request).record();
        recorded.warnings().forEach(each -> warned.add(each.code().word()));
        return (Detail.Run) recorded.event().orElseThrow().detail();
    }

    @Test
    void aRunByTheSameSensorTakesOverWhereItSatAndHowItsColumnsAreRead() throws Exception {
        JobFolder.create(folder.resolve("job"), NewJob.fromFile("invented", INSTALLATION));
        Conditions noted = Conditions.NONE
                .with(Condition.PLACE, "gearbox top")
                .with(Condition.DIRECTION, "across")
                .with(Condition.WIND, "4 kt");
        TableReading across = new TableReading(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(new TableReading.ColumnReading("2", Optional.of("across"), Optional.empty())));
        NewRun first = new NewRun(
                Optional.empty(),
                Optional.of("first"),
                "",
                RunSettings.NONE.withEngineRpm(4517).withTable(across),
                noted);
        List<String> warned = new ArrayList<>();
        recorded("invented sensor", lines(), first, warned);

        NewRun upward = new NewRun(
                Optional.empty(),
                Optional.of("second"),
                "",
                RunSettings.NONE,
                Conditions.NONE.with(Condition.DIRECTION, "up"));
        Detail.Run second = recorded("invented sensor", lines().replace("1.", "2."), upward, warned);

        assertThat(second.conditions().get(Condition.PLACE)).contains("gearbox top");
        assertThat(second.conditions().get(Condition.DIRECTION)).as("as said").contains("up");
        assertThat(second.conditions().get(Condition.WIND)).isEmpty();
        assertThat(second.settings().engineRpm()).isEmpty();
        assertThat(second.settings().table()).isEqualTo(across);

        Detail.Run other = recorded(
                "another sensor", lines().replace("1.", "3."), NewRun.labelled("third", RunSettings.NONE), warned);
        assertThat(other.conditions().get(Condition.PLACE)).isEmpty();
        assertThat(warned).doesNotContain("lines-unlike-before");

        Detail.Run columns = recorded(
                "invented sensor",
                lines().replace(",x (", ",y ("),
                NewRun.labelled("fourth", RunSettings.NONE),
                warned);
        assertThat(columns.conditions().get(Condition.PLACE)).isEmpty();
        assertThat(columns.settings()).isEqualTo(RunSettings.NONE);
        assertThat(warned).contains("lines-unlike-before");
    }

    @Test
    void aPortThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> SerialLine.open("/dev/no-such-port", 9600))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("serial port '/dev/no-such-port'");
    }

    @Test
    void aFolderWithoutAJobIsRefused() {
        assertThatThrownBy(() -> RecordLines.prepare(new RecordLines.Request(
                        folder,
                        InputStream.nullInputStream(),
                        "invented sensor",
                        OptionalDouble.empty(),
                        new NewRun(Optional.empty(), Optional.empty(), "", RunSettings.NONE, Conditions.NONE),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty())))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("a folder without a job, expected a job folder or a new .csv file");
    }
}
