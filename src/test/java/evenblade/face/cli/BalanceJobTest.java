package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An invented job balanced through the commands. Its blade B, at hub position 2, is 3 g heavy at 340 mm: 1020 g·mm, which
 * is 17 g at 60 mm on the other side, 60° against the rotation; small differences of a sound propeller come on top.
 */
class BalanceJobTest {
    private static final double TRUE_MASS_G = 17;
    private static final double TRUE_ANGLE_DEG = 60;

    @TempDir
    Path folder;

    @Test
    void aMarkedJobIsBalancedToTheEnd() {
        String job = folder.resolve("job").toString();
        done("practice", job, "--to-balance", "--seed", "3");
        assertThat(codes(job)).contains("sense-not-confirmed", "no-trial");
        done("job", "weight", job, "--angles", "against-rotation");
        assertThat(codes(job)).containsExactly("no-trial");
        weigh(job, "10 g", "0 deg", "trial");
        done("practice", job, "--next-run", "--label", "trial");
        JsonObject first = answer(job);
        assertThat(first.texts("reasonCodes")).isEmpty();
        assertThat(first.text("method")).isEqualTo("with-phase");
        holdsTheTruth(first.object("correction"));

        done("job", "weight", job, "--off", "trial");
        weigh(job, "16 g", "60 deg", "hole 2");
        done("practice", job, "--next-run", "--label", "check");
        JsonObject last = answer(job);
        holdsTheTruth(last.object("correction"));
        List<JsonObject> runs = last.objects("runs");
        assertThat(runs).hasSize(3);
        double before = runs.get(0).number("amplitude", 0, 100);
        assertThat(runs.get(2).number("amplitude", 0, 100)).isLessThan(0.3 * before);
        assertThat(last.objects("checkRuns")).singleElement().satisfies(check -> assertThat(
                        check.object("predicted").number("ciHigh", 0, 100))
                .isLessThan(0.5 * before));
        String text = CommandLineRun.of("balance", job).out();
        assertThat(text).contains("Check run 'check'").contains("It fits.").contains("A licensed person signs for it.");
    }

    @Test
    void aWeightThatIsNotOnTheHubCannotBeTakenOff() {
        String job = folder.resolve("job").toString();
        done("practice", job, "--to-balance", "--seed", "3");
        CommandLineRun run = CommandLineRun.of("job", "weight", job, "--off", "trial");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("weight 'trial'").contains("no weight is on the hub");
        CommandLineRun far =
                CommandLineRun.of("job", "weight", job, "--mass", "10 g", "--radius", "60 in", "--angle", "0 deg");
        assertThat(far.status()).isEqualTo(1);
        assertThat(far.err()).contains("radius: 60 in").contains("the propeller's radius");
        CommandLineRun half = CommandLineRun.of("job", "weight", job, "--mass", "10 g");
        assertThat(half.status()).isEqualTo(2);
        assertThat(half.err()).contains("--radius");
    }

    @Test
    void aChangeBetweenTheRunsIsRefusedUntilTheRunWithoutWeightsIsMadeAgain() {
        String job = folder.resolve("job").toString();
        done("practice", job, "--to-balance", "--seed", "3");
        weigh(job, "10 g", "0 deg", "trial");
        done("job", "weight", job, "--angles", "against-rotation");
        done("job", "correction", job, "mount", "rubbers", "changed");
        done("practice", job, "--next-run", "--label", "trial");
        assertThat(codes(job)).containsExactly("changed-between");
        done("job", "weight", job, "--off", "trial");
        done("practice", job, "--next-run", "--label", "again without");
        assertThat(codes(job)).isEmpty();
        assertThat(answer(job).objects("runs")).hasSize(2);
    }

