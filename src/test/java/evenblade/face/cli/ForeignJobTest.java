package evenblade.face.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.MemoryFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A job folder as somebody else may send it: changed by hand, on purpose or not. All jobs are invented. */
class ForeignJobTest {
    @TempDir(factory = MemoryFolder.class)
    static Path dir;

    private static Path made;

    @TempDir
    Path own;

    private Path job;

    @BeforeAll
    static void aJobWithTwoRunsAndAPhoto() throws IOException {
        Path installation = Files.writeString(
                dir.resolve("stand.json"),
                """
                { "engine": { "cycle": "two-stroke", "cylinders": 2, "idleRpm": 2000, "maxRpm": 6500 },
                  "reduction": { "ratio": 2.43 }, "propeller": { "blades": 3 } }
                """);
        made = dir.resolve("job");
        done("job", "new", made.toString(), "--installation", installation.toString());
        done("job", "add", made.toString(), table("first", 1).toString(), "--label", "first", "--engine-rpm", "4800");
        done("job", "add", made.toString(), table("second", 2).toString(), "--label", "second", "--engine-rpm", "4800");
        Path photo = Files.write(dir.resolve("photo.png"), onePixel());
        done("job", "attach", made.toString(), photo.toString());
    }

    @BeforeEach
    void aCopyWithoutKeptResults() throws IOException {
        job = own.resolve("job");
        try (Stream<Path> all = Files.walk(made)) {
            for (Path from :
                    all.filter(f -> !f.startsWith(made.resolve("cache"))).toList()) {
                Files.copy(from, job.resolve(made.relativize(from).toString()));
            }
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"tolerancePercent\" : null | \"tolerancePercent\" : -5 | tolerance",
                "\"engineRpm\" : 4800.0 | \"engineRpm\" : -1e300 | engine speed",
                "\"fullScale\" : null | \"fullScale\" : \"much\" | full scale"
            })
    void aRunWithImpossibleSettingsIsLeftOutAndTheOtherShown(String from, String to, String named) throws IOException {
        change(text -> text.replaceFirst(Pattern.quote(from), to));

        CommandLineRun trend = CommandLineRun.of("trend", job.toString());
        CommandLineRun report = CommandLineRun.of(
                "report", job.toString(), "--out", own.resolve("out").toString());

        assertThat(trend.status()).as(trend.err()).isZero();
        assertThat(trend.out()).contains("'first'").contains(named).contains("second");
        assertThat(report.status()).as(report.err()).isZero();
        assertThat(Files.readString(own.resolve("out").resolve("report.html")))
                .contains("No results")
                .contains(named);
        assertThat(CommandLineRun.of("job", "show", job.toString()).status()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"recordings/a\\u0000b.csv", "recordings/..", "recordings/.", "recordings/\\ud800.csv"})
    void aRunWhoseFileNameNobodyCanHaveIsThatRunsTrouble(String path) throws IOException {
        change(text -> text.replaceFirst("recordings/first[^\"]*", Matcher.quoteReplacement(path)));

        for (String command : new String[] {"trend", "report"}) {
            CommandLineRun run = CommandLineRun.of(command, job.toString());
            assertThat(run.status()).as(run.err()).isNotEqualTo(ExitStatus.BUG);
        }
        CommandLineRun show = CommandLineRun.of("job", "show", job.toString());
        assertThat(show.status()).as(show.err()).isZero();
        assertThat(show.out()).contains("second");
    }

    @Test
    void aLinkThatLeadsOutOfTheFolderIsNeitherReadNorShown() throws IOException {
        Path secret = Files.write(own.resolve("private.png"), onePixel());
        Path photo = only(job.resolve("attachments"));
        Files.delete(photo);
        Files.createSymbolicLink(photo, secret);
        Path recording = job.resolve("recordings");
        Path first = find(recording, "first");
        Path outside = Files.move(first, own.resolve("outside.csv"));
        Files.createSymbolicLink(first, outside);

        CommandLineRun show = CommandLineRun.of("job", "show", job.toString());
        CommandLineRun trend = CommandLineRun.of("trend", job.toString());
        CommandLineRun report = CommandLineRun.of(
                "report", job.toString(), "--out", own.resolve("out").toString());

        assertThat(show.out()).contains("leads out of the job folder");
        assertThat(trend.status()).as(trend.err()).isZero();
        assertThat(trend.out()).contains("leads out of the job folder");
        assertThat(report.status()).as(report.err()).isZero();
        assertThat(Files.readString(own.resolve("out").resolve("report.html"))).contains("leads out of the job folder");
    }

