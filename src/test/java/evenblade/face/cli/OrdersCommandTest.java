package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.keep.practice.LoggerFile;
import evenblade.keep.practice.SpeedProfile;
import evenblade.keep.practice.SyntheticRun;
import evenblade.keep.practice.WavFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Invented runs through the whole command line; the truth is what was put into them. */
class OrdersCommandTest {
    private static final String TRAINER =
            """
            { "name": "Invented trainer",
              "engine":     { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
              "reduction":  { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
              "propeller":  { "blades": 3 } }
            """;

    private static final double RATIO = 51.0 / 21;
    private static final double FULL_SCALE = 50;

    @TempDir
    private Path folder;

    private String installation;

    @BeforeEach
    void write() throws IOException {
        installation =
                Files.writeString(folder.resolve("trainer.json"), TRAINER).toString();
    }

    /** Lines such as a ground run shows, speed wandering by ± 1 %. */
    private static SyntheticRun run(double engineRpm, double durationS) {
        return SyntheticRun.at(
                        SpeedProfile.steady(engineRpm / RATIO / 60, durationS).wandering(0.01, 3))
                .withLine(1, 1.0, 40)
                .withLine(2, 0.12, 130)
                .withLine(3, 2.0, 10)
                .withLine(6, 0.5, 200)
                .withLine(RATIO, 0.6, 300)
                .withLine(2 * RATIO, 1.5, 75)
                .withLine(4 * RATIO, 0.4, 15)
                .withNoise(0.05)
                .withSeed(11);
    }

    private String wav(String name, SyntheticRun... channels) throws IOException {
        Path file = folder.resolve(name);
        new WavFile(8000, 16, FULL_SCALE, "invented")
                .write(
                        file,
                        java.util.stream.Stream.of(channels)
                                .map(run -> run.samples(run.evenClock(8000)))
                                .toList());
        return file.toString();
    }

    private String csv(String name, SyntheticRun... axes) throws IOException {
        Path file = folder.resolve(name);
        Random random = new Random(5);
        int size = (int) (axes[0].speed().durationS() * 416);
        double[] stamps = new double[size];
        for (int i = 0; i < size; i++) {
            stamps[i] = (i + 1) / 416.0 + 0.0004 * (random.nextDouble() - 0.5);
        }
        TimeBase time = new TimeBase.Stamped(Series.of(stamps), 416);
        List<String> headers =
                List.of("along (m/s2)", "across (m/s2)", "up (m/s2)").subList(0, axes.length);
        new LoggerFile("clock (ms)", headers, ',', 0, 1)
                .write(
                        file,
                        List.of("invented"),
                        time,
                        java.util.stream.Stream.of(axes)
                                .map(run -> run.samples(time))
                                .toList());
        return file.toString();
    }

