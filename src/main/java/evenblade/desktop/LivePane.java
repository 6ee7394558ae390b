package evenblade.desktop;

import evenblade.app.ListDevices;
import evenblade.app.RecordRun;
import evenblade.capture.FormatWish;
import evenblade.capture.InputDevice;
import evenblade.job.Conditions;
import evenblade.job.Event;
import evenblade.job.NewRun;
import evenblade.job.RunSettings;
import evenblade.problem.BadInput;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.KeyStroke;
import javax.swing.Timer;
import net.miginfocom.swing.MigLayout;

/** A ground run as it happens: which input, how loud, and speed, orders and spectrum to be read at two metres. */
final class LivePane extends JPanel {
    /** Fifteen looks a second. */
    private static final int LOOK_MS = 66;

    private final transient Bench bench;
    private final transient OpenJob job;
    private final JComboBox<String> device = new JComboBox<>();
    private final JTextField channels = new JTextField(4);
    private final JTextField mark = new JTextField(6);
    private final JTextField label = new JTextField(12);
    private final JButton start = Look.main(new JButton("Start recording (space)"));
    private final LiveScreen screen;
    private final Complaint complaint = new Complaint();
    private final transient Timer looks = new Timer(LOOK_MS, e -> look());
    private transient Optional<RecordRun> running = Optional.empty();
    private boolean waiting;

    LivePane(Bench bench, OpenJob job) {
        super(new MigLayout("insets 14, wrap 1, hidemode 3", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("live");
        screen = new LiveScreen(job.record().installation().propeller().blades(), bench.work());
        add(Look.heading("Record a ground run"));
        add(choices());
        add(complaint);
        add(screen, "wmin 200, hmin 200");
        start.addActionListener(e -> startOrStop());
        registerKeyboardAction(
                e -> startOrStop(), KeyStroke.getKeyStroke(KeyEvent.VK_SPACE, 0), WHEN_ANCESTOR_OF_FOCUSED_COMPONENT);
        bench.work().begin("Looking for inputs", progress -> ListDevices.answer(), this::show, complaint::show);
    }

    private JPanel choices() {
        JPanel row = new JPanel(new MigLayout("insets 0, hidemode 3", "[][grow,fill][][][][][][][]"));
        add(row, "Input", "input", device, "wmin 120");
        add(row, "Channels", "live channels", channels, "");
        channels.putClientProperty("JTextField.placeholderText", "2");
        add(row, "Mark", "live mark", mark, "");
        mark.putClientProperty("JTextField.placeholderText", "none");
        add(row, "Name", "live name", label, "");
        label.putClientProperty("JTextField.placeholderText", "as found, …");
        bench.drafts().keep(job.draft("live"), label);
        start.setName("record");
        row.add(start);
        return row;
    }

    private static void add(JPanel row, String words, String name, JComponent field, String how) {
        JLabel word = new JLabel(words);
        word.setLabelFor(field);
        field.setName(name);
        row.add(word);
        row.add(field, how);
    }

    private void show(List<InputDevice> inputs) {
        inputs.forEach(each -> device.addItem(each.name()));
        start.setEnabled(!inputs.isEmpty());
        if (inputs.isEmpty()) {
            complaint.show("This machine shows no microphone or line input. Plug one in and open this page again, or "
                    + "record with something else and add the file as a run.");
        }
        start.requestFocusInWindow();
    }

    private void startOrStop() {
        if (waiting) {
            return;
        }
        if (running.isPresent()) {
            running.get().stop();
            start.setEnabled(false);
            return;
        }
        complaint.clear();
        try {
            begin(request());
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    private RecordRun.Request request() {
        OptionalDouble count = ImportForm.number(channels, "channels");
        RunSettings settings =
                EntryForm.typed(mark).map(RunSettings.NONE::withMarkChannel).orElse(RunSettings.NONE);
        return new RecordRun.Request(
                job.folder(),
                Optional.ofNullable((String) device.getSelectedItem()),
                new FormatWish(
                        OptionalInt.empty(),
                        count.isPresent() ? OptionalInt.of((int) count.getAsDouble()) : OptionalInt.empty(),
                        OptionalInt.empty()),
                OptionalDouble.empty(),
                new NewRun(Optional.empty(), EntryForm.typed(label), "", settings, Conditions.NONE),
                Optional.empty(),
                Optional.empty());
    }

    private void begin(RecordRun.Request request) {
        waiting = true;
        bench.work().begin("Opening the input", progress -> RecordRun.prepare(request), this::record, wrong -> {
            waiting = false;
            complaint.show(wrong);
        });
    }

    /** The recording has a thread of its own, so that nothing else that is worked at holds it up. */
    private void record(RecordRun run) {
        waiting = false;
        running = Optional.of(run);
        start.setText("Stop recording (space)");
        screen.began();
        looks.start();
        bench.say("Recording " + run.device());
        bench.work().alongside("Recording", progress -> run.record(), this::ended, wrong -> {
            stopped();
            complaint.show(wrong);
        });
    }

    private void ended(RecordRun.Recorded recorded) {
        stopped();
        bench.drafts().forget(job.draft("live"));
        recorded.warnings().forEach(warning -> bench.say(warning.message()));
        bench.entered(recorded.event().map(List::<Event>of).orElse(List.of()));
    }

    private void stopped() {
        running = Optional.empty();
        looks.stop();
        start.setText("Start recording (space)");
        start.setEnabled(true);
    }

    private void look() {
        running.ifPresent(run -> screen.show(run.view()));
    }

    /** Whether a recording is under way, which must not be left by accident. */
    boolean recording() {
        return running.isPresent();
    }
}
