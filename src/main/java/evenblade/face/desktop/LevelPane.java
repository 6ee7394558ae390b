package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.face.app.CheckTake;
import evenblade.face.app.ListenToInput;
import evenblade.face.app.LiveRecording;
import evenblade.input.capture.ChannelLevel;
import evenblade.measure.soundcheck.LevelAim;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;

/**
 * What comes before and after a run: a take of the quiet, that counts down and is refused where it isn't quiet; large
 * bars with the good zone and held peaks, and what to do about them; what is to be known of the run.
 */
final class LevelPane extends JPanel {
    private static final int LOOK_MS = 66; // fifteen times a second
    private static final double QUIET_S = 5; // enough to average the noise, short enough to stand still for
    private static final float LARGE = 3.5f; // read from two steps away; ours

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final InputFields fields;
    private final Complaint complaint;
    private final transient Runnable changed;
    private final LevelBars bars = new LevelBars();
    private final JLabel aim = new JLabel("– – –");
    private final JLabel clipped = new JLabel(" ");
    private final Lines lines = new Lines();
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<ListenToInput> listening = Optional.empty();
    private transient Optional<Runnable> afterwards = Optional.empty();
    private transient Optional<LiveRecording> taking = Optional.empty();
    private boolean opening;
    private boolean judging;