    private JsonObject json(String recording, String... more) {
        CommandLineRun run = CommandLineRun.of(java.util.stream.Stream.concat(
                        java.util.stream.Stream.of("orders", recording, "--installation", installation, "--json"),
                        java.util.stream.Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return JsonDocument.parse(run.out(), "standard output");
    }

    private static JsonObject order(JsonObject dwell, String name) {
        return dwell.objects("orders").stream()
                .filter(each -> each.text("name").equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** Within 1 % and two standard errors of what was put in. */
    private static void assertMeasured(JsonObject dwell, String name, double truth) {
        JsonObject order = order(dwell, name);
        assertThat(order.flag("detected")).as(name).isTrue();
        assertThat(order.number("amplitude"))
                .as(name)
                .isEqualTo(truth, within(0.01 * truth + 2 * order.number("standardError")));
    }

    @Test
    void aSoundFileGivesItsSpeedAndOrdersInTheUnitOfItsFullScale() throws IOException {
        JsonObject json = json(wav("run.wav", run(4800, 20)), "--engine-rpm", "4700", "--full-scale", "50 m/s2");
        double truth = 60 * RATIO * run(4800, 20).speed().meanHz(0, 20);
        assertThat(json.object("speed").text("source")).isEqualTo("signal");
        assertThat(json.object("speed").flag("confirmed")).isTrue();
        assertThat(json.object("speed").number("engineRpm")).isEqualTo(truth, within(0.0005 * truth));
        assertThat(json.objects("dwells")).hasSize(1);
        JsonObject dwell = json.objects("dwells").get(0);
        assertMeasured(dwell, "propeller 1×", 1.0);
        assertMeasured(dwell, "propeller 2×", 0.12);
        assertMeasured(dwell, "blade pass", 2.0);
        assertMeasured(dwell, "2× blade pass", 0.5);
        assertMeasured(dwell, "crank 1×", 0.6);
        assertMeasured(dwell, "firing", 1.5);
        assertMeasured(dwell, "2× firing", 0.4);
        assertThat(order(dwell, "firing").text("unit")).isEqualTo("m/s2");
    }

    @Test
    void aTableIsMeasuredPerAxisTheStrongestOnceOfThePropellerFirst() throws IOException {
        SyntheticRun run = run(4800, 15);
        SyntheticRun weaker = new SyntheticRun(
                run.speed(), run.lines().stream().map(line -> line.times(0.3)).toList(), run.tones(), run.noise(), 12);
        JsonObject json = json(csv("run.csv", weaker, run), "--propeller-rpm", "1975");
        assertThat(json.text("channel")).isEqualTo("across");
        assertThat(json.objects("channels")).hasSize(2);
        assertMeasured(json.objects("dwells").get(0), "propeller 1×", 1.0);
        assertMeasured(json.objects("dwells").get(0), "blade pass", 2.0);
        JsonObject second = json.objects("channels").get(1);
        assertThat(second.text("channel")).isEqualTo("along");
        assertMeasured(second.objects("dwells").get(0), "blade pass", 0.6);
        JsonObject beyond = order(json.objects("dwells").get(0), "2× blade pass");
        assertThat(beyond.flag("beyondRange")).isTrue();
        // 2× blade pass at 197.5 Hz lies above the usable 187.2 Hz, and below half of 416 Hz: nothing folds.
        assertThat(beyond.optionalNumber("foldsToHz")).isEmpty();
    }

    @Test
    void theTextSaysTheSpeedFirstAndFitsEightyColumns() throws IOException {
        CommandLineRun run = CommandLineRun.of(
                "orders", wav("run.wav", run(4800, 15)), "--installation", installation, "--engine-rpm", "4800");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith("Speed CONFIRMED by the signal\nengine     4")
                .contains("dwell 1 of 1")
                .contains("Ignition off");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                .as(line)
                .isLessThanOrEqualTo(80));
    }

    @Test
    void withPlotsEveryPictureIsWrittenTwiceAndNamed() throws IOException {
        Path plots = folder.resolve("new").resolve("pictures");
        CommandLineRun run = CommandLineRun.of(
                "orders",
                wav("stool.wav", run(4800, 8)),
                "--installation",
                installation,
                "--engine-rpm",
                "4800",
                "--plots",
                plots.toString(),
                "--json");
        assertThat(run.status()).isZero();
        JsonDocument.parse(run.out(), "standard output");
        for (String name : List.of("spectrum", "orders", "waterfall", "turn", "speed", "swell")) {
            Path png = plots.resolve("stool-" + name + ".png");
            Path svg = plots.resolve("stool-" + name + ".svg");
            assertThat(run.err()).contains("wrote " + png + "\n", "wrote " + svg + "\n");
            assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
            assertThat(svg).content().contains("<svg");
        }
        try (var files = Files.list(plots)) {
            assertThat(files).hasSize(12);
        }
    }

    @Test
    void inNoiseNoSpeedIsFoundNothingIsDetectedAndJsonHasNulls() throws IOException {
        SyntheticRun noise =
                SyntheticRun.at(SpeedProfile.steady(33, 8)).withNoise(1).withSeed(4);
        String file = wav("noise.wav", noise);
        JsonObject json = json(file);
        assertThat(json.object("speed").flag("confirmed")).isFalse();
        assertThat(json.object("speed").optionalText("source")).isEmpty();
        assertThat(json.object("speed").optionalNumber("engineRpm", 0, 1e6)).isEmpty();
        assertThat(json.objects("dwells")).isEmpty();
        assertThat(CommandLineRun.of("orders", file, "--installation", installation)
                        .out())
                .startsWith("Speed NOT FOUND");

        JsonObject entered = json(file, "--engine-rpm", "4800");
        assertThat(entered.object("speed").text("source")).isEqualTo("entered");
        assertThat(entered.object("speed").number("engineRpm")).isEqualTo(4800, within(1e-6));
        assertThat(entered.objects("dwells").get(0).flag("confirmed")).isFalse();
        assertThat(entered.objects("dwells").get(0).objects("orders")).isEmpty();
        assertThat(CommandLineRun.of("orders", file, "--installation", installation, "--engine-rpm", "4800")
                        .out())
                .startsWith("Speed NOT CONFIRMED");
    }

    @Test
    void aNamedChannelIsTheOnlyOneAndTheOthersAreNotListenedTo() throws IOException {
        SyntheticRun noise =
                SyntheticRun.at(SpeedProfile.steady(33, 8)).withNoise(1).withSeed(4);
        String file = wav("two.wav", noise, run(4800, 8));
        JsonObject json = json(file, "--channel", "2", "--engine-rpm", "4800");
        assertThat(json.text("channel")).isEqualTo("right");
        assertThat(json.objects("channels")).hasSize(1);
        assertThat(json.object("speed").flag("confirmed")).isTrue();
        assertThat(json.objects("quality")).hasSize(2);
        assertThat(json(file, "--engine-rpm", "4800").text("channel")).isEqualTo("right");
    }

    @Test
    void aMarkGivesTheSpeedAndThePhaseOfEveryLine() throws IOException {
        SyntheticRun run = run(4800, 10);
        TimeBase clock = run.evenClock(8000);
        double[] mark = new double[clock.size()];
        for (int i = 0; i < mark.length; i++) {
            double turned = run.speed().revolutionsAt(clock.at(i));
            mark[i] = turned - Math.floor(turned) < 0.05 ? 40 : 0;
        }
        Path file = folder.resolve("marked.wav");
        new WavFile(8000, 16, FULL_SCALE, "invented").write(file, List.of(run.samples(clock), mark));
        JsonObject json = json(file.toString(), "--mark-channel", "right", "--full-scale", "50 m/s2");
        assertThat(json.object("speed").text("source")).isEqualTo("mark");
        assertThat(json.objects("channels")).hasSize(1);
        JsonObject dwell = json.objects("dwells").get(0);
        assertMeasured(dwell, "propeller 1×", 1.0);
        assertMeasured(dwell, "firing", 1.5);
        // The mark passes within 0.05 revolutions of angle 0; the line was put in 40° ahead of its cosine.
        assertThat(order(dwell, "propeller 1×").number("phaseDeg")).isEqualTo(40, within(20.0));
    }

    @Test
    void theMarkIsNoSignal() throws IOException {
        String file = wav("run.wav", run(4800, 8));
        assertThat(CommandLineRun.of("orders", file, "--installation", installation, "--mark-channel", "1")
                        .err())
                .isEqualTo("evenblade: " + file + ": no channel beside 'mono', the one with the mark, expected a"
                        + " channel with the shaking, too\n");
    }
}
