package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.face.app.LiveRecording;
import evenblade.keep.job.Event;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.Phrases;
import java.awt.BorderLayout;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javax.swing.AbstractButton;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;

/**
 * A ground run as it happens, step by step: which input and scale, the quiet, the level, the recording with speed and
 * orders to be read at two metres, the result. The space bar always means the next step; each step's own button skips,
 * repeats or goes back.
 */
final class LivePane extends JPanel {
    /** Fifteen looks a second. */
    private static final int LOOK_MS = 66;

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final InputFields fields;
    private transient List<Warning> urgentTold = List.of();
    private final JButton next = Look.main(new JButton());
    private final Map<LiveStep, JButton> strip = new EnumMap<>(LiveStep.class);
    private final JPanel steps = new JPanel(new MigLayout("insets 0, gap 4", ""));
    private final LiveScreen screen;
    private final LevelPane level;
    private final JPanel seen = new JPanel(new BorderLayout());
    private final Complaint complaint = new Complaint();
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<LiveRecording> running = Optional.empty();
    private transient Optional<Runnable> afterwards = Optional.empty();
    private transient Optional<Event> result = Optional.empty();
    private LiveStep step = LiveStep.INPUT;
    private boolean inputs;
    private boolean opening;
    private boolean stopping;

    LivePane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 10 14 10 14, gapy 6, wrap 1, hidemode 2", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("live");
        fields = new InputFields(bench.drafts(), job, this::words);
        level = new LevelPane(bench, job, fields, complaint, this::words);
        screen = new LiveScreen(bench.work());
        JPanel head = new JPanel(new MigLayout("insets 0, hidemode 3", "[]12[grow]12[]"));
        head.add(Look.heading("Ground run"));
        for (LiveStep each : LiveStep.values()) {
            JButton button = new JButton();
            button.setName(each.button());
            button.setMargin(new java.awt.Insets(4, 8, 4, 8));
            button.setMnemonic('1' + each.ordinal());
            // The focus stays on the next step, or in a field.
            button.setFocusable(false);
            button.addActionListener(e -> go(each));
            strip.put(each, button);
            steps.add(button, "wmin 30");
        }
        head.add(steps, "wmin 0");
        next.setName("next live step");
        next.addActionListener(e -> next());
        head.add(next);
        add(head);
        add(fields);
        add(complaint);
        add(seen, "push, grow, wmin 200, hmin 200");
        seen.add(level);
        leaveSpace(this);
        registerKeyboardAction(e -> space(), KeyStroke.getKeyStroke(KeyEvent.VK_SPACE, 0), WHEN_IN_FOCUSED_WINDOW);
        words();
        Path folder = job.folder();
        bench.begin("Looking for inputs", progress -> InputFields.Inputs.of(folder), this::show, complaint::show);
    }

    /** Nothing but the next step answers to the space bar, whatever has the focus; a text takes it while typed in. */
    private static void leaveSpace(JComponent in) {
        for (java.awt.Component each : in.getComponents()) {
            if (each instanceof AbstractButton button) {
                for (String key : List.of("SPACE", "released SPACE")) {
                    button.getInputMap().put(KeyStroke.getKeyStroke(key), "none");
                }
            } else if (each instanceof JComponent inner && !(each instanceof JTextComponent)) {
                inner.getInputMap(WHEN_ANCESTOR_OF_FOCUSED_COMPONENT).put(KeyStroke.getKeyStroke("SPACE"), "none");
                leaveSpace(inner);
            }
        }
    }

    private void show(InputFields.Inputs found) {
        fields.show(found);
        inputs = true;
        if (found.sound().isEmpty()) {
            complaint.show("This machine shows no microphone or line input. Plug one in and open this page again, name "
                    + "the serial port of a sensor, or record with something else and add the file as a run.");
        }
        words();
        // After whatever the window gives the focus to when it shows a page.
        SwingUtilities.invokeLater(next::requestFocusInWindow);
    }

    /** Space belongs to a text while one is being typed. */
    private void space() {
        boolean typing =
                KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent text
                        && text.isEditable()
                        && text.isEnabled();
        if (isShowing() && (running.isPresent() || !typing)) {
            next();
        }
    }

    private void next() {
        if (!next.isEnabled()) {
            return;
        }
        if (running.isPresent()) {
            stop();
        } else if (step == LiveStep.RESULT) {
            result.ifPresentOrElse(bench::showEntry, () -> go(LiveStep.INPUT));
        } else {
            go(following());
        }
    }

    /** A quiet take that was refused is taken again; one that is there already isn't. */
    private LiveStep following() {
        return switch (step) {
            case INPUT, QUIET -> {
                if (job.quietTake(fields.input()).isEmpty()) {
                    yield LiveStep.QUIET;
                }
                yield fields.sensor() ? LiveStep.RECORD : LiveStep.LEVEL;
            }
            case LEVEL, RECORD -> LiveStep.RECORD;
            case RESULT -> LiveStep.INPUT;
        };
    }

    private void go(LiveStep to) {
        if (opening || running.isPresent() || !inputs || level.opening() || level.taking()) {
            return;
        }
        complaint.clear();
        if (to == LiveStep.LEVEL && level.listening()) {
            level.quit(this::words);
            return;
        }
        level.quit(() -> {
            step = to;
            switch (to) {
                case INPUT -> level.explain();
                case QUIET -> level.takeQuiet();
                case LEVEL -> level.listen();
                case RECORD -> begin();
                case RESULT -> {}
            }
            words();
            next.requestFocusInWindow();
        });
    }

    private void stop() {
        complaint.clear();
        running.ifPresent(LiveRecording::stop);
        stopping = true;
        words();
        bench.passing("Taking the run into the job…");
    }

    private void begin() {
        Supplier<LiveRecording> input;
        int count;
        try {
            input = fields.run(job.quietTake(fields.input()));
            count = fields.stepCount();
        } catch (BadInput e) {
            complaint.show(e.getMessage());
            step = LiveStep.INPUT;
            return;
        }
        opening = true;
        result = Optional.empty();
        bench.begin("Opening the input", progress -> input.get(), run -> record(run, count), wrong -> {
            opening = false;
            step = LiveStep.INPUT;
            words();
            complaint.show(wrong);
        });
    }

    /** The recording has a thread of its own, so that nothing else that is worked at holds it up. */
    void record(LiveRecording run, int count) {
        complaint.clear();
        opening = false;
        running = Optional.of(run);
        words();
        show(screen);
        screen.began(count, run);
        looks.start();
        next.requestFocusInWindow();
        run.leftovers().forEach(warning -> bench.say(Words.warning(warning)));
        bench.passing("Recording " + run.device());
        bench.work().alongside("Recording", progress -> run.record(), this::ended, wrong -> {
            stopped(LiveStep.INPUT);
            complaint.show(wrong);
            afterwards = Optional.empty();
        });
    }

    private void ended(LiveRecording.Recorded recorded) {
        result = recorded.event();
        stopped(LiveStep.RESULT);
        bench.drafts().forget(job.draft("live"));
        Optional<Runnable> then = afterwards;
        afterwards = Optional.empty();
        bench.entered(List.of());
        level.tell(recorded.warnings());
        then.ifPresent(Runnable::run);
    }

    /** What can't wait for the end of the take, once, and until it is over. */
    private void tellUrgent(List<Warning> urgent) {
        if (!urgent.equals(urgentTold)) {
            urgentTold = urgent;
            if (urgent.isEmpty()) {
                complaint.clear();
            } else {
                complaint.show(Words.warning(urgent.get(0)) + ". "
                        + Phrases.cure(urgent.get(0).code()));
            }
        }
    }

    private void stopped(LiveStep at) {
        urgentTold = List.of();
        running = Optional.empty();
        stopping = false;
        step = at;
        looks.stop();
        show(level);
        words();
        next.requestFocusInWindow();
    }

    private void show(JPanel panel) {
        seen.removeAll();
        seen.add(panel);
        seen.revalidate();
        seen.repaint();
    }

    /** Everything as the step under way wants it. */
    private void words() {
        boolean recording = running.isPresent();
        boolean busy = opening || level.busy();
        fields.setVisible(!recording && step != LiveStep.RESULT);
        fields.open(!recording && !busy);
        if (SwingUtilities.getAncestorOfClass(JobPane.class, this) instanceof JobPane around) {
            around.giveRoom(recording);
        }
        strip.forEach((each, button) -> {
            boolean done =
                    each == LiveStep.QUIET && job.quietTake(fields.input()).isPresent();
            String words = each == LiveStep.LEVEL && level.listening() ? "Level is set" : each.words();
            button.setText((each.ordinal() + 1) + " " + words + (done ? " ✓" : ""));
            button.setToolTipText("Alt+" + (each.ordinal() + 1));
            button.setBorder(BorderFactory.createCompoundBorder(
                    BorderFactory.createMatteBorder(0, 0, 3, 0, Look.ink(each == step ? Ink.CRANK : Ink.SHADE)),
                    BorderFactory.createEmptyBorder(4, 8, 4, 8)));
            button.setEnabled(inputs
                    && !recording
                    && !opening
                    && !level.opening()
                    && !level.taking()
                    && each != LiveStep.RESULT
                    && !(each == LiveStep.LEVEL && fields.sensor()));
        });
        next.setText(nextWords() + " (space)");
        next.setEnabled(inputs && !opening && !level.opening() && !level.taking() && !stopping);
    }

    private String nextWords() {
        if (running.isPresent()) {
            return "Stop recording";
        }
        if (step == LiveStep.RESULT) {
            return result.isPresent() ? "Look at the run" : "Begin anew";
        }
        return switch (following()) {
            case QUIET -> step == LiveStep.QUIET ? "Take the quiet again" : "Take the quiet";
            case LEVEL -> "Check the level";
            case RECORD -> step == LiveStep.LEVEL ? "Level is set: record" : "Start recording";
            case INPUT, RESULT -> "Begin anew";
        };
    }

    private void look() {
        running.ifPresent(run -> {
            screen.show(run.view());
            tellUrgent(run.urgent());
        });
    }

    /** Whether a recording is under way, which must not be left by accident. */
    boolean recording() {
        return opening || running.isPresent();
    }

    /** The focus back to where space ends the recording. */
    void remind() {
        complaint.show("A recording is under way. Stop it first (space); then the page can be left.");
        next.requestFocus();
    }

    /** Ends the recording, and does something once the run is safely in the job. */
    void stopThen(Runnable then) {
        afterwards = Optional.of(then);
        stop();
    }

    @Override
    public void removeNotify() {
        level.quit(() -> {});
        super.removeNotify();
    }
}
