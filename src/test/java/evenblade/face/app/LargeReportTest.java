package evenblade.face.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.keep.job.Detail;
import evenblade.keep.job.Entry;
import evenblade.keep.job.Event;
import evenblade.keep.job.JobFolder;
import evenblade.keep.job.Kind;
import evenblade.keep.job.NewJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.practice.Fault;
import evenblade.keep.practice.PracticeInstallation;
import evenblade.keep.practice.PracticeJob;
import evenblade.machine.installation.Installation;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("long")
@DisplayName("The report of a job with forty runs and thirty photos")
class LargeReportTest {
    private static final int RUNS = 40;
    private static final int PHOTOS = 30;
    private static final long MOST_BYTES = 15_000_000;

    @TempDir
    Path temp;

    /** One report, written by a program of its own as a user starts it. */
    private record Written(String state, double wallS, double busyS, long pageBytes, long sheetsBytes) {
        String line() {
            return String.format(
                    Locale.ROOT,
                    "%s: %.1f s, %.1f s of processor; page %.1f MB, sheets %.1f MB",
                    state,
                    wallS,
                    busyS,
                    pageBytes / 1e6,
                    sheetsBytes / 1e6);
        }
    }

    @Test
    @DisplayName("can be mailed; how long each takes is written to target/report-figures.txt")
    void isSmall() throws Exception {
        Path job = job();
        List<Written> reports = new ArrayList<>();
        reports.add(written("first report after the runs were added", job));
        reports.add(written("once more", job));
        deleteCache(job);
        reports.add(written("every kept result deleted", job));
        Files.write(
                Path.of("target/report-figures.txt"),
                reports.stream().map(Written::line).toList());
        assertThat(reports)
                .allSatisfy(report -> assertThat(report.pageBytes()).isLessThan(MOST_BYTES))
                .allSatisfy(report -> assertThat(report.sheetsBytes()).isLessThan(MOST_BYTES));
    }

    private Written written(String state, Path job) throws IOException, InterruptedException {
        Path out = temp.resolve("out");
        long start = System.nanoTime();
        Process program = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "evenblade.face.start.Main",
                        "report",
                        job.toString(),
                        "--out",
                        out.toString())
                .redirectErrorStream(true)
                .redirectOutput(temp.resolve("said.txt").toFile())
                .start();
        Duration busy = Duration.ZERO;
        while (!program.waitFor(20, TimeUnit.MILLISECONDS)) {
            busy = program.info().totalCpuDuration().orElse(busy);
        }
        double wallS = (System.nanoTime() - start) / 1e9;
        assertThat(program.exitValue())
                .as(Files.readString(temp.resolve("said.txt")))
                .isZero();
        return new Written(
                state,
                wallS,
                busy.toMillis() / 1e3,
                Files.size(out.resolve(WriteReport.HTML)),
                Files.size(out.resolve(WriteReport.PDF)));
    }

    private static void deleteCache(Path job) throws IOException {
        try (Stream<Path> kept = Files.list(job.resolve("cache"))) {
            for (Path each : kept.toList()) {
                Files.delete(each);
            }
        }
    }

    /** The runs of eight practice jobs in one, a change after every fifth. */
    private Path job() throws IOException {
        Installation installation = PracticeInstallation.geared();
        Path folder = temp.resolve("job");
        JobFolder job = JobFolder.create(folder, NewJob.of("Invented job of forty runs", true, installation));
        for (int seed = 0; seed < RUNS / 5; seed++) {
            Path made = temp.resolve("made-" + seed);
            PracticeJob.of(installation, List.of(Fault.BLADE_OUT_OF_TRACK), seed)
                    .write(made);
            JobFolder source = JobFolder.open(made);
            for (Event event : source.record().standing(Kind.RUN)) {
                Detail.Run run = (Detail.Run) event.detail();
                AddRun.add(
                        folder,
                        source.locate(run.file()),
                        new NewRun(
                                Optional.empty(),
                                Optional.of(seed + ": " + event.label().orElseThrow()),
                                "",
                                run.settings(),
                                run.conditions()));
            }
            job.append(Entry.correction("Invented change " + seed));
        }
        WriteEntry.attach(folder, photos(), "", Optional.empty());
        return folder;
    }

    /** Twelve megapixels each, with the fine grain that makes photos large. */
    private List<Path> photos() throws IOException {
        List<Path> photos = new ArrayList<>();
        Random random = new Random(7);
        for (int i = 0; i < PHOTOS; i++) {
            BufferedImage image = new BufferedImage(4000, 3000, BufferedImage.TYPE_INT_RGB);
            Graphics2D surface = image.createGraphics();
            surface.setPaint(new GradientPaint(0, 0, new Color(70, 90, 110), 4000, 3000, new Color(200, 190, 160)));
            surface.fillRect(0, 0, 4000, 3000);
            for (int k = 0; k < 4000; k++) {
                surface.setColor(new Color(random.nextInt(0xFFFFFF)));
                surface.fillOval(random.nextInt(4000), random.nextInt(3000), 60, 60);
            }
            surface.dispose();
            Path file = temp.resolve("photo-" + i + ".jpg");
            ImageIO.write(image, "jpg", file.toFile());
            photos.add(file);
        }
        return photos;
    }
}
