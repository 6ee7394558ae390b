package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.keep.job.MemoryFolder;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Findings as the command line tells them, on an invented job. */
class FindingsCommandTest {
    @TempDir(factory = MemoryFolder.class)
    static Path dir;

    private static CommandLineRun text;
    private static JsonObject json;

    @BeforeAll
    static void aJobWithABladeOutOfTrack() throws IOException {
        Path job = dir.resolve("job");
        PracticeJob.of(PracticeInstallation.geared(), List.of(Fault.BLADE_OUT_OF_TRACK), 7)
                .brief()
                .write(job);
        text = CommandLineRun.of("findings", job.toString());
        json = JsonDocument.parse(
                CommandLineRun.of("findings", job.toString(), "--json").out(), "findings");
    }

    @Test
    void theNextStepAtThePropellerComesWithTheCaution() {
        assertThat(text.out().replaceAll("\\s+", " ")).contains("ignition off").contains("treat it as live");
    }

    @Test
    void theBladeComesFirstWithItsEvidenceAndWhatMadeItGoAway() {
        JsonObject first = json.objects("findings").get(0);
        assertThat(first.text("cause")).isEqualTo("track");
        assertThat(first.text("statement")).contains("point to track: blade B");
        assertThat(first.flag("confident")).isTrue();
        assertThat(first.flag("open")).isFalse();
        assertThat(first.text("goneSince")).isEqualTo("put right");
        assertThat(first.objects("for"))
                .allSatisfy(p -> assertThat(p.text("text")).matches("(?s).*\\d.*"));
        assertThat(first.text("next")).contains("Blade B shimmed into track");
    }

    @Test
    void mostOfOneTimesGoesWithTrackOverTheRuns() {
        JsonObject tie = json.object("tie");
        assertThat(tie.flag("tied")).isTrue();
        assertThat(tie.flag("trackMatters")).isTrue();
        JsonObject asFound = tie.objects("runs").get(0);
        assertThat(asFound.object("withTrack").number("value") / asFound.number("amplitude"))
                .isBetween(0.7, 1.3);
    }

    @Test
    void theTextFitsEightyColumnsAndSaysThatItIsInvented() {
        assertThat(text.status()).isZero();
        assertThat(text.err()).isEmpty();
        assertThat(text.out().lines())
                .allSatisfy(line ->
                        assertThat(line.codePointCount(0, line.length())).isLessThanOrEqualTo(80))
                .anySatisfy(line -> assertThat(line).contains("INVENTED"))
                .anySatisfy(line -> assertThat(line).matches("1× and track over the runs, at \\d+ engine rpm"))
                .anySatisfy(line -> assertThat(line).startsWith("1. Tip marks and shaking point to track"));
    }

    @Test
    void whereTheTipsTrackEveryRunStandsWithItsErrorAllTheSame() throws IOException {
        Path job = dir.resolve("tracking-well");
        PracticeJob.of(PracticeInstallation.geared(), List.of(Fault.WEAK_CYLINDER), 7)
                .brief()
                .write(job);

        CommandLineRun said = CommandLineRun.of("findings", job.toString());

        assertThat(said.out()).containsPattern("run +track, mm +1×, m/s² +± 95 %");
        assertThat(said.out()).containsPattern("as found +0\\.\\d\\d +[0-9.]+ +[0-9.]+\n");
    }

    @Test
    void whatTheCacheKeptGivesTheSameAnswerToTheLetter() throws IOException {
        Path job = dir.resolve("job");
        try (Stream<Path> kept = Files.list(job.resolve("cache"))) {
            assertThat(kept).isNotEmpty();
        }
        CommandLineRun fromCache = CommandLineRun.of("findings", job.toString());
        for (Path file : files(job.resolve("cache"))) {
            Files.delete(file);
        }
        assertThat(CommandLineRun.of("findings", job.toString())).isEqualTo(fromCache);
        assertThat(fromCache).isEqualTo(text);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.toList();
        }
    }

    @Test
    void aJobWithNothingMeasuredIsRefusedInOneLine() throws IOException {
        Path installation = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "engine": { "cycle": "electric" }, "reduction": { "kind": "direct" }, "propeller": { "blades": 2 } }
                """);
        String empty = dir.resolve("empty").toString();
        assertThat(CommandLineRun.of("job", "new", empty, "--installation", installation.toString())
                        .status())
                .isZero();
        CommandLineRun run = CommandLineRun.of("findings", empty);
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains("nothing measured in this job");
    }
}
