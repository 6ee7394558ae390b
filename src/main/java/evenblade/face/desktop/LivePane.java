package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.base.problem.BadInput;
import evenblade.face.app.RecordRun;
import evenblade.input.capture.InputDevice;
import evenblade.input.capture.SoundDevices;
import evenblade.keep.job.Event;
import evenblade.tell.document.Phrases;
import java.awt.BorderLayout;
import java.awt.KeyboardFocusManager;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import javax.swing.SwingUtilities;
import javax.swing.Timer;
import javax.swing.text.JTextComponent;
import net.miginfocom.swing.MigLayout;

/** A ground run as it happens: which input, how loud, then speed, orders and spectrum to be read at two metres. */
final class LivePane extends JPanel {
    /** Fifteen looks a second. */
    private static final int LOOK_MS = 66;

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final InputFields fields;
    private transient List<Warning> urgentTold = List.of();
    private final JButton start = Look.main(new JButton());
    private final LiveScreen screen;
    private final LevelPane level;
    private final JPanel buttons;
    private final JPanel seen = new JPanel(new BorderLayout());
    private final Complaint complaint = new Complaint();
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<RecordRun> running = Optional.empty();
    private transient Optional<Runnable> afterwards = Optional.empty();
    private boolean opening;

    LivePane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 10 14 10 14, gapy 6, wrap 1, hidemode 2", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("live");
        fields = new InputFields(bench.drafts(), job);
        level = new LevelPane(bench, job, fields, complaint, this::levelHeld, start::requestFocusInWindow);
        screen = new LiveScreen(job.record().installation().propeller().blades(), bench.work());
        JPanel head = new JPanel(new MigLayout("insets 0, hidemode 3", "[grow]12[]12[]"));
        head.add(Look.heading("Ground run"));
        buttons = level.buttons();
        head.add(buttons);
        start.setName("record");
        start.addActionListener(e -> startOrStop());
        head.add(start);
        add(head);
        add(fields);
        add(complaint);
        add(seen, "push, grow, wmin 200, hmin 200");
        seen.add(level);
        words();
        registerKeyboardAction(e -> space(), KeyStroke.getKeyStroke(KeyEvent.VK_SPACE, 0), WHEN_IN_FOCUSED_WINDOW);
        start.setEnabled(false);
        bench.work().begin("Looking for inputs", progress -> SoundDevices.list(), this::show, complaint::show);
    }

    private void show(List<InputDevice> inputs) {
        fields.show(inputs);
        start.setEnabled(!inputs.isEmpty());
        level.allow(!inputs.isEmpty());
        if (inputs.isEmpty()) {
            complaint.show("This machine shows no microphone or line input. Plug one in and open this page again, or "
                    + "record with something else and add the file as a run.");
        }
        start.requestFocusInWindow();
    }

    /** Space belongs to a text while one is being typed. */
    private void space() {
        boolean typing =
                KeyboardFocusManager.getCurrentKeyboardFocusManager().getFocusOwner() instanceof JTextComponent text
                        && text.isEditable()
                        && text.isEnabled();
        if (isShowing() && (running.isPresent() || !typing)) {
            startOrStop();
        }
    }

    private void startOrStop() {
        if (opening || !start.isEnabled()) {
            return;
        }
        if (running.isPresent()) {
            stop();
        } else {
            complaint.clear();
            level.quit(this::begin);
        }
    }

    private void stop() {
        complaint.clear();
        running.ifPresent(RecordRun::stop);
        start.setEnabled(false);
        bench.passing("Taking the run into the job…");
    }

    private void begin() {
        RecordRun.Request request;
        int steps;
        try {
            request = fields.run(job.quietTake());
            steps = fields.stepCount();
        } catch (BadInput e) {
            complaint.show(e.getMessage());
            return;
        }
        opening = true;
        levelHeld(true);
        bench.work()
                .begin(
                        "Opening the input",
                        progress -> RecordRun.prepare(request),
                        run -> record(run, steps),
                        wrong -> {
                            opening = false;
                            levelHeld(false);
                            complaint.show(wrong);
                        });
    }

    /** The recording has a thread of its own, so that nothing else that is worked at holds it up. */
    private void record(RecordRun run, int steps) {
        opening = false;
        running = Optional.of(run);
        words();
        show(screen);
        screen.began(steps);
        looks.start();
        start.requestFocusInWindow();
        run.leftovers().forEach(warning -> bench.say(Words.warning(warning)));
        bench.passing("Recording " + run.device());
        bench.work().alongside("Recording", progress -> run.record(), this::ended, wrong -> {
            stopped();
            complaint.show(wrong);
            afterwards = Optional.empty();
        });
    }

    private void ended(RecordRun.Recorded recorded) {
        stopped();
        bench.drafts().forget(job.draft("live"));
        List<Event> event = recorded.event().map(List::<Event>of).orElse(List.of());
        Optional<Runnable> then = afterwards;
        afterwards = Optional.empty();
        if (recorded.warnings().isEmpty() || then.isPresent()) {
            bench.entered(event);
        } else {
            bench.entered(List.of());
            level.tell(recorded.warnings(), () -> event.forEach(bench::showEntry));
        }
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

    private void stopped() {
        urgentTold = List.of();
        running = Optional.empty();
        looks.stop();
        show(level);
        levelHeld(false);
        words();
    }

    private void show(JPanel panel) {
        seen.removeAll();
        seen.add(panel);
        seen.revalidate();
        seen.repaint();
    }

    private void words() {
        fields.setVisible(running.isEmpty());
        buttons.setVisible(running.isEmpty());
        if (SwingUtilities.getAncestorOfClass(JobPane.class, this) instanceof JobPane around) {
            around.giveRoom(running.isPresent());
        }
        start.setText(running.isPresent() ? "Stop recording (space)" : "Start recording (space)");
        start.setEnabled(true);
    }

    /** Whether the input is in use, so that nothing about it can be changed. */
    private void levelHeld(boolean held) {
        fields.open(!held);
        if (held && running.isEmpty()) {
            show(level);
        }
        level.allow(!held || level.listening());
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
        start.requestFocus();
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
