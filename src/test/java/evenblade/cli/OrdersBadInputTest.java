package evenblade.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.practice.SpeedProfile;
import evenblade.practice.SyntheticRun;
import evenblade.practice.WavFile;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every refusal of {@code orders}: one line on standard error, status 1, nothing else anywhere. */
class OrdersBadInputTest {
    private static final String INSTALLATION =
            """
            { "engine":     { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
              "reduction":  { "ratio": 2.43 },
              "propeller":  { "blades": 3 } }
            """;

    private static final String READABLE = "a WAV, AIFF, AU or FLAC sound file or a CSV table";

    @TempDir
    private Path folder;

    private Path plots;
    private String installation;

    @BeforeEach
    void write() throws IOException {
        installation = file("installation.json", INSTALLATION);
        plots = folder.resolve("pictures");
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private String file(String name, byte[] bytes) throws IOException {
        return Files.write(folder.resolve(name), bytes).toString();
    }

    private byte[] wav(double durationS) throws IOException {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(33, durationS))
                .withLine(1, 1, 0)
                .withLine(3, 1, 0)
                .withNoise(0.1);
        Path path = folder.resolve("made.wav");
        new WavFile(2000, 16, 10, "invented").write(path, List.of(run.samples(run.evenClock(2000))));
        return Files.readAllBytes(path);
    }

