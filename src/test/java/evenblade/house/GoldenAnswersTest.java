package evenblade.house;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.base.json.JsonWriter;
import evenblade.face.cli.Program;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.machine.installation.InstallationFile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * What the program answers about five invented jobs, to the letter, as it answered when the answers were last reviewed.
 *
 * <p>An intended change is shown by {@code -Dgolden.write=true}, which writes the files anew; their difference is then read
 * line by line before it is kept. Paths, times of making and the version are left out. Of pictures the name and the size
 * in pixels are kept: their letters depend on the machine's fonts.
 */
@DisplayName("Answers about five practice jobs")
@Tag("long")
class GoldenAnswersTest {
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");
    private static final boolean WRITE = Boolean.getBoolean("golden.write");
    private static final long SEED = 11;
    /** Answers whose JSON is long; that of one job is enough to see its form and figures. */
    private static final Set<String> LARGE = Set.of("plan", "orders", "compare", "trend");

    private static final Pattern IMAGE =
            Pattern.compile("<img src=\"data:image/[a-z]+;base64,([^\"]*)\" alt=\"([^\"]*)\"/>");

    @TempDir
    Path folder;

    @ParameterizedTest
    @EnumSource(
            value = Fault.class,
            names = {"BLADE_OUT_OF_TRACK", "MASS_IMBALANCE", "BLADE_OUT_OF_PITCH", "WEAK_CYLINDER", "FLANGE_RUN_OUT"})
    void areWhatTheyWere(Fault fault) throws IOException {
        Path job = folder.resolve("job");
        new PracticeJob(PracticeInstallation.geared(), List.of(fault), SEED, 15, 4000)
                .brief()
                .write(job);
        String dir = job.toString();
        String installation = Files.writeString(
                        folder.resolve("installation.json"),
                        JsonWriter.write(InstallationFile.written(PracticeInstallation.geared())))
                .toString();
        Map<String, String> answers = new TreeMap<>();
        both(
                fault,
                answers,
                "plan",
                "plan",
                "--installation",
                installation,
                "--engine-rpm",
                "4800",
                "--engine-rpm",
                "3000");
        both(
                fault,
                answers,
                "orders",
                "orders",
                firstRecording(job).toString(),
                "--installation",
                installation,
                "--mark-channel",
                "4",
                "--full-scale",
                "50 m/s2");
        both(fault, answers, "job-show", "job", "show", dir);
        both(fault, answers, "compare", "compare", dir, "as found", "put right");
        both(fault, answers, "trend", "trend", dir);
        both(fault, answers, "tracking", "tracking", dir);
        both(fault, answers, "findings", "findings", dir);
        Path out = folder.resolve("out");
        said("report", dir, "--out", out.toString());
        answers.put("report.txt", page(Files.readString(out.resolve("report.html"))));
        Path kept = GOLDEN.resolve(fault.word());
        if (WRITE) {
            write(kept, answers);
        }
        List<String> differing = new ArrayList<>();
        for (Map.Entry<String, String> answer : answers.entrySet()) {
            String now = normal(answer.getValue());
            String before = Files.readString(kept.resolve(answer.getKey()));
            if (!now.equals(before)) {
                differing.add(answer.getKey() + ":\n" + difference(before, now));
            }
        }
        assertThat(differing).isEmpty();
    }

    private static Path firstRecording(Path job) throws IOException {
        try (Stream<Path> files = Files.walk(job)) {
            return files.filter(file -> file.toString().endsWith(".wav"))
                    .sorted()
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static void both(Fault fault, Map<String, String> answers, String name, String... words) {
        answers.put(name + ".txt", said(words));
        if (LARGE.contains(name) && fault != Fault.BLADE_OUT_OF_TRACK) {
            return;
        }
        List<String> json = new ArrayList<>(List.of(words));
        json.add("--json");
        answers.put(name + ".json", said(json.toArray(String[]::new)));
    }

    private static String said(String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = Program.run(
                words,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(status).isZero();
        return out.toString(StandardCharsets.UTF_8);
    }

    /** A page's text, a block a line, cells of a row side by side, pictures as their words and size. */
    private static String page(String html) throws IOException {
        Matcher images = IMAGE.matcher(html);
        StringBuilder text = new StringBuilder();
        while (images.find()) {
            BufferedImage image =
                    ImageIO.read(new ByteArrayInputStream(Base64.getDecoder().decode(images.group(1))));
            images.appendReplacement(
                    text,
                    Matcher.quoteReplacement(
                            "[" + images.group(2) + ": " + image.getWidth() + "×" + image.getHeight() + "]"));
        }
        images.appendTail(text);
        return text.toString()
                .replaceFirst("(?s)<style.*?</style>", "")
                .replaceAll("</t[dh]>\\s*<t[dh][^>]*>", " | ")
                .replaceAll("(?s)<[^>]*>", "\n")
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty())
                .collect(Collectors.joining("\n", "", "\n"));
    }

    private String normal(String text) {
        return text.replace(folder.toString(), "FOLDER")
                .replaceAll("Made [0-9]{1,2} [A-Z][a-z]{2} [0-9]{4}, [0-9:]{5} by .*", "Made TIME by PROGRAM")
                .replaceAll("[0-9a-f]{64}", "SHA256")
                .replaceAll("\"modified\" : \"[^\"]*\"", "\"modified\" : TIME");
    }

    private void write(Path kept, Map<String, String> answers) throws IOException {
        Files.createDirectories(kept);
        for (Map.Entry<String, String> answer : answers.entrySet()) {
            Files.writeString(kept.resolve(answer.getKey()), normal(answer.getValue()));
        }
    }

    /** Lines of one that the other hasn't, at most twelve of each. */
    private static String difference(String before, String now) {
        List<String> old = before.lines().toList();
        List<String> young = now.lines().toList();
        return Stream.concat(
                        old.stream()
                                .filter(line -> !young.contains(line))
                                .limit(12)
                                .map(line -> "- " + line),
                        young.stream()
                                .filter(line -> !old.contains(line))
                                .limit(12)
                                .map(line -> "+ " + line))
                .collect(Collectors.joining("\n", "", "\n"));
    }
}
