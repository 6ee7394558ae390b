package evenblade.input.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecorderTest {
    private static final Recorder.Room PLENTY = () -> 1_000_000_000_000L;

    @TempDir
    Path folder;

    private Take record(ScriptedInput input, OptionalDouble seconds) {
        return Recorder.prepare(input, folder.resolve("a.wav"), PLENTY, seconds, 1)
                .record((block, frames) -> {});
    }

    private byte[] samples(Take take) throws IOException {
        byte[] all = Files.readAllBytes(take.file());
        int bytes = (int) take.frames() * take.format().frameBytes();
        return java.util.Arrays.copyOfRange(all, 80, 80 + bytes);
    }

    private static void assertUntouched(byte[] samples) {
        for (int i = 0; i < samples.length; i++) {
            if (samples[i] != ScriptedInput.byteAt(i)) {
                throw new AssertionError("byte " + i + " is not the one that came in");
            }
        }
    }

    @Test
    void theFileHoldsEveryByteAsItCameAndTheLengthAskedForToTheSample() throws IOException {
        ScriptedInput input = new ScriptedInput(
                ScriptedInput.mono16(), (read, most) -> read % 3 == 0 ? 0 : (int) Math.min(most, 1 + read % 417));
        AtomicLong heard = new AtomicLong();

        Take take = Recorder.prepare(input, folder.resolve("a.wav"), PLENTY, OptionalDouble.of(2.5), 1)
                .record((block, frames) -> heard.addAndGet(frames));

        assertThat(take.ending()).isEqualTo(Ending.LENGTH_REACHED);
        assertThat(take.frames()).isEqualTo(20_000);
        assertThat(heard).hasValue(20_000);
        assertUntouched(samples(take));
        assertThat(input.closed()).isTrue();
        assertThat(take.warnings()).isEmpty();
    }

    @Test
    void anInputThatVanishesLeavesWhatHadComeIn() throws IOException {
        Take take = record(
                new ScriptedInput(ScriptedInput.mono16(), (read, most) -> read < 30 ? most : -1),
                OptionalDouble.empty());

        assertThat(take.ending()).isEqualTo(Ending.DEVICE_GONE);
        assertThat(take.frames()).isEqualTo(30 * 400);
        assertUntouched(samples(take));
        assertThat(take.warnings()).singleElement().satisfies(w -> assertThat(
                        Phrases.of(Face.COMMAND_LINE).text(w))
                .isEqualTo("the input stopped giving sound after 1.5 s; what had come in is in the file "
                        + "[recording-cut-short]"));
    }

    @Test
    void anInputThatFailsLeavesWhatHadComeInAndSaysWhy() throws IOException {
        Take take = record(
                new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
                    if (read < 30) {
                        return most;
                    }
                    throw new IOException("cable pulled");
                }),
                OptionalDouble.empty());

        assertThat(take.frames()).isEqualTo(30 * 400);
        assertThat(take.warnings()).singleElement().satisfies(w -> assertThat(
                        Phrases.of(Face.COMMAND_LINE).text(w))
                .contains("cable pulled"));
    }

    @Test
    void anInputThatFallsSilentWithoutAWordIsGivenUp() {
        AtomicLong now = new AtomicLong();
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
            now.addAndGet(50_000_000);
            return read < 30 ? most : 0;
        });

        Take take = Recorder.prepare(input, folder.resolve("a.wav"), PLENTY, OptionalDouble.empty(), 1, now::get)
                .record((block, frames) -> {});

        assertThat(take.ending()).isEqualTo(Ending.DEVICE_GONE);
        assertThat(take.frames()).isEqualTo(30 * 400);
        assertThat(now.get() / 1e9 - 1.5).isCloseTo(TeeSource.PATIENCE_S, within(0.2));
    }

    @Test
    void aDiskThatFillsUpEndsTheRecordingCleanly() throws IOException {
        AtomicLong free = new AtomicLong(200_000_000);
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
            pause(5);
            free.addAndGet(-2_000_000);
            return most;
        });
        Take take = Recorder.prepare(input, folder.resolve("a.wav"), free::get, OptionalDouble.empty(), 1)
                .record((block, frames) -> {});

        assertThat(take.ending()).isEqualTo(Ending.DISK_NEARLY_FULL);
        assertThat(take.frames()).isGreaterThan(400);
        assertUntouched(samples(take));
        assertThat(take.warnings()).singleElement().satisfies(w -> assertThat(
                        Phrases.of(Face.COMMAND_LINE).text(w))
                .startsWith("the disk is nearly full after"));
    }

    @Test
    void aDiskWithoutRoomForTheLengthAskedForIsRefusedBeforehand() {
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> most);

        assertThatThrownBy(() ->
                        Recorder.prepare(input, folder.resolve("a.wav"), () -> 70_000_000, OptionalDouble.of(3600), 2))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("70 MB free on this disk, expected 179 MB for 3600 s of sound");
        assertThat(folder).isEmptyDirectory();
        assertThat(input.closed()).isTrue();
    }

    @Test
    void aFolderThatIsNotThereIsNamed() {
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> most);

        assertThatThrownBy(
                        () -> Recorder.prepare(input, folder.resolve("none/a.wav"), PLENTY, OptionalDouble.empty(), 1))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("its folder isn't there");
        assertThat(input.closed()).isTrue();
    }

    @Test
    void samplesThatTheInputLostAreToldWithLengthAndPlaceAndMarkedInTheFile() throws IOException {
        AtomicLong now = new AtomicLong();
        // Blocks of a twentieth of a second, in time by the clock; before the 160th half a second is missing.
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
            now.addAndGet(50_000_000L + (read == 160 ? 500_000_000L : 0));
            return 400;
        });

        Take take = Recorder.prepare(input, folder.resolve("a.wav"), PLENTY, OptionalDouble.of(20), 1, now::get)
                .record((block, frames) -> {});

        assertThat(take.frames()).as("nothing is made up for it").isEqualTo(160_000);
        assertThat(take.gaps()).singleElement().satisfies(gap -> {
            assertThat(gap.lostS()).isCloseTo(0.5, within(0.03));
            assertThat(gap.frame() / 8000.0).isCloseTo(8, within(2.0));
        });
        assertThat(take.warnings()).singleElement().satisfies(w -> {
            assertThat(w.code()).isEqualTo(WarningCode.SAMPLES_MISSING);
            assertThat(Phrases.of(Face.COMMAND_LINE).text(w)).contains("0.50 s of sound are missing near");
        });
        byte[] all = Files.readAllBytes(take.file());
        String tail = new String(all, 80 + 320_000, all.length - 80 - 320_000, StandardCharsets.ISO_8859_1);
        assertThat(tail).startsWith("cue ");
    }

    @Test
    void aMachineThatStoodStillDoesNotTakeItsInputForGone() throws IOException {
        AtomicLong now = new AtomicLong();
        ScriptedInput input = new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
            now.addAndGet(read == 100 ? 60_000_000_000L : 50_000_000L);
            return read == 100 ? 0 : 400;
        });

        Take take = Recorder.prepare(input, folder.resolve("a.wav"), PLENTY, OptionalDouble.of(10), 1, now::get)
                .record((block, frames) -> {});

        assertThat(take.ending()).isEqualTo(Ending.LENGTH_REACHED);
    }

    @Test
    void stoppedFromAnotherThreadItEndsSoon() throws InterruptedException {
        Recorder recorder = Recorder.prepare(
                new ScriptedInput(ScriptedInput.mono16(), (read, most) -> {
                    pause(10);
                    return most;
                }),
                folder.resolve("a.wav"),
                PLENTY,
                OptionalDouble.empty(),
                1);
        Take[] take = new Take[1];
        Thread thread = new Thread(() -> take[0] = recorder.record((block, frames) -> {}));
        thread.start();
        Thread.sleep(200);
        recorder.stop();
        thread.join(5000);

        assertThat(take[0].ending()).isEqualTo(Ending.STOPPED);
        assertThat(take[0].frames()).isPositive();
    }

    private static void pause(long ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