    @Test
    void aFolderOfTheJobThatLiesElsewhereIsRefused() throws IOException {
        Path elsewhere = Files.createDirectory(own.resolve("elsewhere"));
        Path attachments = job.resolve("attachments");
        Files.delete(only(attachments));
        Files.delete(attachments);
        Files.createSymbolicLink(attachments, elsewhere);

        CommandLineRun show = CommandLineRun.of("job", "show", job.toString());

        assertThat(show.status()).isEqualTo(1);
        assertThat(show.err()).contains("attachments").contains("leads out of the job folder");
    }

    @ParameterizedTest
    @ValueSource(strings = {"particulars.json", "takes", "job.lock"})
    void aPartOfTheJobThatLiesElsewhereIsRefused(String part) throws IOException {
        Path elsewhere = own.resolve("elsewhere");
        Files.writeString(elsewhere, "{ \"owner\" : \"somebody\" }");
        Files.deleteIfExists(job.resolve(part));
        Files.createSymbolicLink(job.resolve(part), elsewhere);

        for (String[] words : new String[][] {
            {"job", "show", job.toString()},
            {"job", "particulars", job.toString()},
            {"job", "particulars", job.toString(), "--owner", "X"},
            {"job", "rescue", job.toString()},
            {"report", job.toString()}
        }) {
            CommandLineRun run = CommandLineRun.of(words);
            assertThat(run.status()).isEqualTo(1);
            assertThat(run.err()).contains(part).contains("leads out of the job folder");
        }
        assertThat(elsewhere).hasContent("{ \"owner\" : \"somebody\" }");
    }

    @Test
    void aTakeThatIsALinkIsLeftAlone() throws IOException {
        Path elsewhere = Files.copy(find(job.resolve("recordings"), "first"), own.resolve("mine.csv"));
        Path takes = Files.createDirectory(job.resolve("takes"));
        Files.createSymbolicLink(takes.resolve("take-1.csv"), elsewhere);

        assertThat(CommandLineRun.of("job", "rescue", job.toString()).out()).contains("No take to rescue");
        assertThat(takes.resolve("take-1.csv")).isSymbolicLink();
    }

