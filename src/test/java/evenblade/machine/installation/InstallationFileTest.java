package evenblade.machine.installation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonWriter;
import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InstallationFileTest {
    private static final String WHOLE =
            """
            { "name": "Invented trainer",
              "engine":     { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
              "reduction":  { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
              "propeller":  { "blades": 3, "diameter": "1.70 m", "rotation": "clockwise",
                              "bladeMass": "2.1 kg", "centreOfGravity": "0.35 m", "chord": "4 in", "positionsCounted": "against-rotation" },
              "limits":     { "trackSpread": { "value": "1/8 in", "source": "maker's sheet" },
                              "pitchSpread": { "value": "0.2 deg", "source": "maker's sheet" },
                              "faceRunOut":  { "value": "0.05 mm", "source": "shop rule" } }
            }
            """;

    private static final String LEAST =
            """
            { "engine": { "cycle": "two-stroke", "cylinders": 2 },
              "reduction": { "ratio": 2.58 },
              "propeller": { "blades": 3 } }
            """;

    private static Installation of(String text) {
        return InstallationFile.of(JsonDocument.parse(text, "trainer.json"));
    }

    private static String refusal(String text) {
        return org.assertj.core.api.Assertions.catchThrowableOfType(BadInput.class, () -> of(text))
                .getMessage();
    }

    @Test
    void everyKeyIsRead() {
        Installation installation = of(WHOLE);
        assertThat(installation.name()).contains("Invented trainer");
        assertThat(installation.engine().firingOrder()).isEqualTo(2);
        assertThat(installation.engine().maxRpm()).hasValue(5800);
        assertThat(installation.reduction().kind()).isEqualTo(Reduction.Kind.GEAR);
        assertThat(installation.propeller().diameter().orElseThrow().metres()).isEqualTo(1.7);
        assertThat(installation.propeller().rotation()).contains(Installation.Rotation.CLOCKWISE);
        assertThat(installation.propeller().bladeMass().orElseThrow().kilograms())
                .isEqualTo(2.1);
        assertThat(installation.propeller().chord().orElseThrow().millimetres()).isEqualTo(101.6);
        assertThat(installation.hubCounting()).isEqualTo(HubCounting.AGAINST_ROTATION);
        assertThat(of(LEAST).hubCounting()).isEqualTo(HubCounting.WITH_ROTATION);
        assertThat(installation.limits())
                .extracting(
                        Limit::what, Limit::statistic, limit -> limit.value().text(), Limit::source)
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(
                                Limit.Subject.TRACK, Limit.Statistic.SPREAD, "3.175 mm", "maker's sheet"),
                        org.assertj.core.groups.Tuple.tuple(
                                Limit.Subject.FACE_RUN_OUT, Limit.Statistic.SPREAD, "0.05 mm", "shop rule"));
        assertThat(installation.pitchLimits()).singleElement().satisfies(limit -> {
            assertThat(limit.statistic()).isEqualTo(Limit.Statistic.SPREAD);
            assertThat(limit.value().degrees()).isEqualTo(0.2);
        });
    }

    @Test
    void teethAreKeptAndGiveTheExactRatio() {
        Reduction reduction = of(WHOLE).reduction();
        assertThat(reduction.teeth()).contains(new Reduction.Teeth(21, 51));
        assertThat(reduction.ratio()).isEqualTo(51.0 / 21.0);
    }

    @Test
    void engineReductionAndBladesAreEnough() {
        Installation installation = of(LEAST);
        assertThat(installation.name()).isEmpty();
        assertThat(installation.engine().maxRpm()).isEmpty();
        assertThat(installation.reduction().kind()).isEqualTo(Reduction.Kind.UNSTATED);
        assertThat(installation.limits()).isEmpty();
    }

    @Test
    void anElectricMotorNeedsNoCylindersAndNeverFires() {
        Installation installation = of(LEAST.replace("\"two-stroke\", \"cylinders\": 2", "\"electric\"")
                .replace("\"ratio\": 2.58", "\"kind\": \"direct\""));
        assertThat(installation.engine().firingOrder()).isZero();
        assertThat(installation.reduction().ratio()).isEqualTo(1);
    }

    @Test
    void whatIsWrittenReadsBackTheSame() {
        for (String text : new String[] {WHOLE, LEAST}) {
            Installation installation = of(text);
            assertThat(of(JsonWriter.write(InstallationFile.written(installation))))
                    .isEqualTo(installation);
        }
    }

    @Test
    void anUnknownKeyIsRefusedWithTheNearestKnownOne() {
        assertThat(refusal(WHOLE.replace("\"cylinders\"", "\"cylindres\"")))
                .isEqualTo("trainer.json:2: unknown key \"cylindres\" in \"engine\","
                        + " expected \"cylinders\" (the nearest known key)");
        assertThat(refusal(WHOLE.replace("\"limits\"", "\"limit\"")))
                .isEqualTo("trainer.json:6: unknown key \"limit\", expected \"limits\" (the nearest known key)");
    }

    @Test
    void aLimitWithoutStatisticIsRefused() {
        assertThat(refusal(WHOLE.replace("\"trackSpread\"", "\"track\"")))
                .isEqualTo("trainer.json:6: the limit \"track\" without its statistic, expected one of "
                        + "trackSpread, trackAboutMiddle, trackAboutMean, trackOppositeBlade");
    }

    @Test
    void aLimitWithoutSourceIsRefused() {
        assertThat(refusal(
                        WHOLE.replace("\"value\": \"1/8 in\", \"source\": \"maker's sheet\"", "\"value\": \"1/8 in\"")))
                .isEqualTo("trainer.json:6: no key \"source\" in \"limits.trackSpread\", expected a text");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "\"blades\": 3 | \"blades\": 13 | :3: \"propeller.blades\" is the number 13, expected a whole number from 2 to 12",
                "\"blades\": 3 | \"blades\": 1 | :3: \"propeller.blades\" is the number 1, expected a whole number from 2 to 12",
                "\"blades\": 3 | \"blades\": 2.5 | :3: \"propeller.blades\" is the number 2.5, expected a whole number from 2 to 12",
                "\"blades\": 3 | \"blades\": \"three\" | :3: \"propeller.blades\" is the text \"three\", expected a whole number from 2 to 12",
                "\"cylinders\": 2 | \"cylinders\": 25 | :1: \"engine.cylinders\" is the number 25, expected a whole number from 1 to 24",
                "\"cylinders\": 2 | \"maxRpm\": 5800 | :1: no key \"cylinders\" in \"engine\", expected a whole number from 1 to 24",
                "\"cylinders\": 2 | \"cylinders\": 2, \"idleRpm\": -5 | :1: \"engine.idleRpm\" is the number -5, expected a number from 10 to 100000",
                "\"cylinders\": 2 | \"cylinders\": 2, \"idleRpm\": 900, \"maxRpm\": 800 | :1: \"engine.idleRpm\" is the number 900, expected less than the highest rpm, \"maxRpm\"",
                "\"two-stroke\" | \"2-stroke\" | :1: \"engine.cycle\" is the text \"2-stroke\", expected \"two-stroke\", \"four-stroke\" or \"electric\"",
                "\"ratio\": 2.58 | \"ratio\": 0.1 | :2: \"reduction.ratio\" is the number 0.1, expected a number from 0.2 to 10",
                "\"ratio\": 2.58 | \"kind\": \"gear\" | :2: \"reduction\" gives no ratio, expected \"ratio\", or \"drivingTeeth\" and \"drivenTeeth\", or \"kind\": \"direct\"",
                "\"ratio\": 2.58 | \"ratio\": 2.58, \"kind\": \"direct\" | :2: \"reduction.ratio\" is the number 2.58, expected 1, for the drive is direct",
                "\"ratio\": 2.58 | \"drivingTeeth\": 21 | :2: no key \"drivenTeeth\" in \"reduction\", expected a whole number from 5 to 500",
                "\"ratio\": 2.58 | \"ratio\": 2.58, \"drivingTeeth\": 21, \"drivenTeeth\": 51 | :2: \"reduction.ratio\" is the number 2.58, expected 2.428571, the ratio of 51 to 21 teeth",
                "\"ratio\": 2.58 | \"drivingTeeth\": 20, \"drivenTeeth\": 300 | :2: a ratio of 15.000000, the ratio of 300 to 20 teeth, expected a ratio from 0.2 to 10",
                "\"blades\": 3 | \"blades\": 3, \"diameter\": \"1.70\" | :3: \"1.70\" without a unit, expected a length such as \"3/16 in\"",
                "\"blades\": 3 | \"blades\": 3, \"diameter\": 1.70 | :3: \"propeller.diameter\" is the number 1.70, expected a text in quotes",
                "\"blades\": 3 | \"blades\": 3, \"diameter\": \"-1.7 m\" | :3: \"-1.7 m\", expected a length above zero",
                "\"blades\": 3 | \"blades\": 3, \"diameter\": \"1.7 m\", \"centreOfGravity\": \"0.9 m\" | :3: \"propeller.centreOfGravity\" is the text \"0.9 m\", expected less than half of \"propeller.diameter\"",
            })
    void whatCannotBeIsRefusedInOneLineThatNamesIt(String good, String bad, String complaint) {
        assertThat(LEAST).contains(good);
        assertThat(refusal(LEAST.replace(good, bad))).isEqualTo("trainer.json" + complaint);
    }

    @Test
    void aRatioThatIsTheTeethRoundedMayStandBesideThem() {
        // 2.43 in place of 51/21 is 0.059 % off (computed): the teeth rule
        Installation installation =
                of(LEAST.replace("\"ratio\": 2.58", "\"ratio\": 2.43, \"drivingTeeth\": 21, \"drivenTeeth\": 51"));
        assertThat(installation.reduction().ratio()).isEqualTo(51.0 / 21.0);
    }

    @Test
    void aMissingFileAndAFolderAreNamed(@TempDir Path folder) throws IOException {
        Path missing = folder.resolve("none.json");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> InstallationFile.read(missing))
                .withMessage(missing + ": no such file, expected a JSON file");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> InstallationFile.read(folder))
                .withMessage(folder + ": a folder, expected a JSON file");
        Path empty = Files.writeString(folder.resolve("empty.json"), "");
        assertThatExceptionOfType(BadInput.class)
                .isThrownBy(() -> InstallationFile.read(empty))
                .withMessage(empty + ": an empty file, expected a JSON document");
    }
}
