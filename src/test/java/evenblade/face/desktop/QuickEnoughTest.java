package evenblade.face.desktop;

import static org.assertj.core.api.Assertions.assertThat;

import evenblade.face.app.AddRun;
import evenblade.face.app.StartJob;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.keep.practice.PracticeInstallation;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.swing.JScrollPane;
import javax.swing.SwingUtilities;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("screen")
@DisplayName("The desktop keeps up with a hand")
class QuickEnoughTest {
    private static final int RUNS = 40;

    @TempDir
    Path scratch;

    @Test
    @Tag("long")
    @DisplayName("A job of 40 runs opens and scrolls; how long it takes is printed")
    void aJobOfFortyRunsOpensAndScrolls() throws IOException {
        Display.require();
        Path job = jobOfFortyRuns();
        Hands hands = Hands.open(scratch.resolve("memory"), 1280, 800);
        EventThreadWatch watch = EventThreadWatch.begin();
        try {
            long began = System.nanoTime();
            Hands.onEventThread(() -> {
                hands.window().openJob(job);
                return null;
            });
            hands.await("40 runs", () -> hands.find("timeline")
                    .filter(list -> ((TimelineList) list).getModel().getSize() == RUNS)
                    .isPresent());
            double opened = (System.nanoTime() - began) / 1e9;
            hands.awaitRest();
            watch.forget();
            for (int pixel : steps()) {
                Hands.onEventThread(() -> {
                    JScrollPane scroll =
                            (JScrollPane) SwingUtilities.getAncestorOfClass(JScrollPane.class, hands.named("timeline"));
                    scroll.getVerticalScrollBar().setValue(pixel);
                    scroll.paintImmediately(scroll.getVisibleRect());
                    return null;
                });
            }
            System.out.printf(
                    Locale.ROOT,
                    "40 runs open in %.2f s; events over 50 ms while scrolling: %s%n",
                    opened,
                    watch.blocksMs());
            TimelineList timeline = (TimelineList) hands.named("timeline");
            assertThat(timeline.getFirstVisibleIndex()).as("scrolled").isPositive();
        } finally {
            watch.end();
            hands.close();
        }
    }

    @Test
    @DisplayName("Everything that can be looked at is reached by a key, and its first field has the focus")
    void everythingIsReachedByAKey() throws IOException {
        Display.require();
        Path job = scratch.resolve("job");
        StartJob.start(job, PracticeInstallation.geared(), Optional.empty());
        Hands hands = Hands.open(scratch.resolve("memory"), 1000, 700);
        try {
            Hands.onEventThread(() -> {
                hands.window().openJob(job);
                return null;
            });
            hands.awaitNamed("timeline");
            int[] keys = {KeyEvent.VK_T, KeyEvent.VK_B, KeyEvent.VK_U, KeyEvent.VK_I, KeyEvent.VK_K, KeyEvent.VK_E};
            String[] fields = {"blade 1", "blade 1", "total", "recording", "text", "text"};
            for (int i = 0; i < keys.length; i++) {
                String field = fields[i];
                hands.press(KeyEvent.VK_CONTROL, keys[i]);
                hands.await(
                        "the focus in '" + field + "'",
                        () -> hands.find(field).filter(f -> f.isFocusOwner()).isPresent());
                hands.press(KeyEvent.VK_ESCAPE);
            }
            hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_6);
            hands.await(
                    "the timeline to make room", () -> hands.find("timeline").isEmpty());
            hands.press(KeyEvent.VK_CONTROL, KeyEvent.VK_5);
            hands.awaitNamed("run card");
            hands.await(
                    "the timeline to come back",
                    () -> hands.find("timeline").filter(t -> t.getWidth() > 100).isPresent());
        } finally {
            hands.close();
        }
    }

    private static List<Integer> steps() {
        List<Integer> steps = new ArrayList<>();
        for (int pixel = 0; pixel < 2400; pixel += 40) {
            steps.add(pixel);
        }
        return steps;
    }

    private Path jobOfFortyRuns() throws IOException {
        Path job = scratch.resolve("forty");
        StartJob.start(job, PracticeInstallation.geared(), Optional.of("Forty runs"));
        for (int run = 1; run <= RUNS; run++) {
            Path table = scratch.resolve("run-" + run + ".csv");
            StringBuilder rows = new StringBuilder("time (s),across (m/s2)\n");
            for (int i = 0; i < 1500; i++) {
                rows.append(String.format(
                        Locale.ROOT, "%.3f,%.4f%n", i / 500.0, Math.sin(2 * Math.PI * (30 + 0.1 * run) * i / 500)));
            }
            Files.writeString(table, rows);
            AddRun.add(job, table, NewRun.labelled("run number " + run, RunSettings.NONE));
        }
        return job;
    }
}
