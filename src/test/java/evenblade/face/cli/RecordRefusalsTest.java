package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What {@code record} refuses: one line, exit status 1, and nothing left behind. Devices are made by configuring
 * the system's sound library, in a process of its own.
 */
class RecordRefusalsTest {
    private static final String INSTALLATION = "samples/geared-three-blade/installation.json";
    private static final List<String> WITHOUT_THE_RIGHT_TO_WRITE_ANYWHERE = List.of(
            "setpriv", "--bounding-set=-dac_override,-dac_read_search", "--inh-caps=-dac_override,-dac_read_search");

    @TempDir
    Path folder;

    static Stream<List<String>> seenBeforeTheDeviceIsOpened() {
        return Stream.of(
                List.of("--seconds", "0", "length of the recording: 0.0 s, expected a length above zero"),
                List.of("--seconds", "-1", "length of the recording: -1.0 s, expected a length above zero"),
                List.of("--rate", "0", "--rate: 0, expected a whole number above zero"),
                List.of("--quiet-take", "none.wav", "none.wav: no such file, expected"),
                List.of("--installation", "none.json", "none.json: no such file, expected"));
    }

    @ParameterizedTest
    @MethodSource("seenBeforeTheDeviceIsOpened")
    void isSeenBeforeTheDeviceIsOpened(List<String> words) throws IOException {
        Path file = folder.resolve("a.wav");

        CommandLineRun run = CommandLineRun.of("record", file.toString(), words.get(0), words.get(1));

        assertRefused(run, words.get(2));
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void stepsOfWhatIsNotKnownLeaveNothingBehind() {
        CommandLineRun run = CommandLineRun.of("record", folder.resolve("a.wav").toString(), "--steps");

        assertRefused(run, "steps: it isn't known what runs, expected a job, or an installation file beside it");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void listeningRefusesWhatRecordingRefuses() {
        assertRefused(
                CommandLineRun.of("listen", "--seconds", "0"),
                "length of the recording: 0.0 s, expected a length above zero");
        assertRefused(CommandLineRun.of("listen", "--quiet-take", "none.wav"), "none.wav: no such file");
    }

    private static void assertRefused(CommandLineRun run, String reason) {
        assertThat(run.status()).as(run.err()).isEqualTo(1);
        List<String> ours =
                run.err().lines().filter(l -> l.startsWith("evenblade")).toList();
        assertThat(ours).singleElement().asString().startsWith("evenblade: ").contains(reason);
        assertThat(run.err()).doesNotContain("\tat ");
        assertThat(run.out()).isEmpty();
    }

    /** An environment whose only input is what the words say in the sound library's own language. */
    private Map<String, String> input(String words) throws IOException {
        Assumptions.assumeTrue(System.getProperty("os.name").startsWith("Linux"), "made for one sound library");
        Path config = Files.writeString(
                folder.resolve("sound.conf"),
                """
                pcm.hw { @args [ CARD ] @args.CARD { type string default "0" } type hw card $CARD }
                ctl.hw { @args [ CARD ] @args.CARD { type string default "0" } type hw card $CARD }
                pcm.nothing { type null }
                pcm.input { %s }
                pcm.default { type asym playback.pcm "nothing" capture.pcm "input" }
                """
                        .formatted(words));
        return Map.of("ALSA_CONFIG_PATH", config.toString(), "PULSE_SERVER", "unix:" + folder.resolve("no-server"));
    }

    private CommandLineRun record(Map<String, String> environment, List<String> before, Path target, String... more)
            throws Exception {
        List<String> args = Stream.concat(Stream.of("record", target.toString(), "--seconds", "1"), Stream.of(more))
                .toList();
        return ChildProgram.run(environment, folder, ChildProgram.command(before, args.toArray(String[]::new)));
    }

    @Test
    void anInputThatCannotBeHadWhileItIsLookedForIsNamedAsSeen() throws Exception {
        Path job = folder.resolve("job");
        CommandLineRun.of("job", "new", job.toString(), "--installation", INSTALLATION);

        CommandLineRun run = record(input("type hw card 30"), List.of(), job);

        assertRefused(run, "no microphone or line input that can be used now (seen, but giving no sound: '");
        assertThat(job.resolve("takes")).doesNotExist();
    }

    @Test
    void aFolderThatThisUserMayNotWriteIsRefused() throws Exception {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        boolean everything = (int) Files.getAttribute(closed, "unix:uid") == 0;
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
        List<String> bounded = everything ? WITHOUT_THE_RIGHT_TO_WRITE_ANYWHERE : List.of();

        CommandLineRun run = record(input("type null"), bounded, closed.resolve("a.wav"));

        assertRefused(run, "a.wav: this user may not write there, expected a folder that can be written");
        assertThat(closed).isEmptyDirectory();
    }

    @Test
    void aPlaceUnderAFileIsRefused() throws Exception {
        Path file = Files.writeString(folder.resolve("file"), "");

        CommandLineRun run = record(input("type null"), List.of(), file.resolve("a.wav"));

        assertRefused(run, "a.wav: it can't be written (Not a directory), expected a folder that can be written");
    }

    @Test
    void aRateThatIsNotOfferedIsRefusedWithTheNearest() throws Exception {
        CommandLineRun run = record(input("type null"), List.of(), folder.resolve("a.wav"), "--rate", "44000");

        assertRefused(run, "--rate: 44000 Hz is not offered by '");
        assertThat(run.err()).contains("the nearest is 44100");
        assertThat(folder.resolve("a.wav")).doesNotExist();
    }
}
