package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.face.app.ListenToInput;
import evenblade.face.app.RecordRun;
import evenblade.input.capture.ChannelLevel;
import evenblade.measure.soundcheck.LevelAim;
import evenblade.tell.chart.Ink;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;

/** Sets the level right before a run: large bars with held peaks, what to do about them, and a take of the quiet. */
final class LevelPane extends JPanel {
    private static final int LOOK_MS = 66; // fifteen times a second
    private static final double QUIET_S = 5; // enough to average the noise, short enough to stand still for
    private static final long LATELY_NANOS = 3_000_000_000L; // long enough to look up from the cable
    private static final float LARGE = 3.5f; // read from two steps away; ours

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final InputFields fields;
    private final Complaint complaint;
    private final transient Consumer<Boolean> held;
    private final transient Runnable quietTaken;
    private final JButton listen = new JButton();
    private final JButton quiet = new JButton("Quiet take, 5 s");
    private final LevelBars bars = new LevelBars();
    private final JLabel aim = new JLabel("– – –");
    private final JLabel clipped = new JLabel(" ");
    private final Lines lines = new Lines();
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<ListenToInput> listening = Optional.empty();
    private transient Optional<Runnable> afterwards = Optional.empty();
    private transient Optional<RecordRun> taking = Optional.empty();
    private long clippedSoFar;
    private long clippedAtNanos;
    private boolean opening;