    private static String rows(int count, String format) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < count; i++) {
            text.append(String.format(Locale.ROOT, format, 0.01 * i, Math.sin(i * 0.7)))
                    .append('\n');
        }
        return text.toString();
    }

    private void assertRefused(String recording, String complaint, String... more) {
        CommandLineRun run = CommandLineRun.of(Stream.concat(
                        Stream.of(
                                "orders",
                                recording,
                                "--installation",
                                installation,
                                "--plots",
                                plots.toString(),
                                "--json"),
                        Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.err()).isEqualTo("evenblade: " + complaint + "\n");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(plots).doesNotExist();
    }

    @Test
    void aMissingFile() {
        String missing = folder.resolve("missing.wav").toString();
        assertRefused(missing, missing + ": no such file, expected a file that can be read");
    }

    @Test
    void anEmptyFile() throws IOException {
        String empty = file("empty.wav", "");
        assertRefused(empty, empty + ": an empty file, expected " + READABLE);
    }

    @Test
    void aFolder() {
        assertRefused(folder.toString(), folder + ": a folder, expected a recording, " + READABLE);
    }

    @Test
    void aWavCutOffInItsHeader() throws IOException {
        String cut = file("cut.wav", Arrays.copyOf(wav(2), 30));
        assertRefused(
                cut,
                cut + ":byte 30: a WAV file without a format chunk, expected a chunk \"fmt \" that says how samples are"
                        + " stored");
    }

    @Test
    void aWavWithoutFormat() throws IOException {
        byte[] bytes = wav(2);
        String text = new String(bytes, StandardCharsets.ISO_8859_1).replace("fmt ", "junk");
        String bad = file("no-format.wav", text.getBytes(StandardCharsets.ISO_8859_1));
        assertRefused(
                bad,
                bad + ":byte " + bytes.length + ": a WAV file without a format chunk, expected a chunk \"fmt \" that"
                        + " says how samples are stored");
    }

    @Test
    void textNamedAsSound() throws IOException {
        String text = file("text.wav", "hello there\n");
        assertRefused(text, text + ":1: text that starts \"hello there\", expected a sound file, as its name says");
    }

    @Test
    void aTableWithoutNumbers() throws IOException {
        String table = file("words.csv", "time,up\nsoon,much\nlater,more\n");
        assertRefused(
                table,
                table + ":1: no number in it, text that starts \"time,up\", expected rows of a time stamp and at least"
                        + " one value");
    }

    @Test
    void aTableOfOneColumn() throws IOException {
        String table = file("one.csv", "time (s)\n" + rows(200, "%.3f"));
        assertRefused(
                table, table + ":101: one column, expected a column of time stamps and at least one column of values");
    }

    @Test
    void aSignalThatStandsStill() throws IOException {
        String table = file("still.csv", "time (s),up (m/s2)\n" + rows(400, "%.3f,9.81"));
        assertRefused(table, table + ": a constant signal, expected a signal that changes");
    }

    @Test
    void halfASecond() throws IOException {
        String brief = file("brief.wav", wav(0.5));
        assertRefused(brief, brief + ": 0.5 s of signal, expected at least 1 s");
    }

    @Test
    void nothingButNotANumber() throws IOException {
        String table = file("nan.csv", "time (s),up (m/s2)\n" + rows(400, "%.3f,NaN"));
        assertRefused(
                table,
                table + ":2: \"NaN\" in column 'up (m/s2)' (400 of 400 rows are like that), expected a number in every"
                        + " cell of at least 99 % of the rows");
    }

    @Test
    void aTableOfThreeGigabytes() throws IOException {
        Path huge = folder.resolve("huge.csv");
        Files.writeString(huge, "time (s),up (m/s2)\n" + rows(20_000, "%.3f,%.5f"));
        try (RandomAccessFile sparse = new RandomAccessFile(huge.toFile(), "rw")) {
            sparse.setLength(3L << 30);
        }
        CommandLineRun run = CommandLineRun.of("orders", huge.toString(), "--installation", installation);
        // The size that is taken depends on the memory of the machine.
        assertThat(run.err())
                .matches("evenblade: \\Q" + huge
                        + "\\E: a table of 3\\.2 GB, some [0-9.]+ million rows, expected at most"
                        + " [0-9]+ MB with the memory this program may use; cut it into shorter runs\n");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
    }

    @Test
    void aSpeedThatTheEngineDoesNotRunAt() throws IOException {
        String good = file("good.wav", wav(6));
        assertRefused(
                good,
                "entered speed: 9000 rpm of the engine, expected an engine speed from 1440 (10 % below idle) to"
                        + " 6380 rpm (10 % above the stated maximum)",
                "--engine-rpm",
                "9000");
        assertRefused(
                good,
                "entered speed: 500 rpm of the propeller, 1215 rpm of the engine, expected an engine speed from 1440"
                        + " (10 % below idle) to 6380 rpm (10 % above the stated maximum)",
                "--propeller-rpm",
                "500");
    }

    @Test
    void anUnknownChannel() throws IOException {
        String good = file("good.wav", wav(6));
        assertRefused(good, good + ": no channel 'up', expected 'mono' or a number", "--channel", "up");
        assertRefused(good, good + ": channel number 2, expected 1 to 1 ('mono')", "--channel", "2");
    }

    @Test
    void anUnknownKeyInTheInstallation() throws IOException {
        String good = file("good.wav", wav(6));
        installation = file("installation.json", INSTALLATION.replace("\"ratio\"", "\"ration\""));
        assertRefused(
                good,
                installation + ":2: unknown key \"ration\" in \"reduction\", expected \"ratio\" (the nearest known"
                        + " key)");
    }

    @Test
    void aFileWhereTheFolderOfPicturesShouldBe() throws IOException {
        String good = file("good.wav", wav(6));
        String taken = file("taken", "not a folder");
        CommandLineRun run = CommandLineRun.of(
                "orders", good, "--installation", installation, "--plots", taken, "--engine-rpm", "4811");
        assertThat(run.err())
                .isEqualTo("evenblade: " + taken + ": a file at " + taken
                        + ", expected a folder for the pictures, there or to be made\n");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(Path.of(taken)).hasContent("not a folder");
    }

    @Test
    void aToleranceThatIsNone() throws IOException {
        String good = file("good.wav", wav(6));
        assertRefused(good, "--tolerance: 0.0, expected a percentage above 0 and at most 50", "--tolerance", "0");
    }
}