    @Test
    void trackBeyondItsLimitComesFirst() {
        String job = folder.resolve("job").toString();
        done("practice", job, "--to-balance", "--seed", "3");
        done("job", "weight", job, "--angles", "against-rotation");
        String layout = "1=A,2=B,3=C";
        done("job", "tracking", job, "--layout", layout, "--readings", "0 mm,6 mm,0 mm", "--sigma", "0.4 mm");
        assertThat(codes(job)).containsExactly("beyond-limit-first", "no-trial");
        done("job", "tracking", job, "--layout", layout, "--readings", "0 mm,1 mm,0 mm", "--sigma", "0.4 mm");
        assertThat(codes(job)).containsExactly("no-trial");
    }

    @Test
    void halfOrdersOfALooseMountAreSeen() {
        String job = folder.resolve("job").toString();
        done("practice", job, "--to-balance", "--seed", "3", "--fault", "loose-mount");
        assertThat(codes(job)).contains("loose-mount");
    }

    @Test
    void anotherSensorPlaceDirectionOrGainIsNamed() {
        String shop = folder.resolve("shop").toString();
        done("practice", shop, "--to-balance", "--seed", "3");
        done("practice", shop, "--next-run");
        List<String> recordings = files(folder.resolve("shop/recordings"));
        Path installation = folder.resolve("installation.json");
        write(installation, JsonDocument.parse(done("job", "show", shop, "--json"), "job"));
        String job = folder.resolve("job").toString();
        done("job", "new", job, "--installation", installation.toString());
        done("job", "add", job, recordings.get(0), "--mark-channel", "4", "--full-scale", "50 m/s2", "--place", "top");
        done("job", "add", job, recordings.get(1), "--mark-channel", "4", "--full-scale", "25 m/s2", "--place", "left");
        JsonObject answer = answer(job);
        assertThat(answer.texts("reasonCodes"))
                .containsExactly("sense-not-confirmed", "sensor-changed", "sensor-changed", "no-trial");
    }

    @Test
    @Tag("long")
    void aJobWithoutAMarkIsBalancedByThreeTrialsInEitherSenseOfCounting() {
        for (String sense : List.of("with-rotation", "against-rotation")) {
            String job = folder.resolve(sense).toString();
            done("practice", job, "--to-balance", "--without-mark", "--seed", "5");
            done("job", "weight", job, "--angles", sense);
            for (String angle : List.of("0", "120", "240")) {
                weigh(job, "10 g", angle + " deg", "trial " + angle);
                done("practice", job, "--next-run", "--label", "trial at " + angle);
                done("job", "weight", job, "--off", "trial " + angle);
            }
            JsonObject answer = answer(job);
            assertThat(answer.text("method")).isEqualTo("without-phase");
            holdsTheTruth(answer.object("correction"));
            boolean with = sense.equals("with-rotation");
            assertThat(answer.number("angleAsCountedDeg", 0, 360)).isBetween(with ? 285.0 : 45.0, with ? 315.0 : 75.0);
        }
    }

    /** Interval of the mass, and the angle within a quarter of the way to the next hole. */
    private static void holdsTheTruth(JsonObject correction) {
        assertThat(TRUE_MASS_G).isBetween(correction.number("ciLowG", 0, 1000), correction.number("ciHighG", 0, 1000));
        assertThat(correction.number("angleDeg", 0, 360)).isBetween(TRUE_ANGLE_DEG - 15, TRUE_ANGLE_DEG + 15);
    }

    private static void weigh(String job, String mass, String angle, String label) {
        done("job", "weight", job, "--mass", mass, "--radius", "60 mm", "--angle", angle, "--label", label);
    }

    private static List<String> files(Path in) {
        try (Stream<Path> all = Files.list(in)) {
            return all.map(Path::toString).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void write(Path file, JsonObject job) {
        try {
            new ObjectMapper().writeValue(file.toFile(), job.plain().get("installation"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> codes(String job) {
        return answer(job).texts("reasonCodes");
    }

    private static JsonObject answer(String job) {
        return JsonDocument.parse(done("balance", job, "--json"), "balance");
    }

    private static String done(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.err())
                .as(String.join(" ", new ArrayList<>(List.of(words))))
                .isEmpty();
        assertThat(run.status()).isZero();
        return run.out();
    }
}
