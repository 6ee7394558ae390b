package evenblade.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.installation.Installation;
import evenblade.job.Detail;
import evenblade.job.Entry;
import evenblade.job.Event;
import evenblade.job.JobFolder;
import evenblade.job.Kind;
import evenblade.job.NewJob;
import evenblade.job.NewRun;
import evenblade.practice.Fault;
import evenblade.practice.PracticeInstallation;
import evenblade.practice.PracticeJob;
import evenblade.report.PaperSize;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
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
    /** Of processor time, so that a busy machine doesn't count; wall time is at most this, and less on two cores. */
    private static final double MOST_SECONDS = 10;

    private static final long MOST_BYTES = 15_000_000;

    @TempDir
    Path temp;

    @Test
    @DisplayName("is written in ten seconds where the results are kept, and is small enough to mail")
    void isQuickAndSmall() throws IOException {
        Path job = job();
        List<String> lines = new ArrayList<>();
        double slowestKept = 0;
        for (String state : List.of("nothing kept", "results kept", "results kept, warm")) {
            long start = System.nanoTime();
            long busyFrom = busyNanos();
            List<String> stages = new ArrayList<>();
            Path out = temp.resolve("out");
            WriteReport.Written written = WriteReport.answer(
                    job,
                    Optional.of(out),
                    PaperSize.A4,
                    (share, doing) -> stages.add(
                            doing + String.format(Locale.ROOT, " %.1f s", (System.nanoTime() - start) / 1e9)));
            double seconds = (System.nanoTime() - start) / 1e9;
            double busy = (busyNanos() - busyFrom) / 1e9;
            long html = Files.size(out.resolve(WriteReport.HTML));
            long pdf = Files.size(out.resolve(WriteReport.PDF));
            lines.add(String.format(
                    Locale.ROOT,
                    "%s: %.1f s (%.1f s of processor), page %.1f MB, sheets %.1f MB",
                    state,
                    seconds,
                    busy,
                    html / 1e6,
                    pdf / 1e6));
            lines.add(stages.get(0) + "; " + stages.get(1) + "; " + stages.get(stages.size() - 2) + "; "
                    + stages.get(stages.size() - 1));
            assertThat(written.warnings()).isEmpty();
            assertThat(html).isLessThan(MOST_BYTES);
            assertThat(pdf).isLessThan(MOST_BYTES);
            if (!state.equals("nothing kept")) {
                slowestKept = Math.max(slowestKept, busy);
            }
        }
        Files.write(Path.of("target/report-figures.txt"), lines);
        assertThat(slowestKept).as("processor seconds with results kept").isLessThan(MOST_SECONDS);
    }

    private static long busyNanos() {
        return ProcessHandle.current().info().totalCpuDuration().orElseThrow().toNanos();
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
                job.addRecording(
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
        job.attach(photos(), "", Optional.empty());
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
