package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.json.JsonDocument;
import evenblade.base.json.JsonObject;
import evenblade.keep.job.MemoryFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The job record as the command line shows it; all jobs here are invented. */
class JobCommandsTest {
    @TempDir(factory = MemoryFolder.class)
    Path dir;

    private Path job;
    private Path installation;

    @BeforeEach
    void aJob() throws IOException {
        installation = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "name": "invented stand",
                  "engine": { "cycle": "four-stroke", "cylinders": 4, "idleRpm": 1600, "maxRpm": 5800 },
                  "reduction": { "drivingTeeth": 21, "drivenTeeth": 51, "kind": "gear" },
                  "propeller": { "blades": 3, "diameter": "1.70 m" } }
                """);
        job = dir.resolve("Auftrag Süd 1");
        assertThat(run("new", "--installation", installation.toString()).status())
                .isZero();
    }

    /** {@code job WORD DIR …} on this test's job. */
    private CommandLineRun run(String word, String... more) {
        List<String> words = new ArrayList<>(List.of("job", word, job.toString()));
        words.addAll(List.of(more));
        return CommandLineRun.of(words.toArray(String[]::new));
    }

    private CommandLineRun done(String word, String... more) {
        CommandLineRun run = run(word, more);
        assertThat(run.err()).isEmpty();
        assertThat(run.status()).isZero();
        return run;
    }

    private JsonObject shown() {
        return JsonDocument.parse(done("show", "--json").out(), "job show");
    }

    /** A table as a phone writes it: 2 s of noise at 200 rows a second. */
    private Path table(String name) throws IOException {
        Random random = new Random(name.hashCode());
        StringBuilder text = new StringBuilder("time (s),z (m/s^2)\n");
        for (int i = 0; i < 400; i++) {
            text.append(i / 200.0).append(',').append(random.nextGaussian()).append('\n');
        }
        return Files.writeString(dir.resolve(name), text);
    }

    @Test
    void aNewJobShowsItsInstallationAndNoEntries() {
        assertThat(done("show").out().lines())
                .containsExactly(
                        "Auftrag Süd 1",
                        "invented stand: four-stroke, 4 cylinders, 2.429 engine revolutions per propeller",
                        "revolution, 3 blades",
                        "",
                        "No entries yet.");
        JsonObject json = shown();
        assertThat(json.text("name")).isEqualTo("Auftrag Süd 1");
        assertThat(json.object("installation").object("propeller").text("diameter"))
                .isEqualTo("1.70 m");
        assertThat(json.objects("events")).isEmpty();
        assertThat(json.keys()).contains("events", "warnings");
    }

    @Test
    void howATableIsToBeReadIsKeptAndShown() throws IOException {
        done("add", table("before.csv").toString(), "--label", "before", "--column-scale", "2=0.5 g");
        assertThat(done("show").out()).contains("read with column 2 with 1 = 0.5 g");
        assertThat(shown().objects("events")
                        .get(0)
                        .object("settings")
                        .object("table")
                        .objects("columns"))
                .singleElement()
                .satisfies(column -> assertThat(column.text("oneIs")).isEqualTo("0.5 g"));
    }

    @Test
    void aWholeJobIsWrittenAndShownInTheOrderOfTime() throws IOException {
        Path photo = Files.writeString(dir.resolve("sheet.pdf"), "%PDF-1.4\n");
        done(
                "add",
                table("before.csv").toString(),
                "--engine-rpm",
                "4800",
                "--label",
                "before",
                "--wind",
                "3 m/s",
                "--at",
                "2026-05-04T10:30:00+02:00");
        done("correction", "hub", "cleaned", "--at", "2026-05-04T11:00:00+02:00");
        done("tracking", "--layout", "1=A,2=B,3=C", "--readings", "0 in,1/16 in,3/16 in", "--sigma", "1/64 in");
        done("pitch", "--layout", "1=A,2=B,3=C", "--readings", "17 deg,17.2 deg,17 deg", "--reference", "level");
        done("runout", "--total", "0.05 mm", "--dial-radius", "50 mm", "--high", "120 deg");
        done("attach", photo.toString(), "--text", "maker's sheet");
        done("note", "weather picked up", "--at", "2026-05-04T09:00:00+02:00");
        done("strike", "e2", "--why", "was not done");

        List<JsonObject> events = shown().objects("events");

        assertThat(events)
                .extracting(e -> e.text("kind"))
                .containsExactly(
                        "note", "run", "correction", "tracking", "pitch", "run-out", "attachment", "struck-out");
        assertThat(events)
                .extracting(e -> e.flag("struckOut"))
                .containsExactly(false, false, true, false, false, false, false, false);
        JsonObject added = events.get(1);
        assertThat(added.text("id")).isEqualTo("e1");
        assertThat(added.text("at")).isEqualTo("2026-05-04T10:30:00+02:00");
        assertThat(added.text("label")).isEqualTo("before");
        assertThat(added.object("settings").number("engineRpm")).isEqualTo(4800);
        assertThat(added.object("conditions").text("wind")).isEqualTo("3 m/s");
        assertThat(events.get(2).text("text")).isEqualTo("hub cleaned");
        // 3/16 in = 4.7625 mm by the definition of the inch
        assertThat(events.get(3).object("readingsMm").numbers("3")).containsExactly(4.7625);
        assertThat(shown().objects("warnings")).isEmpty();
    }

    @Test
    void theTextFitsATerminalAndMarksWhatWasStruckOut() throws IOException {
        done("note", "a long remark that goes on ".repeat(12));
        done(
                "add",
                table("a recording with a name that is rather long for a name.csv")
                        .toString(),
                "--label",
                "x");
        done("strike", "e1");

        String text = done("show").out();

        assertThat(text.lines()).allMatch(line -> line.codePointCount(0, line.length()) <= LineWrapper.WIDTH);
        assertThat(text).contains("note (CROSSED OUT): a long", "run 'x'", "crosses out e1");
    }

    @Test
    void aChangedRecordingIsToldByShow() throws IOException {
        done("add", table("before.csv").toString(), "--label", "before");
        try (Stream<Path> stored = Files.list(job.resolve("recordings"))) {
            Files.writeString(stored.findFirst().orElseThrow(), "something else");
        }

        assertThat(shown().objects("warnings")).extracting(w -> w.text("code")).containsExactly("recording-changed");
        assertThat(done("show").out()).contains("! e1 'before': ");
        assertThat(run("show", "--every-byte").status()).isZero();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "tracking --layout 1=A,2=B --readings 0_mm,1_mm            | layout: 2 blades, expected the 3 blades",
                "tracking --layout 1=A,2=A,3=B --readings 0_mm,1_mm,2_mm   | layout: blade A on two hub positions",
                "tracking --layout 1=A,3=B --readings 0_mm,1_mm            | layout: no blade on hub position 2",
                "tracking --layout 1=A,2=B,3=C --readings 0_mm,1,2_mm      | reading at hub position 2",
                "tracking --layout 1=A,2=B,3=C --readings 0_mm,3/0_in,2_mm | reading at hub position 2",
                "tracking --layout 1=A,2=B,3=C --readings 0_mm,1_in,2_mm   | the unit of the first reading",
                "pitch --layout 1=A,2=B,3=C --readings 1_deg,1_deg,1_deg --reference floor | --reference: \"floor\"",
                "runout --total 0.05 --dial-radius 50_mm                   | total run-out",
                "runout --total 0.05_mm --dial-radius 0_mm                 | dial radius",
                "note x --at yesterday                                     | --at: \"yesterday\", expected a time like",
                "strike e1                                                 | entry 'e1': no entry of that id",
                "attach none.jpg                                           | none.jpg: no such file",
                "add none.wav                                              | none.wav"
            })
    void whatCantBeUsedIsRefusedInOneLineAndNothingIsWritten(String words, String complaint) {
        List<String> all = List.of(words.strip()
                .replace("_mm", " mm")
                .replace("_in", " in")
                .replace("_deg", " deg")
                .split(" (?!mm|in|deg)"));

        CommandLineRun run = run(all.get(0), all.subList(1, all.size()).toArray(String[]::new));

        assertThat(run.status()).isEqualTo(ExitStatus.BAD_INPUT);
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).startsWith("evenblade: ").contains(complaint.strip());
        assertThat(run.out()).isEmpty();
        assertThat(shown().objects("events")).isEmpty();
    }

    @Test
    void nothingUnreadableGetsIntoAJob() throws IOException {
        Path text = Files.writeString(dir.resolve("run.wav"), "this is no sound");
        Path flat = Files.writeString(dir.resolve("flat.csv"), "t,a\n0,1\n1,1\n2,1\n3,1\n");

        for (Path recording : List.of(text, flat)) {
            CommandLineRun run = run("add", recording.toString());
            assertThat(run.status()).isEqualTo(ExitStatus.BAD_INPUT);
            assertThat(run.err()).startsWith("evenblade: " + recording);
        }
        assertThat(job.toFile().list()).containsExactlyInAnyOrder("job.json", "job.lock");
    }

    @Test
    void aSpeedOutsideTheEnginesRangeAndAChannelThatIsNotThereAreRefused() throws IOException {
        String recording = table("a.csv").toString();

        assertThat(run("add", recording, "--engine-rpm", "9000").err()).contains("9000 rpm", "5800 rpm");
        assertThat(run("add", recording, "--propeller-rpm", "4800").err()).contains("5800 rpm");
        assertThat(run("add", recording, "--channel", "w").err()).contains("channel");
        assertThat(run("add", recording, "--full-scale", "50").err()).contains("--full-scale");
        assertThat(shown().objects("events")).isEmpty();
    }

    @Test
    void aRecordingOlderThanItsEntryIsToldUnlessItsTimeWasSaid() throws IOException {
        Path old = table("old.csv");
        Files.setLastModifiedTime(old, FileTime.from(Instant.now().minus(Duration.ofDays(2))));

        String said = done("add", old.toString(), "--at", "2026-05-04").out();
        done("strike", "e1");
        String notSaid = done("add", old.toString()).out();

        assertThat(said).doesNotContain("last written");
        assertThat(notSaid).contains("! the run is dated now, but its file was last written");
        assertThat(shown().objects("events").get(0).text("at")).startsWith("2026-05-04T12:00:00");
    }

    @Test
    void aDamagedRecordIsNamedWithItsLine() throws IOException {
        done("note", "first");
        Path record = job.resolve("job.json");
        Files.writeString(record, Files.readString(record).replace("\"note\"", "\"nota\""));

        CommandLineRun run = run("show");

        assertThat(run.status()).isEqualTo(ExitStatus.BAD_INPUT);
        assertThat(run.err())
                .startsWith("evenblade: " + record + ":")
                .contains("\"nota\"")
                .contains("expected");
        assertThat(run.err().lines()).hasSize(1);
    }

    @Test
    void aJobInAFolderThatIsTakenIsRefused() {
        CommandLineRun again = run("new", "--installation", installation.toString());

        assertThat(again.status()).isEqualTo(ExitStatus.BAD_INPUT);
        assertThat(again.err()).contains("a job is here already");
    }

    @Test
    void everyKindOfEntryTellsThatTheClockStandsBehindAnEarlierOne() throws IOException {
        done("note", "made while the clock was ahead");
        Path record = job.resolve("job.json");
        String now = Files.readString(record);
        Files.writeString(record, now.replaceAll("\"entered\"\\s*:\\s*\"20\\d\\d", "\"entered\": \"2093"));
        String told = "clock of the computer showed an earlier time";

        assertThat(run("note", "made now").out().replaceAll("\\s+", " ")).contains(told);
        assertThat(run("correction", "blade B shimmed").out().replaceAll("\\s+", " "))
                .contains(told);
        Path photo = Files.writeString(dir.resolve("photo.txt"), "a paper");
        assertThat(run("attach", photo.toString()).out().replaceAll("\\s+", " "))
                .contains(told);
    }
}
