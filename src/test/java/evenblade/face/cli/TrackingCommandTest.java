package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.keep.job.MemoryFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The static side of a job as the command line shows it; all readings here are invented. */
class TrackingCommandTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private String job;

    @BeforeEach
    void aJobWithALimitOnTrack() throws IOException {
        Path installation = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "name": "invented stand",
                  "engine": { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
                  "reduction": { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
                  "propeller": { "blades": 3, "diameter": "1.70 m" },
                  "limits": { "trackSpread": { "value": "1/8 in", "source": "invented sheet" } } }
                """);
        job = dir.resolve("job").toString();
        done("job", "new", job, "--installation", installation.toString());
    }

    private static CommandLineRun done(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return run;
    }

    private void marks(String at, String layout, String readings) {
        done("job", "tracking", job, "--at", at + "Z", "--layout", layout, "--readings", readings, "--sigma", "0.4 mm");
    }

    private JsonObject weighed() {
        return JsonDocument.parse(done("tracking", job, "--json").out(), "tracking");
    }

    private List<String> text() {
        return done("tracking", job).out().lines().toList();
    }

    @Test
    void theNextStepAtThePropellerComesWithTheCaution() {
        String written = CommandLineRun.of(
                        "job", "tracking", job, "--layout", "1=A,2=B,3=C", "--readings", "0 mm,1 mm,2 mm")
                .out()
                .replaceAll("\\s+", " ");
        assertThat(written).contains("ignition off").contains("treat it as live");
        String said = done("tracking", job).out().replaceAll("\\s+", " ");
        assertThat(said).contains("ignition off").contains("treat it as live").contains("as the makers allow");
    }

    @Test
    void oneSessionGivesSpreadAndLimitButCannotTellBladeFromPosition() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 in, 1/16 in, 3/16 in");
        JsonObject answer = weighed();
        JsonObject session = answer.objects("sessions").get(0);
        // 3/16 in = 4.7625 mm exactly, beyond the entered 1/8 in.
        assertThat(session.number("spreadMm")).isEqualTo(4.7625);
        assertThat(session.object("readingsMm").number("2")).isEqualTo(1.5875);
        assertThat(session.object("layout").text("3")).isEqualTo("C");
        assertThat(session.flag("withinLimit")).isFalse();
        assertThat(answer.flag("separable")).isFalse();
        assertThat(answer.object("verdict").text("kind")).isEqualTo("not-separable");
        assertThat(answer.object("blades").object("A").has("deviationMm")).isFalse();
        assertThat(answer.object("bestLayout").number("predictedSpreadMm")).isEqualTo(4.7625);
        assertThat(text())
                .anySatisfy(line -> assertThat(line).contains("BEYOND the limit of"))
                .anySatisfy(line -> assertThat(line).startsWith("to learn more"));
    }

    @Test
    void picturesOfTheTipsGoIntoTheRecordOnceAndTakeThePlaceOfThoseDrawnBefore() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 mm, 0.2 mm, 4.8 mm");
        String first = done("tracking", job, "--attach", job).out();
        assertThat(first).contains("tracking-tips-").doesNotContain("tracking-deviations-");
        assertThat(done("tracking", job, "--attach", job).out()).contains("the record has these pictures already");
        assertThat(attached()).hasSize(1);
        marks("2026-05-04T11:00:00", "1=C,2=A,3=B", "4.9 mm, 0.1 mm, 0.0 mm");
        Path plots = dir.resolve("plots");
        done("tracking", job, "--attach", job, "--plots", plots.toString());
        assertThat(attached()).hasSize(2);
        assertThat(plots.resolve("tracking-tips.png")).exists();
        assertThat(plots.resolve("tracking-deviations.svg")).exists();
    }

    /** What stands in the record, without what was crossed out. */
    private List<JsonObject> attached() {
        return JsonDocument.parse(done("job", "show", job, "--json").out(), "job").objects("events").stream()
                .filter(event -> event.text("kind").equals("attachment"))
                .filter(event -> !event.flag("struckOut"))
                .toList();
    }

    @Test
    void afterMovingTheBladesTheHighTipThatMovedAlongPointsToItsBlade() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 mm, 0.2 mm, 4.8 mm");
        marks("2026-05-04T11:00:00", "1=C,2=A,3=B", "4.9 mm, 0.1 mm, 0.0 mm");
        JsonObject answer = weighed();
        assertThat(answer.object("verdict").text("kind")).isEqualTo("blade");
        assertThat(answer.object("verdict").texts("names")).containsExactly("C");
        assertThat(answer.object("blades").object("C").number("deviationMm")).isBetween(2.5, 4.0);
        assertThat(answer.flag("separable")).isTrue();
        assertThat(String.join(" ", text())).contains("points to blade C");
    }

    @Test
    void aShimBetweenTwoSessionsStartsAfreshAndSaysSo() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 mm, 0.2 mm, 4.8 mm");
        marks("2026-05-04T11:00:00", "1=C,2=A,3=B", "4.9 mm, 0.1 mm, 0.0 mm");
        done("job", "correction", job, "--at", "2026-05-04T11:30:00Z", "Blade C shimmed");
        marks("2026-05-04T12:00:00", "1=C,2=A,3=B", "0.3 mm, 0.1 mm, 0.0 mm");
        JsonObject answer = weighed();
        assertThat(answer.objects("sessions")).hasSize(3);
        assertThat(answer.number("sessionsUsed")).isEqualTo(1);
        assertThat(answer.objects("earlier").get(0).object("verdict").texts("names"))
                .containsExactly("C");
        assertThat(String.join(" ", text())).contains("don't fit with that any more");
    }

    @Test
    void movingTheBladesAloneDoesNotStartAfresh() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 mm, 0.2 mm, 4.8 mm");
        done("job", "correction", job, "--at", "2026-05-04T10:30:00Z", "Blades moved on by one");
        marks("2026-05-04T11:00:00", "1=C,2=A,3=B", "4.9 mm, 0.1 mm, 0.0 mm");
        assertThat(weighed().number("sessionsUsed")).isEqualTo(2);
    }

    @Test
    void runOutIsCarriedToTheTipsAndHeldAgainstWhatStaysOnTheHub() {
        done("job", "runout", job, "--total", "0.25 mm", "--dial-radius", "50 mm", "--high", "0 deg");
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "3.2 mm, 0 mm, 0.1 mm");
        marks("2026-05-04T11:00:00", "1=C,2=A,3=B", "3.1 mm, 0.1 mm, 0 mm");
        JsonObject answer = weighed();
        // 0.25 mm × 850 mm / 50 mm.
        assertThat(answer.objects("runOuts").get(0).number("atTipMm")).isBetween(4.2499, 4.2501);
        assertThat(answer.object("runOutTest").text("answer")).isEqualTo("explains");
        assertThat(answer.object("verdict").text("kind")).isEqualTo("position");
    }

    @Test
    void aStruckOutSessionDoesNotCount() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "0 mm, 0 mm, 40 mm");
        marks("2026-05-04T10:10:00", "1=A,2=B,3=C", "0 mm, 0 mm, 4 mm");
        done("job", "strike", job, "e1");
        assertThat(weighed().objects("sessions")).hasSize(1);
    }

    @Test
    void everyLineFitsEightyColumnsWithSixBladesToo() throws IOException {
        Path six = Files.writeString(
                dir.resolve("six.json"),
                """
                { "engine": { "cycle": "electric", "maxRpm": 2400 }, "reduction": { "kind": "direct" },
                  "propeller": { "blades": 6, "diameter": "72 in" } }
                """);
        String other = dir.resolve("six").toString();
        done("job", "new", other, "--installation", six.toString());
        done(
                "job",
                "tracking",
                other,
                "--layout",
                "1=A,2=B,3=C,4=D,5=E,6=F",
                "--readings",
                "10 mm,11.5 mm,12 mm,9 mm,10 mm,11 mm");
        done(
                "job",
                "pitch",
                other,
                "--layout",
                "1=A,2=B,3=C,4=D,5=E,6=F",
                "--readings",
                "17 deg,17.1 deg,17.2 deg,17 deg,17 deg,18 deg");
        List<String> lines =
                new ArrayList<>(done("tracking", other).out().lines().toList());
        assertThat(lines).allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                .isLessThanOrEqualTo(80));
        assertThat(lines).anySatisfy(line -> assertThat(line).contains("Blade angles"));
    }

    private void refused(String expected, String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).singleElement().satisfies(line -> assertThat(line)
                .startsWith("evenblade: ")
                .contains(expected)
                .contains("expected"));
    }

    @Test
    void readingsThatCannotBeAreRefusedInOneLineEach() {
        String three = "1=A,2=B,3=C";
        refused(
                "blade A on two hub positions",
                "job",
                "tracking",
                job,
                "--layout",
                "1=A,2=A,3=C",
                "--readings",
                "0 in");
        refused("no blade on hub position 2", "job", "tracking", job, "--layout", "1=A,3=C", "--readings", "0 in");
        refused("4 blades", "job", "tracking", job, "--layout", "1=A,2=B,3=C,4=D", "--readings", "0 in,0 in,0 in,0 in");
        refused("without a unit", "job", "tracking", job, "--layout", three, "--readings", "0,1,2");
        refused("unit of the first", "job", "tracking", job, "--layout", three, "--readings", "0 in,1 mm,2 mm");
        refused("0 below the line", "job", "tracking", job, "--layout", three, "--readings", "0 in,3/0 in,2 in");
        refused("comma in a decimal", "job", "tracking", job, "--layout", three, "--readings", "0,5 mm,1 mm,2 mm");
        // Half the diameter of 1.70 m.
        refused("850 mm", "job", "tracking", job, "--layout", three, "--readings", "0 mm,1 mm,4500 mm");
        refused("850 mm", "job", "runout", job, "--total", "0.05 mm", "--dial-radius", "2 m");
        refused("at most 90 deg", "job", "pitch", job, "--layout", three, "--readings", "17 deg,17 deg,170 deg");
        refused("no tip marks", "tracking", job);
    }

    @Test
    void mixedNumbersRepeatsAndMarksBelowZeroAreRead() {
        marks("2026-05-04T10:00:00", "1=A,2=B,3=C", "-1/16 in, 1 3/16 in, 0 in; -1/16 in, 1 3/16 in, 1/8 in");
        JsonObject session = weighed().objects("sessions").get(0);
        // 1 in = 25.4 mm by definition; the third is the mean of 0 and 1/8 in.
        assertThat(session.object("readingsMm").number("1")).isEqualTo(-1.5875);
        assertThat(session.object("readingsMm").number("2")).isCloseTo(30.1625, within(1e-9));
        assertThat(session.object("readingsMm").number("3")).isEqualTo(1.5875);
        assertThat(session.number("spreadMm")).isCloseTo(31.75, within(1e-9));
    }

    @Test
    void aJobWithoutTipMarksIsRefusedInOneLine() {
        CommandLineRun run = CommandLineRun.of("tracking", job);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("no tip marks").contains("job tracking");
        assertThat(run.out()).isEmpty();
    }
}