    @Test
    void aReportOverwritesNothingThatLiesOutside() throws IOException {
        Path mine = Files.writeString(own.resolve("mine.txt"), "mine");
        Files.createSymbolicLink(job.resolve(".report.html.unfinished"), mine);
        Files.createSymbolicLink(job.resolve("report.pdf"), mine);

        assertThat(CommandLineRun.of("report", job.toString()).status()).isZero();
        assertThat(job.resolve("report.html")).content().contains("<html");
        assertThat(mine).hasContent("mine");

        Path elsewhere = Files.createDirectory(own.resolve("elsewhere"));
        Path out = Files.createDirectory(own.resolve("out"));
        Files.createSymbolicLink(out.resolve("tables"), elsewhere);
        CommandLineRun run = CommandLineRun.of("report", job.toString(), "--out", out.toString());
        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).contains("leads out of the folder");
        assertThat(elsewhere).isEmptyDirectory();
    }

    @Test
    void aLeftoverOfAProcessThatNobodyCanHaveStays() throws IOException {
        Path leftover = job.resolve("recordings/.unfinished-" + "9".repeat(20) + "-a-1.csv");
        Files.setLastModifiedTime(
                Files.createFile(leftover), java.nio.file.attribute.FileTime.fromMillis(1_000_000_000));

        assertThat(CommandLineRun.of("job", "show", job.toString()).status()).isZero();
        assertThat(CommandLineRun.of("job", "note", job.toString(), "a remark").status())
                .isZero();
    }

    /** Reading them would wait for ever, or never end. */
    @ParameterizedTest
    @ValueSource(strings = {"/dev/null", "/dev/zero"})
    void whatIsNoFileIsRefused(String device) {
        Assumptions.assumeTrue(Files.exists(Path.of(device)), "a system with " + device);
        for (String[] words : new String[][] {
            {"orders", device, "--installation", dir.resolve("stand.json").toString()},
            {"spectrum", device},
            {"plan", "--installation", device},
            {"job", "add", job.toString(), device},
            {"job", "attach", job.toString(), device}
        }) {
            CommandLineRun run = CommandLineRun.of(words);
            assertThat(run.status()).as(run.err()).isEqualTo(1);
            assertThat(run.err()).contains(device + ": a pipe or a device");
        }
    }

    @Test
    void whatSteersATerminalIsShownAndNotSent() throws IOException {
        String evil = "\\u001b]0;title\\u0007\\u202e\\u009b31m\\ud800";
        change(text -> text.replace("\"label\" : \"first\"", "\"label\" : \"" + evil + "\""));

        for (String[] words : new String[][] {
            {"job", "show", job.toString()},
            {"job", "show", job.toString(), "--json"},
            {"trend", job.toString()},
            {"compare", job.toString(), "e9", "e10"},
            {"report", job.toString(), "--out", own.resolve("out").toString()},
            {"orders", "\u001b[31m", "--installation", "x"},
            {"\u001b[31m"},
            {"job", "show", "a\rb\u0000"}
        }) {
            CommandLineRun run = CommandLineRun.of(words);
            assertThat(run.status()).as(run.err()).isNotEqualTo(ExitStatus.BUG);
            assertThat(run.out() + run.err()).doesNotContain("\u001b", "\u0007", "\u202e", "\u009b", "\r", "\u0000");
        }
        assertThat(CommandLineRun.of("job", "show", job.toString()).out()).contains("\\u001b]0;title\\u0007");
        assertThat(CommandLineRun.of("job", "note", job.toString(), "a remark").status())
                .isZero();
        assertThat(Files.readString(job.resolve("job.json")))
                .as("half a character stays what it was")
                .contains("\\ud800");
    }

    @ParameterizedTest
    @CsvSource({
        "2026-, +999999999-, year 999999999",
        "\"text\" : \"\", \"text\" : \"LONG\", at most 30000",
        "\"name\" : \"job\", \"name\" : \"LONG\", at most 1000",
        "\"modified\" : \"2, \"modified\" : \"-1, year -1026"
    })
    void whatNoRecordCanHoldIsRefusedWithItsPlace(String from, String to, String named) throws IOException {
        change(text -> text.replaceFirst(from, to.replace("LONG", "a".repeat(40_000))));

        CommandLineRun show = CommandLineRun.of("job", "show", job.toString());

        assertThat(show.status()).as(show.err()).isEqualTo(1);
        assertThat(show.err()).contains("job.json").contains(named).hasSizeLessThan(2000);
    }

    @Test
    void aFileNameThatCanNotBeIsRefusedInWords() {
        CommandLineRun run = CommandLineRun.of("orders", "a\u0000b.csv", "--installation", "x.json");

        assertThat(run.status()).isEqualTo(1);
        assertThat(run.err()).startsWith("evenblade: file name 'a\\u0000b.csv'").hasLineCount(1);
    }

    private void change(UnaryOperator<String> how) throws IOException {
        Path record = job.resolve("job.json");
        String before = Files.readString(record);
        String after = how.apply(before);
        assertThat(after).isNotEqualTo(before);
        Files.writeString(record, after);
    }

    private static Path only(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.findFirst().orElseThrow();
        }
    }

    private static Path find(Path folder, String start) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.getFileName().toString().startsWith(start))
                    .findFirst()
                    .orElseThrow();
        }
    }

    /** Ten seconds of an invented 4800 rpm behind a ratio of 2.43: propeller 1× and blade pass in noise. */
    private static Path table(String name, long seed) throws IOException {
        double propellerHz = 4800 / 2.43 / 60;
        Random chance = new Random(seed);
        StringBuilder text = new StringBuilder("time (s),y (m/s2)\n");
        for (int i = 0; i < 5000; i++) {
            double t = i / 500.0;
            double y = 0.6 * Math.sin(2 * Math.PI * propellerHz * t)
                    + 0.8 * Math.sin(6 * Math.PI * propellerHz * t)
                    + 0.5 * Math.sin(2 * Math.PI * 80 * t)
                    + 0.4 * Math.sin(2 * Math.PI * 160 * t)
                    + 0.1 * chance.nextGaussian();
            text.append(String.format(java.util.Locale.ROOT, "%.4f,%.5f%n", t, y));
        }
        return Files.writeString(dir.resolve(name + ".csv"), text.toString());
    }

    private static byte[] onePixel() throws IOException {
        java.io.ByteArrayOutputStream bytes = new java.io.ByteArrayOutputStream();
        javax.imageio.ImageIO.write(
                new java.awt.image.BufferedImage(1, 1, java.awt.image.BufferedImage.TYPE_INT_RGB), "png", bytes);
        return bytes.toByteArray();
    }

    private static void done(String... words) {
        CommandLineRun run = CommandLineRun.of(words);
        assertThat(run.status()).as(run.err()).isZero();
    }
}
