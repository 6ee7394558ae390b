package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BalanceCommandTest {
    // Inputs: Vaughan, "Static and Dynamic Balancing", application note BO 0276 (read in a restatement).
    private static final String ONE_TRIAL =
            """
            { "readings": [
                { "amplitude": 3.4, "phaseDeg": 116, "standardError": 0.05, "weights": [] },
                { "amplitude": 1.8, "phaseDeg": 42, "standardError": 0.05,
                  "weights": [ { "massG": 2, "radiusMm": 60, "angleDeg": 0 } ] } ],
              "places": [ { "name": "1", "angleDeg": 300, "radiusMm": 60 },
                          { "name": "2", "angleDeg": 0, "radiusMm": 60 } ],
              "largestMassG": 30 }
            """;

    @TempDir
    Path folder;

    private CommandLineRun balance(String document, String... more) throws IOException {
        Path file = folder.resolve("readings.json");
        Files.writeString(file, document);
        String[] words = new String[3 + more.length];
        words[0] = "balance";
        words[1] = "--from";
        words[2] = file.toString();
        System.arraycopy(more, 0, words, 3, more.length);
        return CommandLineRun.of(words);
    }

    @Test
    void typedReadingsAreAnsweredAsJson() throws IOException {
        CommandLineRun run = balance(ONE_TRIAL, "--json");

        assertThat(run.status()).isZero();
        JsonObject answer = JsonDocument.parse(run.out(), "answer");
        assertThat(answer.text("method")).isEqualTo("with-phase");
        assertThat(answer.flag("refused")).isFalse();
        assertThat(answer.texts("reasons")).isEmpty();
        JsonObject correction = answer.object("correction");
        assertThat(correction.number("massG")).isCloseTo(2.01168, within(5e-6));
        assertThat(correction.number("angleDeg")).isCloseTo(329.2112, within(5e-5));
        assertThat(correction.number("ciLowG")).isLessThan(2).isGreaterThan(1);
        assertThat(correction.number("ciHighG")).isGreaterThan(2.02).isLessThan(3);
        assertThat(answer.objects("split")).extracting(s -> s.text("place")).containsExactly("1", "2");
        // Split formula: 2.01168·sin 30.79°/sin 60° and 2.01168·sin 29.21°/sin 60°.
        assertThat(answer.objects("split").get(0).number("massG")).isCloseTo(1.1890, within(5e-4));
        assertThat(answer.objects("split").get(1).number("massG")).isCloseTo(1.1336, within(5e-4));
        assertThat(answer.number("leftGmm")).isCloseTo(0, within(1e-9));
        JsonObject residual = answer.object("predictedResidual");
        assertThat(residual.number("ciLow")).isLessThan(residual.number("amplitude"));
        assertThat(residual.number("ciHigh"))
                .isGreaterThan(residual.number("amplitude"))
                .isLessThan(3.4);
        assertThat(answer.has("closure")).isFalse();
    }

    @Test
    void aRefusalIsAnAnswerToo() throws IOException {
        String lost =
                ONE_TRIAL.replace("\"amplitude\": 1.8, \"phaseDeg\": 42", "\"amplitude\": 3.5, \"phaseDeg\": 115");
        CommandLineRun run = balance(lost, "--json");

        assertThat(run.status()).isZero();
        JsonObject answer = JsonDocument.parse(run.out(), "answer");
        assertThat(answer.flag("refused")).isTrue();
        assertThat(answer.texts("reasonCodes")).containsExactly("trial-too-light");
        assertThat(answer.texts("reasons")).hasSize(1);
        assertThat(answer.has("correction")).isFalse();
        assertThat(balance(lost).out()).contains("NO CORRECTION IS GIVEN:").contains("lost in the scatter");
    }

    @Test
    void theTextNamesWeightIntervalPlacesAndCautions() throws IOException {
        CommandLineRun run = balance(ONE_TRIAL);

        assertThat(run.status()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("With all trial weights off, put on 2.01 g at 60 mm, at 329.2°.")
                .contains("Left over: 0 g·mm.")
                .contains("ignition off")
                .contains("maker");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                .isLessThanOrEqualTo(LineWrapper.WIDTH));
    }

    @Test
    void faultyFilesAreRefusedWithTheirLine() throws IOException {
        CommandLineRun key = balance(ONE_TRIAL.replace("\"phaseDeg\": 42", "\"phaseDegrees\": 42"));
        assertThat(key.status()).isEqualTo(1);
        assertThat(key.err())
                .contains("readings.json:3: unknown key \"phaseDegrees\" in \"readings[1]\"")
                .contains("\"phaseDeg\"");

        CommandLineRun first = balance(ONE_TRIAL.replace(
                "\"weights\": [] }", "\"weights\": [ { \"massG\": 2, \"radiusMm\": 60, \"angleDeg\": 5 } ] }"));
        assertThat(first.status()).isEqualTo(1);
        assertThat(first.err()).contains("readings.json:2:").contains("no weights in the first reading");

        CommandLineRun negative = balance(ONE_TRIAL.replace("\"massG\": 2,", "\"massG\": -2,"));
        assertThat(negative.status()).isEqualTo(1);
        assertThat(negative.err()).contains("readings.json:4:").contains("massG");

        CommandLineRun few = balance("{ \"readings\": [ { \"amplitude\": 1 } ] }");
        assertThat(few.status()).isEqualTo(1);
        assertThat(few.err()).contains("one reading");
        assertThat(CommandLineRun.of("balance").status()).isEqualTo(2);
    }

    /** 5, 9 and 4 g at 60 mm: friction is their mean, 360 g·mm; the first harmonic (−60, 173.2) g·mm, 183.3 at 109.1°. */
    @Test
    void testMassesOnKnifeEdgesPartFrictionFromUnbalance() throws IOException {
        String bench =
                """
                { "bench": [ { "massG": 5, "radiusMm": 60, "angleDeg": 0 }, { "massG": 9, "radiusMm": 60, "angleDeg": 120 },
                             { "massG": 4, "radiusMm": 60, "angleDeg": 240 } ], "stepGmm": 30 }
                """;
        JsonObject answer = JsonDocument.parse(balance(bench, "--json").out(), "balance");
        assertThat(answer.number("frictionGmm")).isCloseTo(360, within(1e-6));
        assertThat(answer.number("gmm")).isCloseTo(183.303, within(1e-3));
        assertThat(answer.number("angleDeg")).isCloseTo(109.107, within(1e-3));
        assertThat(balance(bench).out())
                .contains("Below friction")
                .contains("183 g·mm")
                .contains("at 109°");
    }

    /** Three alike but for 900 g·mm on B: every layout leaves 900 g·mm, on the blade that is heavy. */
    @Test
    void weighedBladesGiveTheLayoutsWithWhatTheyLeave() throws IOException {
        String scale =
                """
                { "blades": [ { "name": "A", "momentsGmm": [408000] }, { "name": "B", "momentsGmm": [408900] },
                              { "name": "C", "momentsGmm": [408000] } ], "errorGmm": 40 }
                """;
        CommandLineRun run = balance(scale);
        assertThat(run.out())
                .contains("As they sit now: 900 g·mm at 120°. No layout is clearly better")
                .contains("a bent blade move together");
    }
}
