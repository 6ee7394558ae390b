package evenblade.face.desktop;

import evenblade.face.app.ShowJob;
import evenblade.keep.job.EvidenceCheck.Thoroughness;
import evenblade.keep.job.JobRecord;
import java.nio.file.Path;

/** A window with a memory of its own, and the work that every test in it begins with. */
final class Workplace implements AutoCloseable {
    static final int WIDTH = 1280;
    static final int HEIGHT = 800;

    private final Path scratch;
    private final Hands hands;

    private Workplace(Path scratch, Hands hands) {
        this.scratch = scratch;
        this.hands = hands;
    }

    /** Opens the window; without a display the test is skipped, or fails where one was promised. */
    static Workplace in(Path scratch) {
        return in(scratch, WIDTH, HEIGHT);
    }

    static Workplace in(Path scratch, int width, int height) {
        Display.require();
        return new Workplace(scratch, Hands.open(memory(scratch), width, height));
    }

    /** Where such a window remembers looks and drafts. */
    static Path memory(Path scratch) {
        return scratch.resolve("memory");
    }

    Hands hands() {
        return hands;
    }

    /** Begins a job by typing: a geared four with three blades. */
    Path beginJob(String name) {
        Path folder = typeNewJob(name);
        hands.click("begin");
        hands.awaitNamed("timeline");
        return folder;
    }

    /** Fills in the form of a new job without beginning it. */
    Path typeNewJob(String name) {
        Path folder = scratch.resolve(name);
        hands.click("new");
        hands.type("folder", folder.toString());
        hands.type("aircraft", "Invented two-seater");
        hands.choose("cycle", "four-stroke");
        hands.type("cylinders", "4");
        hands.type("idle rpm", "1600");
        hands.type("max rpm", "5600");
        hands.type("driving teeth", "21");
        hands.type("driven teeth", "51");
        hands.type("blades", "3");
        hands.type("diameter", "1.70 m");
        hands.type("track limit", "1/8 in");
        hands.type("limit source", "invented maker's sheet");
        return folder;
    }

    /** Types the readings of a round of tip marks, and waits for what they come to. */
    void typeMarks(String... readings) {
        hands.click("add tip marks");
        for (int i = 0; i < readings.length; i++) {
            hands.type("reading " + (i + 1), readings[i]);
        }
        hands.await("the picture of the tips", () -> hands.find("says")
                .filter(says -> ((WrappedLabel) says).getText().contains("limit"))
                .isPresent());
    }

    /** Opens a job that is there already. */
    void open(Path job) {
        Hands.onEventThread(() -> {
            hands.window().openJob(job);
            return null;
        });
        hands.awaitNamed("timeline");
        hands.awaitRest();
    }

    static JobRecord record(Path folder) {
        return ShowJob.show(folder, Thoroughness.QUICK).record();
    }

    @Override
    public void close() {
        hands.close();
    }
}
