package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.keep.practice.WavFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Invented recordings through the whole command line; the truth is what was put into them. */
class SpectrumCommandTest {
    private static final int RATE_HZ = 8000;

    @TempDir
    private Path folder;

    /** 0.2 at 33.1 Hz throughout, 0.05 at 1234.5 Hz from 10 s on, of full scale. */
    private static double[] sound(double seconds) {
        Random random = new Random(7);
        double[] samples = new double[(int) (seconds * RATE_HZ)];
        for (int i = 0; i < samples.length; i++) {
            double t = (double) i / RATE_HZ;
            samples[i] = 0.2 * Math.sin(2 * Math.PI * 33.1 * t)
                    + (t < 10 ? 0 : 0.05 * Math.sin(2 * Math.PI * 1234.5 * t))
                    + 0.01 * random.nextGaussian();
        }
        return samples;
    }

    private String wav() throws IOException {
        Path file = folder.resolve("invented.wav");
        new WavFile(RATE_HZ, 16, 1, "invented").write(file, List.of(sound(20)));
        return file.toString();
    }

    private static JsonObject json(String... words) {
        CommandLineRun run = CommandLineRun.of(
                Stream.concat(Stream.of("spectrum", "--json"), Stream.of(words)).toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return JsonDocument.parse(run.out(), "standard output");
    }

    private static void assertLine(JsonObject line, double hz, double amplitude, String unit) {
        assertThat(line.number("frequencyHz")).isCloseTo(hz, within(0.03));
        assertThat(line.number("amplitude"))
                .isCloseTo(amplitude, within(0.005 * amplitude + 3 * line.number("standardError")));
        assertThat(line.number("standardError")).isPositive();
        assertThat(line.text("unit")).isEqualTo(unit);
    }

    @Test
    void aSoundShowsItsLinesStrongestFirstWithoutAnyInstallation() throws IOException {
        JsonObject json = json(wav(), "--from", "10", "--to", "20");
        // Stretches of a quarter of the 10 s, the power of two next to them: 16384 samples.
        assertThat(json.number("resolutionHz")).isCloseTo(8000 / 16384.0, within(1e-12));
        assertThat(json.text("window")).isEqualTo("hann");
        // (80000 − 16384) / 8192 + 1
        assertThat(json.number("averages")).isEqualTo(8);
        assertThat(json.objects("lines")).hasSize(2);
        assertLine(json.objects("lines").get(0), 33.1, 0.2, "FS");
        assertLine(json.objects("lines").get(1), 1234.5, 0.05, "FS");
    }

    @Test
    void onlyTheStretchAskedForIsLookedAt() throws IOException {
        JsonObject json = json(wav(), "--to", "10");
        assertThat(json.objects("lines")).hasSize(1);
        assertLine(json.objects("lines").get(0), 33.1, 0.2, "FS");
        assertThat(json(wav(), "--up-to", "500").objects("lines")).hasSize(1);
    }

    /** The second tone begins in the middle: its mean square is half of what it is later. */
    @Test
    void aToneThatBeginsHalfWayIsSaidNotToBeSteady() throws IOException {
        List<JsonObject> lines = json(wav()).objects("lines");
        assertThat(lines.get(0).flag("steady")).isTrue();
        assertThat(lines.get(1).number("frequencyHz")).isCloseTo(1234.5, within(0.03));
        assertThat(lines.get(1).flag("steady")).isFalse();
        assertThat(lines.get(1).number("amplitude")).isCloseTo(0.05 / Math.sqrt(2), within(0.003));
    }

    @Test
    void aTableIsLookedAtInItsOwnUnitAndAChannelChosen() throws IOException {
        StringBuilder rows = new StringBuilder("time (s),across (m/s2),up (m/s2)\n");
        for (int i = 0; i < 4160; i++) {
            double t = i / 416.0;
            rows.append(String.format(
                    Locale.ROOT,
                    "%.6f,%.6f,%.6f%n",
                    t,
                    0.7 * Math.sin(2 * Math.PI * 41.3 * t) + 0.01 * (i * 7919 % 101 - 50) / 50.0,
                    9.81 + 1.3 * Math.sin(2 * Math.PI * 77.7 * t) + 0.01 * (i * 104729 % 211 - 105) / 105.0));
        }
        String file = Files.writeString(folder.resolve("invented.csv"), rows).toString();
        assertLine(json(file).objects("lines").get(0), 41.3, 0.7, "m/s2");
        JsonObject up = json(file, "--channel", "2");
        assertThat(up.text("channel")).isEqualTo("up");
        assertLine(up.objects("lines").get(0), 77.7, 1.3, "m/s2");
    }

    @Test
    void theTerminalShowsATableAndPlotsWritesPicturesAndTables() throws IOException {
        Path plots = folder.resolve("plots");
        CommandLineRun run = CommandLineRun.of("spectrum", wav(), "--plots", plots.toString());
        assertThat(run.status()).isZero();
        assertThat(run.out())
                .contains("Lines out of the noise, strongest first")
                .contains("FS peak")
                .contains(" 33.10 ")
                .contains("1234.50 ");
        try (Stream<Path> files = Files.list(plots)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "invented-spectrum.png",
                            "invented-spectrum.svg",
                            "invented-waterfall.png",
                            "invented-waterfall.svg",
                            "invented-spectrum.csv",
                            "invented-lines.csv");
        }
        assertThat(Files.readAllLines(plots.resolve("invented-lines.csv")).get(0))
                .isEqualTo("frequency (Hz),peak amplitude (FS),standard error (FS),steady,orders");
    }

    @Test
    void stretchesThatCantBeLookedAtAreRefused() throws IOException {
        String file = wav();
        assertRefused("from 12 s to 10 s", "spectrum", file, "--from", "12", "--to", "10");
        assertRefused("goes from 0.0 s to 20.0 s", "spectrum", file, "--to", "21");
        assertRefused("goes from 0.0 s to 20.0 s", "spectrum", file, "--from", "-1");
        assertRefused("at least 1 s after the start", "spectrum", file, "--from", "3", "--to", "3.5");
        assertRefused("NaN", "spectrum", file, "--from", "NaN");
        assertRefused("20 Hz or more", "spectrum", file, "--up-to", "0");
        assertRefused("no channel 'side'", "spectrum", file, "--channel", "side");
    }

    private static void assertRefused(String word, String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(word);
        assertThat(run.err().strip().lines()).hasSize(1);
    }

    /** The sample of the first page: orders known from its signal. */
    @Test
    void withAnInstallationEachLineSaysWhichOrdersItMayBe() {
        JsonObject json = json(
                "samples/geared-three-blade/before-phone.csv",
                "--installation",
                "samples/geared-three-blade/installation.json",
                "--channel",
                "shake up");
        List<List<String>> orders =
                json.objects("lines").stream().map(line -> line.texts("orders")).toList();
        assertThat(orders).contains(List.of("propeller 1×"), List.of("blade pass"), List.of("firing"));
        // 2× firing at 320 Hz is above half of 416 Hz: it appears at 416 − 320.3 = 95.7 Hz.
        JsonObject folded = json.objects("lines").stream()
                .filter(line -> line.texts("orders").contains("2× firing (folded)"))
                .findFirst()
                .orElseThrow();
        assertThat(folded.number("frequencyHz")).isCloseTo(95.7, within(3.5));
    }
}
