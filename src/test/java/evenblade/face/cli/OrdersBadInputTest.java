package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.input.recording.TimeBase;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every refusal of {@code orders}: one line on standard error, status 1, nothing else anywhere. */
class OrdersBadInputTest {
    private static final String INSTALLATION =
            """
            { "engine":     { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
              "reduction":  { "ratio": 2.43 },
              "propeller":  { "blades": 3 } }
            """;

    private static final String READABLE =
            "a WAV, AIFF, AU, FLAC, M4A, MP3 or Ogg sound file, a film with sound, or a CSV table";

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
        assertRefused(missing, missing + ": no such file, expected " + READABLE);
    }

    @Test
    void anEmptyFile() throws IOException {
        String empty = file("empty.wav", "");
        assertRefused(empty, empty + ": an empty file, expected " + READABLE);
    }

    @Test
    void aFolder() {
        assertRefused(folder.toString(), folder + ": a folder, expected " + READABLE);
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
                table, table + ":2: one column, expected a column of time stamps and at least one column of values");
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
    void aTableOfOneColumnBelowRemarks() throws IOException {
        String table = file("bare.csv", "# invented\n# up, in m/s2\n" + rows(200, "%.3f"));
        assertRefused(
                table, table + ":3: one column, expected a column of time stamps and at least one column of values");
    }

    @Test
    void infinitiesInAColumn() throws IOException {
        for (String cell : List.of("Infinity", "-inf")) {
            String table = file("infinite.csv", "time (s),up (m/s2)\n" + rows(400, "%.3f," + cell));
            CommandLineRun run = CommandLineRun.of("orders", table, "--installation", installation, "--json");
            assertThat(run.err())
                    .as(cell)
                    .startsWith("evenblade: " + table + ":2: \"" + cell + "\" in column 'up (m/s2)'")
                    .contains("expected a number")
                    .containsOnlyOnce("\n");
            assertThat(run.status()).isEqualTo(1);
            assertThat(run.out()).isEmpty();
        }
    }

    /** Cut off in its sound it is read as far as it goes, and that is said; nothing of it is lost. */
    @Test
    void aWavCutOffInItsSound() throws IOException {
        byte[] whole = wav(12);
        String cut = file("cut.wav", Arrays.copyOf(whole, whole.length / 2 + 1));
        CommandLineRun run = CommandLineRun.of("orders", cut, "--installation", installation, "--json");
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        assertThat(JsonDocument.parse(run.out(), "out").objects("warnings"))
                .anySatisfy(warning -> assertThat(warning.text("message")).contains("cut off"));
    }

    /** Which column is the time is told by what it holds, so the order of columns changes no figure. */
    @Test
    void shuffledColumns() throws IOException {
        SyntheticRun run = SyntheticRun.at(SpeedProfile.steady(33, 12))
                .withLine(1, 1, 0)
                .withLine(3, 2, 0)
                .withLine(51.0 / 21, 1, 0)
                .withLine(2 * 51.0 / 21, 2, 0)
                .withNoise(0.1)
                .withSeed(4);
        double[] up = run.samples(run.evenClock(400));
        double[] along = run.withSeed(5).samples(run.evenClock(400));
        String usual = table("usual.csv", "time (s),up (m/s2),along (m/s2)", "%.4f,%.5f,%.5f", up, along, 0, 1, 2);
        String shuffled =
                table("shuffled.csv", "along (m/s2),time (s),up (m/s2)", "%.5f,%.4f,%.5f", up, along, 2, 0, 1);
        assertThat(amplitudes(shuffled)).isEqualTo(amplitudes(usual)).isNotEmpty();
    }

    private String table(String name, String heading, String format, double[] up, double[] along, int... order)
            throws IOException {
        StringBuilder text = new StringBuilder(heading).append('\n');
        for (int i = 0; i < up.length; i++) {
            Double[] cells = {i / 400.0, up[i], along[i]};
            text.append(String.format(Locale.ROOT, format, cells[order[0]], cells[order[1]], cells[order[2]]))
                    .append('\n');
        }
        return file(name, text.toString());
    }

    private List<Double> amplitudes(String recording) {
        CommandLineRun run =
                CommandLineRun.of("orders", recording, "--installation", installation, "--channel", "up", "--json");
        assertThat(run.err()).isEmpty();
        return JsonDocument.parse(run.out(), "out").objects("dwells").get(0).objects("orders").stream()
                .filter(order -> !order.flag("beyondRange"))
                .map(order -> order.number("amplitude"))
                .toList();
    }

    /** The start of a PCM file whose samples are declared to be as many as the field can hold, or as in its ds64. */
    private static byte[] head(int rateHz, int channels, int bytesPerSample, long ds64DataBytes) {
        boolean wide = ds64DataBytes > 0;
        ByteBuffer head = ByteBuffer.allocate(wide ? 80 : 44).order(ByteOrder.LITTLE_ENDIAN);
        head.put((wide ? "RF64" : "RIFF").getBytes(StandardCharsets.US_ASCII)).putInt(-1);
        head.put("WAVE".getBytes(StandardCharsets.US_ASCII));
        if (wide) {
            head.put("ds64".getBytes(StandardCharsets.US_ASCII)).putInt(28);
            head.putLong(ds64DataBytes + 72).putLong(ds64DataBytes).putLong(0).putInt(0);
        }
        int frame = channels * bytesPerSample;
        head.put("fmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16);
        head.putShort((short) 1).putShort((short) channels).putInt(rateHz).putInt(rateHz * frame);
        head.putShort((short) frame).putShort((short) (8 * bytesPerSample));
        head.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(-1);
        return head.array();
    }

    private Path sparse(String name, byte[] start, long size) throws IOException {
        Path file = Files.write(folder.resolve(name), start);
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(size);
        }
        return file;
    }

    /** Refused at once, not after hours of reading. */
    @Test
    void moreSoundThanFitsTheMemory() throws IOException {
        long bytes = 3L << 40;
        Path huge = sparse("years.wav", head(8000, 2, 2, bytes), bytes);
        CommandLineRun run = CommandLineRun.of("orders", huge.toString(), "--installation", installation);
        assertThat(run.err())
                .matches("evenblade: \\Q" + huge + "\\E: [0-9.]+ h of sound in 2 channels, expected at most [0-9.]+ h"
                        + " with the memory this program may use; cut it into shorter runs, name one channel, or allow"
                        + " more memory \\(-Xmx\\)\n");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
    }

    /** Such as an interrupted recorder leaves on a card: room taken, nothing in it. */
    @Test
    void gigabytesOfNothingBehindTheHeader() throws IOException {
        Path empty = sparse("nothing.wav", Arrays.copyOf(head(48_000, 1, 2, 0), 12), 3L << 30);
        assertRefused(
                empty.toString(),
                empty + ":byte 12: a WAV file without a format chunk, expected a chunk \"fmt \" that says how samples"
                        + " are stored");
    }

    /** Over two and over four gigabytes, through the whole program in a small memory. */
    @Tag("long")
    @ParameterizedTest
    @CsvSource({"3000000044, 0", "5000000080, 5000000000"})
    void gigabytesOfSoundGoThroughASmallMemory(long size, long ds64) throws Exception {
        int rateHz = 96_000;
        int bytes = 3;
        int channels = 2;
        ByteBuffer start =
                ByteBuffer.allocate(80 + 60 * rateHz * channels * bytes).order(ByteOrder.LITTLE_ENDIAN);
        start.put(head(rateHz, channels, bytes, ds64));
        double[] run = SyntheticRun.at(SpeedProfile.steady(33, 60))
                .withLine(1, 0.1, 0)
                .withLine(3, 0.2, 0)
                .withLine(2.43, 0.1, 0)
                .withNoise(0.02)
                .samples(new TimeBase.Even(0, rateHz, 60 * rateHz));
        for (double value : run) {
            int sample = (int) (value * (1 << 23));
            for (int c = 0; c < channels; c++) {
                start.put((byte) sample).put((byte) (sample >> 8)).put((byte) (sample >> 16));
            }
        }
        Path file = sparse("long.wav", Arrays.copyOf(start.array(), start.position()), size);
        long before = System.nanoTime();
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-cp",
                        System.getProperty("java.class.path"),
                        "evenblade.face.start.Main",
                        "orders",
                        file.toString(),
                        "--installation",
                        installation,
                        "--engine-rpm",
                        "4811",
                        "--channel",
                        "1",
                        "--json")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).isZero();
        System.out.printf(
                Locale.ROOT, "%d bytes in a 256 MB heap: %.0f s%n", size, (System.nanoTime() - before) * 1e-9);
        JsonObject found = JsonDocument.parse(out, "out");
        assertThat(found.object("recording").number("durationS"))
                .isCloseTo((size - 44) / (double) (rateHz * channels * bytes), within(0.01));
        assertThat(found.objects("dwells").get(0).number("propellerRpm")).isCloseTo(33 * 60.0, within(0.5));
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
