package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlanCommandTest {
    private static final String TRAINER =
            """
            { "name": "Invented trainer",
              "engine":     { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
              "reduction":  { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
              "propeller":  { "blades": 3, "diameter": "1.70 m" } }
            """;

    @TempDir
    private Path folder;

    private String file;

    @BeforeEach
    void write() throws IOException {
        file = written("trainer.json", TRAINER);
    }

    private String written(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    @Test
    void theTextGivesEveryLineAndTheCard() {
        CommandLineRun run = CommandLineRun.of("plan", "--installation", file, "--engine-rpm", "5000");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith("As entered  Invented trainer\n")
                .contains("the same teeth meet every 17 engine = 7 propeller")
                .contains("blade pass             3  1.2353  102.94\n")
                .contains("Lines that coincide: no analysis can split them, at any speed\nnone\n")
                .contains("- 2× blade pass | crank 2½×: 5000 rpm: 2.451 Hz apart, 0.6 s\n")
                .contains("Run card: cautions\n- Before a hand goes near the propeller: ignition off");
    }

    @Test
    void theTextFitsEightyColumnsForEveryKindOfInstallation() throws IOException {
        String fan = written(
                "fan.json",
                "{\"engine\": {\"cycle\": \"electric\", \"idleRpm\": 10000, \"maxRpm\": 100000},"
                        + " \"reduction\": {\"drivingTeeth\": 17, \"drivenTeeth\": 83, \"kind\": \"belt\"},"
                        + " \"propeller\": {\"blades\": 12}}");
        String radial = written(
                "radial.json",
                "{\"engine\": {\"cycle\": \"four-stroke\", \"cylinders\": 24, \"idleRpm\": 500, \"maxRpm\": 3000},"
                        + " \"reduction\": {\"ratio\": 2.9999}, \"propeller\": {\"blades\": 12}}");
        for (String each : new String[] {file, fan, radial}) {
            CommandLineRun run = CommandLineRun.of("plan", "--installation", each, "--sample-rate", "416");
            assertThat(run.status()).as(run.err()).isZero();
            assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                    .as(line)
                    .isLessThanOrEqualTo(80));
        }
    }

    @Test
    void theHelpFitsEightyColumns() {
        CommandLineRun run = CommandLineRun.of("plan", "--help");
        assertThat(run.status()).isZero();
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void jsonIsOneDocumentWithTheSameNumbers() {
        CommandLineRun run = CommandLineRun.of(
                "plan",
                "--installation",
                file,
                "--engine-rpm",
                "5000",
                "--engine-rpm",
                "4000",
                "--sample-rate",
                "100",
                "--json");
        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        JsonObject json = JsonDocument.parse(run.out(), "standard output");
        assertThat(json.object("toothRepetition").whole("engineRevolutions", 1, 500))
                .isEqualTo(17);
        assertThat(json.objects("dwells")).hasSize(2);
        JsonObject bladePass = json.objects("dwells").get(0).objects("orders").get(2);
        assertThat(bladePass.text("name")).isEqualTo("blade pass");
        assertThat(bladePass.text("of")).isEqualTo("propeller");
        assertThat(bladePass.number("frequencyHz")).isEqualTo(102.9411764706, within(1e-9));
        assertThat(bladePass.flag("beyondRange")).isTrue();
        assertThat(bladePass.number("foldsToHz")).isEqualTo(2.9411764706, within(1e-9));
        assertThat(json.object("runCard").texts("cautions")).isNotEmpty();
    }

    @Test
    void anInstallationAtFaultIsOneLineOnStandardErrorAndStatusOne() throws IOException {
        String bad = written("bad.json", TRAINER.replace("\"cylinders\"", "\"cylindres\""));
        CommandLineRun run = CommandLineRun.of("plan", "--installation", bad, "--json");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .isEqualTo("evenblade: " + bad + ":2: unknown key \"cylindres\" in \"engine\","
                        + " expected \"cylinders\" (the nearest known key)\n");
    }

    @Test
    void aSpeedOutsideTheEnginesRangeIsAtFaultToo() {
        CommandLineRun run = CommandLineRun.of("plan", "--installation", file, "--engine-rpm", "9000");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err())
                .isEqualTo("evenblade: engine speed: 9000 rpm, expected an engine speed from 1600 (idle) to 5800 rpm"
                        + " (the stated maximum)\n");
    }

    @Test
    void wrongUsageIsToldWithTheNearestOption() {
        CommandLineRun misspelt = CommandLineRun.of("plan", "--instalation", file);
        assertThat(misspelt.status()).isEqualTo(2);
        assertThat(misspelt.out()).isEmpty();
        assertThat(misspelt.err())
                .isEqualTo("evenblade: unknown option '--instalation'; did you mean '--installation'?\n"
                        + "See 'evenblade plan --help'.\n");
        assertThat(CommandLineRun.of("plan").err())
                .isEqualTo("evenblade: missing: --installation FILE\nSee 'evenblade plan --help'.\n");
        assertThat(CommandLineRun.of("plan", "--installation", file, "--engine-rpm", "fast")
                        .err())
                .isEqualTo("evenblade: '--engine-rpm' takes a number, not 'fast'\nSee 'evenblade plan --help'.\n");
        assertThat(CommandLineRun.of("plan", "--installation", file, "extra").err())
                .isEqualTo("evenblade: 'extra' is one word too many for 'evenblade plan'\n"
                        + "See 'evenblade plan --help'.\n");
        assertThat(CommandLineRun.of("plam").err())
                .isEqualTo("evenblade: unknown command 'plam'; did you mean 'plan'?\nSee 'evenblade --help'.\n");
    }

    @Test
    void aPropellerOnTheCrankHasOneRowForEachPlaceInPlanAndOrders() {
        String installation = "samples/direct-two-blade/installation.json";
        String plan = CommandLineRun.of("plan", "--installation", installation).out();
        String orders = CommandLineRun.of("orders", "samples/direct-two-blade/run.wav", "--installation", installation)
                .out();

        for (String out : List.of(plan, orders)) {
            assertThat(out.lines()).anyMatch(line -> line.matches("blade pass = firing +[\\d.]+ .*"));
            assertThat(out.lines()).noneMatch(line -> line.matches("(crank 1×|firing|2× firing) .*"));
        }
    }
}