    /**
     * The check.
     *
     * @param held told when the input is in use and when no more
     * @param quietTaken told when there is a quiet take, and the run comes next
     */
    LevelPane(
            Navigator bench,
            OpenJob job,
            InputFields fields,
            Complaint complaint,
            Consumer<Boolean> held,
            Runnable quietTaken) {
        super(new MigLayout("insets 8 0 0 0, wrap 1, hidemode 3", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.fields = fields;
        this.complaint = complaint;
        this.held = held;
        this.quietTaken = quietTaken;
        setName("level check");
        listen.setName("listen");
        listen.setMnemonic('L');
        listen.addActionListener(e -> startOrStop());
        quiet.setName("quiet take");
        quiet.setMnemonic('Q');
        quiet.addActionListener(e -> takeQuiet());
        aim.setName("level aim");
        aim.setFont(aim.getFont().deriveFont(java.awt.Font.BOLD, aim.getFont().getSize2D() * LARGE));
        clipped.setName("level clipped");
        add(aim, "wmin 0");
        add(bars, "hmin " + 6 * Look.em());
        add(clipped, "wmin 0");
        add(lines, "wmin 100, hmin 60");
        words();
        explain();
    }

    /** The buttons that begin it. */
    JPanel buttons() {
        JPanel row = new JPanel(new MigLayout("insets 0", "[][]"));
        row.add(quiet);
        row.add(listen);
        return row;
    }

    private void explain() {
        lines.clear();
        lines.strong("Before the run");
        lines.say(
                "▸ Engine standing, sensor fixed where it will stay: take five seconds of quiet. Hum and noise of the "
                        + "input are told from the run by it.");
        lines.say("▸ Then check the level: run the engine at the fastest speed you will hold, watch the bar, and set "
                + "the gain until it says good. Nothing is written meanwhile.");
        lines.say("▸ Switch automatic gain and noise suppression off where the machine has them.");
        lines.say("▸ Then leave the gain alone, and start the recording with the space bar.");
        lines.done();
    }

    private void words() {
        listen.setText(listening.isPresent() ? "Level is set" : "Check the level");
        boolean taken = job.quietTake().isPresent();
        quiet.setText(taken ? "Quiet take, 5 s  ✓" : "Quiet take, 5 s");
        leaveSpace(quiet, taken);
        leaveSpace(listen, taken);
    }

    /** After the quiet take the space bar starts the run, whichever button has the focus: Alt and a letter press it. */
    private static void leaveSpace(JButton button, boolean left) {
        for (String key : List.of("SPACE", "released SPACE")) {
            if (left) {
                button.getInputMap().put(KeyStroke.getKeyStroke(key), "none");
            } else {
                button.getInputMap().remove(KeyStroke.getKeyStroke(key));
            }
        }
    }

    /** Whether the buttons can be used. */
    void allow(boolean allowed) {
        listen.setEnabled(allowed);
        quiet.setEnabled(allowed && listening.isEmpty());
    }

    boolean listening() {
        return listening.isPresent();
    }

    /** Ends listening, and then does something; at once where nothing listens. */
    void quit(Runnable then) {
        if (listening.isPresent()) {
            afterwards = Optional.of(then);
            listening.get().stop();
        } else if (taking.isEmpty() && !opening) {
            then.run();
        }
    }

    private void startOrStop() {
        if (listening.isPresent()) {
            quit(() -> {});
            return;
        }
        complaint.clear();
        try {
            ListenToInput.Request request = new ListenToInput.Request(
                    fields.device(),
                    fields.wish(),
                    OptionalDouble.empty(),
                    fields.mark(),
                    Optional.empty(),
                    job.quietTake());
            opening = true;
            held.accept(true);
            bench.work()
                    .begin("Opening the input", progress -> ListenToInput.prepare(request), this::hear, this::wrong);
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private void hear(ListenToInput input) {
        opening = false;
        clippedSoFar = 0;
        listening = Optional.of(input);
        held.accept(true);
        words();
        lines.clear();
        lines.strong("Run the engine at the fastest speed you will hold, and watch the bar");
        lines.say("Listening to " + input.device() + ". Nothing is written.");
        lines.done();
        looks.start();
        bench.work().alongside("Listening", progress -> input.listen(), this::heard, this::wrong);
    }

    private void heard(ListenToInput.Heard heard) {
        ended();
        told("The level as it was last", heard.warnings());
        Optional<Runnable> then = afterwards;
        afterwards = Optional.empty();
        then.ifPresent(Runnable::run);
    }

    /** What is to be known of a run that is in the job now. */
    void tell(List<Warning> warnings, Runnable show) {
        told("The run is in the job. To know about it", warnings);
        JButton see = new JButton("Look at the run");
        see.setName("see run");
        see.addActionListener(e -> show.run());
        lines.put(see);
        lines.done();
    }

    private void told(String heading) {
        lines.clear();
        lines.strong(heading);
        lines.done();
    }

    private void told(String heading, List<Warning> warnings) {
        told(heading);
        warnings.forEach(warning -> lines.say("!  " + Words.warning(warning)));
        if (warnings.isEmpty()) {
            lines.say("Nothing to complain of.");
        }
        lines.done();
    }

    private void takeQuiet() {
        complaint.clear();
        try {
            Path file = Files.createTempDirectory("evenblade").resolve("quiet.wav");
            file.getParent().toFile().deleteOnExit();
            RecordRun.Request request = fields.quiet(file, QUIET_S);
            opening = true;
            held.accept(true);
            bench.work()
                    .begin("Opening the input", progress -> RecordRun.prepare(request), this::takeQuiet, this::wrong);
        } catch (IOException e) {
            complaint.show("The disk refused a file for the quiet take: " + e.getMessage());
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private void takeQuiet(RecordRun run) {
        opening = false;
        taking = Optional.of(run);
        aim.setText("Quiet, please: 5 s");
        looks.start();
        bench.work().alongside("Quiet take", progress -> run.record(), this::taken, this::wrong);
    }

    private void taken(RecordRun.Recorded recorded) {
        recorded.file().toFile().deleteOnExit();
        Optional<Warning> silent = recorded.warnings().stream()
                .filter(warning -> warning.code() == WarningCode.TAKE_SILENT)
                .findFirst();
        if (silent.isEmpty()) {
            job.quietTake(recorded.file());
        }
        ended();
        if (silent.isPresent()) {
            complaint.show(Words.warning(silent.get()));
        } else {
            told("The quiet take is kept until the program ends; the runs that follow are compared with it");
            quietTaken.run();
        }
    }

    private void wrong(String why) {
        ended();
        complaint.show(why);
        afterwards = Optional.empty();
    }

    private void ended() {
        opening = false;
        listening = Optional.empty();
        taking = Optional.empty();
        looks.stop();
        words();
        held.accept(false);
    }

    private void look() {
        listening.ifPresent(input -> {
            show(input.view().levels());
            show(input.aim());
        });
        taking.ifPresent(run -> show(run.view().levels()));
    }

    private void show(List<ChannelLevel> levels) {
        long count = levels.stream().mapToLong(ChannelLevel::clipped).sum();
        if (count > clippedSoFar) {
            clippedSoFar = count;
            clippedAtNanos = System.nanoTime();
        }
        boolean lately = count > 0 && System.nanoTime() - clippedAtNanos < LATELY_NANOS;
        bars.show(levels, lately);
        clipped.setText(
                lately
                        ? "✕ CLIPPED: samples are cut off. Turn the gain down."
                        : count == 0 ? "Not clipped." : "Was clipped; not any more.");
        clipped.setForeground(Look.ink(lately ? Ink.LIMIT : Ink.QUIET_TEXT));
    }

    private void show(LevelAim now) {
        aim.setText(
                switch (now) {
                    case SILENT -> "✕ Nothing comes in";
                    case TURN_UP -> "▲ Turn the gain up";
                    case GOOD -> "✓ Good";
                    case TURN_DOWN -> "▼ Turn the gain down";
                });
        aim.setForeground(Look.ink(now == LevelAim.GOOD ? Ink.TEXT : Ink.LIMIT));
    }
}
