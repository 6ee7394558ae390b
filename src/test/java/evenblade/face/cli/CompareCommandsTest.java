package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.face.PhoneTable;
import evenblade.keep.job.MemoryFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Before and after, and the trend, as the command line shows them; all jobs here are invented. */
class CompareCommandsTest {
    @TempDir(factory = MemoryFolder.class)
    static Path dir;

    private static Path made;

    @TempDir(factory = MemoryFolder.class)
    Path own;

    private Path job;

    @BeforeAll
    static void aJobWithTwoRunsAndARepeat() throws IOException {
        Path installation = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "engine": { "cycle": "two-stroke", "cylinders": 2, "idleRpm": 2000, "maxRpm": 6500 },
                  "reduction": { "ratio": 2.43 }, "propeller": { "blades": 3 } }
                """);
        made = dir.resolve("job");
        done("job", "new", made.toString(), "--installation", installation.toString());
        add(made, "as found", 4800, 0.6, 1, "2026-05-01T09:00:00Z", "gearbox top");
        add(made, "as found again", 4805, 0.6, 2, "2026-05-01T10:00:00Z", "gearbox top");
        done(
                "job",
                "correction",
                made.toString(),
                "flange cleaned, blades put back where they were",
                "--at",
                "2026-05-02T09:00:00Z");
        add(made, "cleaned", 4795, 0.3, 3, "2026-05-03T09:00:00Z", "gearbox top");
        done("trend", made.toString());
    }

    /** The job with its kept results, for each test to do with what it likes. */
    @BeforeEach
    void aCopy() throws IOException {
        job = own.resolve("job");
        try (Stream<Path> all = Files.walk(made)) {
            for (Path from : all.toList()) {
                Files.copy(from, job.resolve(made.relativize(from)), StandardCopyOption.COPY_ATTRIBUTES);
            }
        }
    }

    private static void add(Path job, String label, double engineRpm, double once, long seed, String at, String place)
            throws IOException {
        Path file = table(label, engineRpm, once, seed);
        done(
                "job",
                "add",
                job.toString(),
                file.toString(),
                "--label",
                label,
                "--at",
                at,
                "--place",
                place,
                "--engine-rpm",
                String.valueOf((int) engineRpm));
    }

    private static Path table(String name, double engineRpm, double once, long seed) throws IOException {
        return PhoneTable.write(dir.resolve(name + ".csv"), engineRpm, once, seed);
    }

    private static CommandLineRun done(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return run;
    }

    private CommandLineRun compare(String... more) {
        List<String> words = new ArrayList<>(List.of("compare", job.toString()));
        words.addAll(List.of(more));
        return CommandLineRun.of(words.toArray(String[]::new));
    }

    private static JsonObject once(JsonObject document) {
        return document.objects("pairs").get(0).objects("orders").stream()
                .filter(o -> o.text("name").equals("propeller 1×"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theComparisonEndsWithTheCaution() {
        String said = compare("as found", "cleaned").out().replaceAll("\\s+", " ");
        assertThat(said).contains("ignition off").contains("treat it as live");
    }

    @Test
    void aHalvedOnceIsToldInWordsThatFitTheTerminal() {
        String out = compare("as found", "cleaned").out();
        assertThat(out)
                .contains("changed  flange cleaned, blades put back where they were")
                .containsPattern("propeller 1× +0\\.60\\d* +0\\.30\\d* +−(49|50|51) % \\(")
                .containsPattern("blade pass +1\\.0\\d* +1\\.0\\d* ")
                .doesNotContain("do one run twice");
        assertThat(out.lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 80);
    }

    @Test
    void theJsonFormHoldsWhatOthersRelyOn() {
        JsonObject json =
                JsonDocument.parse(compare("as found", "cleaned", "--json").out(), "compare");
        assertThat(json.flag("comparable")).isTrue();
        assertThat(json.objects("reasons")).isEmpty();
        assertThat(json.objects("pairs").get(0).number("engineRpm")).isCloseTo(4800, within(2.0));
        JsonObject once = once(json);
        assertThat(once.text("of")).isEqualTo("propeller");
        assertThat(once.number("order")).isEqualTo(1);
        assertThat(once.number("before")).isCloseTo(0.6, within(0.01));
        assertThat(once.number("after")).isCloseTo(0.3, within(0.01));
        assertThat(once.number("changePercent")).isCloseTo(-50, within(2.0));
        assertThat(once.number("ciLowPercent")).isLessThan(once.number("changePercent"));
        assertThat(once.number("ciHighPercent")).isGreaterThan(once.number("changePercent"));
        assertThat(once.text("verdict")).isEqualTo("lower");
    }

    @Test
    void aRepeatShowsNoChange() {
        JsonObject json = JsonDocument.parse(compare("e1", "e2", "--json").out(), "compare");
        assertThat(json.objects("pairs").get(0).objects("orders"))
                .extracting(o -> o.text("verdict"))
                .containsOnly("no-change-shown");
        assertThat(json.whole("repeatRuns", 0, 9)).isEqualTo(1);
    }

    @Test
    void theCacheGivesTheSameAnswerAndMayBeDeletedOrDamaged() throws IOException {
        String kept = compare("as found", "cleaned", "--json").out();
        // Three runs: the answer of each and its picture for the report.
        assertThat(cache()).hasSize(6);
        for (Path file : cache()) {
            Files.writeString(file, "not a result");
        }
        assertThat(compare("as found", "cleaned", "--json").out()).isEqualTo(kept);
        for (Path file : cache()) {
            Files.delete(file);
        }
        assertThat(compare("as found", "cleaned", "--json").out()).isEqualTo(kept);
    }

    private List<Path> cache() throws IOException {
        try (Stream<Path> kept = Files.list(job.resolve("cache"))) {
            return kept.toList();
        }
    }

    @Test
    void picturesOfTwoRunsAndOfAllRunsAreWrittenOnDemand() throws IOException {
        Path plots = dir.resolve("pictures of the job");
        CommandLineRun two = compare("as found", "cleaned", "--plots", plots.toString());
        assertThat(two.err()).isEmpty();
        CommandLineRun all = CommandLineRun.of("trend", job.toString(), "--plots", plots.toString(), "--json");
        assertThat(all.status()).isZero();
        assertThat(all.err().lines()).allMatch(line -> line.startsWith("wrote "));
        try (Stream<Path> drawn = Files.list(plots)) {
            assertThat(drawn.map(file -> file.getFileName().toString()))
                    .contains(
                            "compare-e1-e4-orders.png",
                            "compare-e1-e4-spectra.png",
                            "compare-e1-e4-turn.svg",
                            "trend-runs-1.png");
        }
    }

    @Test
    void aSensorThatMovedIsRefusedWithBothPlaces() throws IOException {
        add(job, "elsewhere", 4800, 0.3, 4, "2026-05-04T09:00:00Z", "seat rail");
        CommandLineRun run = compare("as found", "elsewhere");
        assertThat(run.status()).isZero();
        assertThat(run.out()).contains("NOT COMPARED", "'gearbox top' in 'as found'", "'seat rail' in 'elsewhere'");
        JsonObject json =
                JsonDocument.parse(compare("as found", "elsewhere", "--json").out(), "compare");
        assertThat(json.flag("comparable")).isFalse();
        assertThat(json.objects("reasons")).extracting(r -> r.text("code")).containsExactly("place-differs");
        assertThat(json.objects("pairs")).isEmpty();
    }

    @Test
    void whatWasOnlyNotedWronglyIsPutRightByTheLineThatIsGivenToType() throws IOException {
        add(job, "elsewhere", 4800, 0.3, 4, "2026-05-04T09:00:00Z", "seat rail");
        String refused = compare("as found", "elsewhere").out();
        assertThat(refused).contains("job amend " + job + " e5 --place \"gearbox top\"\n");
        done("job", "amend", job.toString(), "e5", "--place", "gearbox top");
        assertThat(compare("as found", "elsewhere").out()).doesNotContain("NOT COMPARED");
    }

    @Test
    void repeatsThatDifferFivefoldAreAskedAboutUntilItIsAnsweredAndAgainWhenTheAnswerIsStruckOut() throws IOException {
        add(job, "cleaned again", 4800, 1.5, 4, "2026-05-04T09:00:00Z", "gearbox top");
        String question = "something changed between 'cleaned' and 'cleaned again'";
        String answer = "job amend " + job + " e5 --nothing-changed\n";
        double asked = reach(compare("as found", "cleaned", "--json"));
        assertThat(compare("as found", "cleaned").out())
                .satisfies(out -> assertThat(out.replaceAll("\\s+", " ")).contains(question))
                .contains(answer);
        done("job", "amend", job.toString(), "e5", "--nothing-changed");
        assertThat(compare("as found", "cleaned").out()).doesNotContain("something changed", answer);
        // (ln 5)² / 2 of one repeat in about six degrees of freedom, where 3 % was assumed.
        assertThat(reach(compare("as found", "cleaned", "--json"))).isGreaterThan(5 * asked);
        done("job", "strike", job.toString(), "e6");
        assertThat(compare("as found", "cleaned").out()).contains(answer);
    }

    private static double reach(CommandLineRun run) {
        JsonObject once = once(JsonDocument.parse(run.out(), "compare"));
        return once.number("ciHighPercent") - once.number("ciLowPercent");
    }

    @Test
    void aRunTakesOverWhereTheSensorSatUnlessAnotherSensorMadeItOrItIsAddedAfresh() throws IOException {
        Path file = table("later", 4800, 0.3, 5);
        assertThat(done("job", "add", job.toString(), file.toString()).out())
                .contains("place: gearbox top")
                .containsPattern("As in 'cleaned': place\\s+\"gearbox\\s+top\"");
        Path again = table("afresh", 4800, 0.3, 6);
        assertThat(done("job", "add", job.toString(), again.toString(), "--afresh")
                        .out())
                .doesNotContain("gearbox top");
        Path other = Files.writeString(
                dir.resolve("other.csv"),
                Files.readString(table("o", 4800, 0.3, 7)).replace(",z (", ",across ("));
        assertThat(done("job", "add", job.toString(), other.toString()).out()).doesNotContain("gearbox top");
    }

    @Test
    void aRunWithoutADwellAtTheWantedSpeedIsNamed() {
        CommandLineRun run = compare("as found", "cleaned", "--engine-rpm", "5500");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err())
                .isEqualTo("evenblade: run 'as found': no dwell at 5500 engine rpm, expected a speed within 2 % of one"
                        + " that it holds: 4800\n");
    }

    @Test
    void anUnknownRunIsRefusedWithThoseThereAre() {
        CommandLineRun run = compare("as found", "e9");
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("e1 'as found'", "e4 'cleaned'").hasLineCount(1);
    }

    @Test
    void aMissingRecordingIsNamedAndTheTrendGoesOnWithoutIt() throws IOException {
        try (Stream<Path> kept = Files.list(job.resolve("cache"))) {
            for (Path file : kept.toList()) {
                Files.delete(file);
            }
        }
        try (Stream<Path> files = Files.list(job.resolve("recordings"))) {
            Files.delete(files.filter(f -> f.toString().contains("again"))
                    .findFirst()
                    .orElseThrow());
        }
        assertThat(compare("as found", "as found again").status()).isEqualTo(1);
        String trend = done("trend", job.toString()).out();
        assertThat(trend).contains("Run 'as found again' (e2) is left out").contains("cleaned");
    }

    @Test
    void aRecordingThatWentMissingIsToldThoughItsResultIsKept() throws IOException {
        try (Stream<Path> files = Files.list(job.resolve("recordings"))) {
            Files.delete(files.filter(f -> f.toString().contains("again"))
                    .findFirst()
                    .orElseThrow());
        }
        CommandLineRun run = compare("as found", "as found again");
        assertThat(run.status()).isZero();
        assertThat(run.out().replaceAll("\\s+", " ")).contains("e2 'as found again'", "is missing");
    }

    @Test
    void theTrendShowsEveryRunWithWhatWasChangedBetween() {
        String out = done("trend", job.toString()).out();
        assertThat(out.lines().map(String::strip))
                .containsSubsequence("> flange cleaned, blades put back where they were");
        assertThat(out).containsPattern("cleaned +0\\.30\\d* +0\\.2\\d+ to 0\\.3\\d+ +−(49|50) % lower");
        assertThat(out.lines()).allMatch(line -> line.codePointCount(0, line.length()) <= 80);
        JsonObject json =
                JsonDocument.parse(done("trend", job.toString(), "--json").out(), "trend");
        JsonObject channel = json.objects("channels").get(0);
        assertThat(channel.objects("runs")).extracting(r -> r.text("id")).containsExactly("e1", "e2", "e4");
        JsonObject once = channel.objects("speeds").get(0).objects("figures").get(0);
        assertThat(once.text("name")).isEqualTo("propeller 1×");
        assertThat(once.objects("points").get(2).object("sinceLast").text("verdict"))
                .isEqualTo("lower");
        assertThat(once.objects("points").get(1).object("sinceFirst").text("verdict"))
                .isEqualTo("no-change-shown");
    }
}