    /** @param changed told when the input is in use and when no more */
    LevelPane(Navigator bench, OpenJob job, InputFields fields, Complaint complaint, Runnable changed) {
        super(new MigLayout("insets 8 0 0 0, wrap 1, hidemode 3", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.fields = fields;
        this.complaint = complaint;
        this.changed = changed;
        setName("level check");
        aim.setName("level aim");
        aim.setFont(aim.getFont().deriveFont(java.awt.Font.BOLD, aim.getFont().getSize2D() * LARGE));
        clipped.setName("level clipped");
        add(aim, "wmin 0");
        add(bars, "hmin " + 6 * Look.em());
        add(clipped, "wmin 0");
        add(lines, "wmin 100, hmin 60");
        explain();
    }

    /** What is to be done, before anything is. */
    void explain() {
        aim.setText("– – –");
        aim.setForeground(Look.ink(Ink.QUIET_TEXT));
        bars.setVisible(false);
        lines.clear();
        lines.strong("The space bar goes on to the next step; a step's own button skips or repeats it");
        lines.say("▸ 1  Say which input, where the sensor sits, and its full scale where it is known.");
        lines.say("▸ 2  Engine standing, sensor fixed where it will stay: five seconds of quiet. They show which "
                + "hum and noise comes from the input and not from the run.");
        lines.say(
                "▸ 3  Run the engine at the fastest speed you will hold, and set the gain until the peak stays in the "
                        + "good zone. Nothing is written meanwhile. Switch automatic gain and noise suppression off. A sensor on a serial port has no level "
                        + "to set.");
        lines.say("▸ 4  Leave the gain alone, and record. Everybody stays clear of the propeller and its plane.");
        lines.say("▸ 5  See what is to be known of the run.");
        lines.done();
    }

    boolean listening() {
        return listening.isPresent();
    }

    /** Whether the input is being opened, which can't be broken off. */
    boolean opening() {
        return opening;
    }

    /** Whether a quiet take is under way. */
    boolean taking() {
        return taking.isPresent() || judging;
    }

    /** Whether the input is in use, or about to be. */
    boolean busy() {
        return opening || listening() || taking();
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

    void listen() {
        try {
            ListenToInput.Request request = new ListenToInput.Request(
                    fields.device(),
                    fields.wish(),
                    OptionalDouble.empty(),
                    fields.mark(),
                    Optional.empty(),
                    job.quietTake(fields.input()));
            opening = true;
            bench.begin("Opening the input", progress -> ListenToInput.prepare(request), this::hear, this::wrong);
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private void hear(ListenToInput input) {
        opening = false;
        listening = Optional.of(input);
        changed.run();
        told("Run the engine at the fastest speed you will hold, and watch the bar");
        lines.say("Listening to " + input.device() + ". Nothing is written.");
        lines.done();
        looks.start();
        bench.work().alongside("Listening", progress -> input.listen(), this::heard, this::wrong);
    }

    private void heard(ListenToInput.Heard heard) {
        Optional<Runnable> then = afterwards;
        afterwards = Optional.empty();
        ended();
        told("The level as it was last", heard.warnings());
        then.ifPresent(Runnable::run);
    }

    /** What is to be known of a run that is in the job now. */
    void tell(List<Warning> warnings) {
        aim.setText("✓ The run is in the job");
        aim.setForeground(Look.ink(Ink.TEXT));
        bars.setVisible(false);
        clipped.setText(" ");
        told("To know about it", warnings);
    }

    private void told(String heading) {
        lines.clear();
        lines.strong(heading);
    }

    private void told(String heading, List<Warning> warnings) {
        told(heading);
        for (Warning warning : warnings) {
            lines.say("!  " + Words.warning(warning));
        }
        if (warnings.isEmpty()) {
            lines.say("Nothing to complain of.");
        }
        lines.done();
    }

    void takeQuiet() {
        try {
            Path file = Files.createTempDirectory("evenblade").resolve(fields.sensor() ? "quiet.csv" : "quiet.wav");
            file.getParent().toFile().deleteOnExit();
            Supplier<LiveRecording> input = fields.quiet(file, QUIET_S);
            opening = true;
            bench.begin("Opening the input", progress -> input.get(), this::takeQuiet, this::wrong);
        } catch (IOException e) {
            complaint.show("The disk refused a file for the quiet take: " + e.getMessage());
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private void takeQuiet(LiveRecording run) {
        opening = false;
        taking = Optional.of(run);
        changed.run();
        told("Engine standing, nobody speaks, nothing is touched");
        lines.done();
        looks.start();
        bench.work().alongside("Quiet take", progress -> run.record(), this::taken, this::wrong);
    }

    private void taken(LiveRecording.Recorded recorded) {
        Path file = recorded.file();
        file.toFile().deleteOnExit();
        Optional<String> mark = fields.mark();
        judging = true;
        ended();
        bench.work()
                .alongside(
                        "Listening to the quiet",
                        progress -> CheckTake.quiet(file, job.record().installation(), mark),
                        faults -> judged(file, faults),
                        why -> {
                            judging = false;
                            wrong(why);
                        });
    }

    private void judged(Path file, List<Warning> faults) {
        judging = false;
        boolean good = faults.isEmpty();
        if (good) {
            job.quietTake(fields.input(), file);
        } else {
            complaint.show(Words.warning(faults.get(0)) + ". "
                    + Phrases.cure(faults.get(0).code()));
        }
        aim.setText(good ? "✓ Quiet taken" : "✕ That was not quiet");
        aim.setForeground(Look.ink(good ? Ink.TEXT : Ink.LIMIT));
        told(good ? "It is kept until the program ends; the runs that follow are compared with it" : "It is not kept");
        lines.done();
        changed.run();
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
        changed.run();
    }

    private void look() {
        listening.ifPresent(input -> {
            show(input.view().levels());
            show(input.aim());
        });
        taking.ifPresent(run -> {
            show(run.view().levels());
            aim.setText("Quiet, please: "
                    + (int) Math.ceil(Math.max(0, QUIET_S - run.view().seconds())) + " s");
            aim.setForeground(Look.ink(Ink.CRANK));
        });
    }

    private void show(List<ChannelLevel> levels) {
        List<ChannelLevel> clipping = levels.stream()
                .filter(level -> level.clip() != ChannelLevel.Clip.NONE)
                .toList();
        bars.setVisible(!levels.isEmpty());
        bars.show(levels);
        clipped.setText(LevelBars.clipText(clipping));
        clipped.setToolTipText(clipping.isEmpty() ? null : LevelBars.clipTip(clipping));
        clipped.setForeground(Look.ink(clipping.isEmpty() ? Ink.QUIET_TEXT : Ink.LIMIT));
    }

    private void show(LevelAim now) {
        aim.setText(
                switch (now) {
                    case SILENT -> "✕ Nothing comes in";
                    case TURN_UP -> "▲ Turn the gain up";
                    case GOOD -> "✓ Good";
                    case TURN_DOWN -> "▼ Turn the gain down";
                    case OVERDRIVEN -> "✕ Overdriven before the gain";
                });
        aim.setForeground(Look.ink(now == LevelAim.GOOD ? Ink.TEXT : Ink.LIMIT));
    }
}
