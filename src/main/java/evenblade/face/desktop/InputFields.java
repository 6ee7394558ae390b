package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.base.units.FullScale;
import evenblade.face.app.LiveRecording;
import evenblade.face.app.RecordLines;
import evenblade.face.app.RecordRun;
import evenblade.face.app.RunBefore;
import evenblade.input.capture.FormatWish;
import evenblade.input.capture.InputDevice;
import evenblade.input.capture.SerialLine;
import evenblade.input.capture.SoundDevices;
import evenblade.keep.job.Conditions;
import evenblade.keep.job.Conditions.Condition;
import evenblade.keep.job.NewRun;
import evenblade.keep.job.RunSettings;
import evenblade.machine.plan.Planner;
import evenblade.measure.live.SteppedRun;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Supplier;
import java.util.stream.Stream;
import javax.swing.JCheckBox;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** Which input, which of its channels tells the mark, what the run is called, which dwells to be led through. */
final class InputFields extends JPanel {
    /**
     * What a run can be recorded from.
     *
     * @param sound microphones and line inputs
     * @param ports serial ports, on which a sensor may send lines
     * @param before what a run takes over, by the name of the input that made the run before
     */
    record Inputs(List<InputDevice> sound, List<String> ports, Map<String, RunBefore> before) {
        /** Those of this machine. */
        static Inputs of(Path job) {
            List<InputDevice> sound = SoundDevices.list();
            List<String> ports = SerialLine.ports();
            Map<String, RunBefore> before = new HashMap<>();
            Stream.concat(sound.stream().map(InputDevice::name), ports.stream().map(PORT::concat))
                    .forEach(each -> RunBefore.fromInput(job, each).ifPresent(run -> before.put(each, run)));
            return new Inputs(sound, ports, before);
        }
    }

    private static final String SENSOR = "sensor on a serial port";
    private static final String PORT = "serial port ";

    private final transient OpenJob job;
    private final transient Prefilled prefilled = new Prefilled();
    private transient Map<String, RunBefore> before = Map.of();
    private final JComboBox<String> device = new JComboBox<>();
    private final JTextField channels = new JTextField(3);
    private final JComboBox<String> port = new JComboBox<>();
    private final JTextField baud = new JTextField(5);
    private final List<JComponent> ofSound;
    private final List<JComponent> ofSensor;
    private final JTextField mark = new JTextField(6);
    /** What a recording can't know by itself. */
    private static final List<Condition> NOTED =
            List.of(Condition.SENSOR, Condition.PLACE, Condition.DIRECTION, Condition.GAIN, Condition.WIND);

    /** Fields beside each other. */
    private static final int IN_A_ROW = 4;

    private final JTextField label = new JTextField(10);
    private final Map<Condition, JTextField> noted = new EnumMap<>(Condition.class);
    private final JTextField fullScale = new JTextField(6);
    private final JTextField rpm = new JTextField(6);
    private final JCheckBox steps = new JCheckBox("Lead through dwells at", true);
    private final JTextField speeds = new JTextField(10);

    /** @param otherInput told when another input is chosen */
    InputFields(Drafts drafts, OpenJob job, Runnable otherInput) {
        super(new MigLayout("insets 0, hidemode 3", "[][grow 60,fill][][fill][][fill][][grow 40,fill]"));
        this.job = job;
        add("Input", "input", device, "", "wmin 120");
        JLabel channelsWords = named("Channels", "live channels", channels, "2");
        JLabel portWords = named("Port", "live port", port, "");
        JLabel baudWords = named("Baud", "live baud", baud, String.valueOf(SerialLine.USUAL_BAUD));
        ofSound = List.of(channelsWords, channels);
        ofSensor = List.of(portWords, port, baudWords, baud);
        port.setEditable(true);
        add(channelsWords, "split 2");
        add(portWords);
        add(channels, "split 4");
        add(port, "wmin 90");
        add(baudWords);
        add(baud, "wmin 50");
        device.addActionListener(e -> {
            fitInput();
            otherInput.run();
        });
        fitInput();
        add("Mark on channel", "live mark", mark, "none", "");
        add("Name", "live name", label, "as found, …", "");
        steps.setName("live steps");
        steps.setMnemonic('D');
        add(steps, "newline, span 8, split 2, grow 0");
        speeds.setName("live speeds");
        speeds.putClientProperty("JTextField.placeholderText", "the usual ones; or like 4000, 4800 engine rpm");
        speeds.getAccessibleContext().setAccessibleName("Engine speeds to hold, rpm");
        steps.addActionListener(e -> speeds.setEnabled(steps.isSelected()));
        add(speeds, "growx, pushx");
        for (int i = 0; i < NOTED.size(); i++) {
            Condition condition = NOTED.get(i);
            JTextField field = new JTextField(6);
            noted.put(condition, field);
            add(
                    words(condition),
                    "live " + condition.word(),
                    field,
                    ImportForm.hint(condition),
                    "wmin 40",
                    i % IN_A_ROW == 0 ? "newline" : "");
            drafts.keep(job.draft("live"), field);
        }
        add("Full scale", "live full scale", fullScale, "like 50 m/s2", "wmin 40", "");
        add("Rpm as read", "live rpm as read", rpm, "nothing where it varies", "wmin 40", "");
        drafts.keep(job.draft("live"), label);
        drafts.keep(job.draft("live"), speeds);
    }

    private static String words(Condition condition) {
        return switch (condition) {
            case PLACE -> "Fixed at";
            case DIRECTION -> "Points";
            default -> ImportForm.words(condition);
        };
    }

    private void add(String words, String name, JComponent field, String hint, String how) {
        add(words, name, field, hint, how, "");
    }

    private void add(String words, String name, JComponent field, String hint, String how, String row) {
        add(named(words, name, field, hint), row);
        add(field, how);
    }

    private static JLabel named(String words, String name, JComponent field, String hint) {
        field.setName(name);
        field.putClientProperty("JTextField.placeholderText", hint);
        field.setToolTipText(hint.isEmpty() ? null : hint);
        return Look.label(words, field);
    }

    void show(Inputs inputs) {
        inputs.ports().forEach(port::addItem);
        inputs.sound().forEach(each -> device.addItem(each.name()));
        device.addItem(SENSOR);
        before = inputs.before();
        job.input().ifPresent(device::setSelectedItem);
        fill();
        device.addActionListener(e -> fill());
        port.addActionListener(e -> fill());
    }

    /** What is as in the run before stands in the fields, to be seen and changed; a speed or the wind never does. */
    private void fill() {
        Optional<RunBefore> run = Optional.ofNullable(before.get(input()));
        RunSettings settings = run.map(RunBefore::settings).orElse(RunSettings.NONE);
        Conditions conditions = run.map(RunBefore::conditions).orElse(Conditions.NONE);
        prefilled.fill(mark, settings.markChannel());
        prefilled.fill(fullScale, settings.fullScale());
        for (Condition condition : RunBefore.KEPT) {
            if (noted.containsKey(condition)) {
                prefilled.fill(noted.get(condition), conditions.get(condition));
            }
        }
    }

    /** The input as its quiet and its runs are known by: a sensor by its port. */
    String input() {
        return sensor() ? PORT + portName() : device().orElse("");
    }

    private String portName() {
        return port.getEditor().getItem() instanceof String typed ? typed.strip() : "";
    }

    /** Whether a sensor's lines are recorded in place of sound. */
    boolean sensor() {
        return SENSOR.equals(device.getSelectedItem());
    }

    private void fitInput() {
        ofSound.forEach(each -> each.setVisible(!sensor()));
        ofSensor.forEach(each -> each.setVisible(sensor()));
        revalidate();
    }

    /** Whether anything can be changed; nothing while sound comes in. */
    void open(boolean open) {
        for (JComponent each : List.of(device, channels, port, baud, mark, label, steps)) {
            each.setEnabled(open);
        }
        speeds.setEnabled(open && steps.isSelected());
        noted.values().forEach(field -> field.setEnabled(open));
        fullScale.setEnabled(open);
        rpm.setEnabled(open);
    }

    Optional<String> device() {
        return Optional.ofNullable((String) device.getSelectedItem());
    }

    Optional<String> mark() {
        return EntryForm.typed(mark);
    }

    /**
     * The format wished for.
     *
     * @throws BadInput where the number of channels can't be read
     */
    FormatWish wish() {
        OptionalDouble count = ImportForm.number(channels, "channels");
        return new FormatWish(
                OptionalInt.empty(),
                count.isPresent() ? OptionalInt.of((int) count.getAsDouble()) : OptionalInt.empty(),
                OptionalInt.empty());
    }

    /** How many dwells there are to be led through; none where nobody leads. */
    int stepCount() {
        return steps.isSelected()
                ? Planner.plan(job.record().installation(), rpms(), OptionalDouble.empty())
                        .dwells()
                        .size()
                : 0;
    }

    private List<Double> rpms() {
        return RunCardPane.rpms(speeds);
    }

    /**
     * A run into the job.
     *
     * @param quiet the take with the engine standing
     * @return opens the input, which may take a while
     * @throws BadInput where a field can't be used
     */
    Supplier<LiveRecording> run(Optional<Path> quiet) {
        return prepared(
                job.folder(),
                OptionalDouble.empty(),
                new NewRun(Optional.empty(), EntryForm.typed(label), "", settings(), conditions()),
                quiet,
                steps.isSelected()
                        ? Optional.of(new RecordRun.Steps(rpms(), SteppedRun.USUAL_PERCENT))
                        : Optional.empty());
    }

    private Supplier<LiveRecording> prepared(
            Path target, OptionalDouble seconds, NewRun run, Optional<Path> quiet, Optional<RecordRun.Steps> led) {
        job.input(device().orElse(SENSOR));
        if (!sensor()) {
            RecordRun.Request request =
                    new RecordRun.Request(target, device(), wish(), seconds, run, Optional.empty(), quiet, led);
            return () -> RecordRun.prepare(request);
        }
        String name = portName();
        if (name.isEmpty()) {
            throw BadInput.in("port").found("nothing", "the serial port of the sensor, as the system calls it");
        }
        OptionalDouble speed = ImportForm.number(baud, "baud");
        int bitsPerSecond = (int) speed.orElse(SerialLine.USUAL_BAUD);
        if (bitsPerSecond <= 0) {
            throw BadInput.in("baud").found(String.valueOf(bitsPerSecond), "a speed above zero, like 115200");
        }
        return () -> RecordLines.prepare(new RecordLines.Request(
                target,
                SerialLine.open(name, bitsPerSecond),
                PORT + name + ", " + bitsPerSecond + " baud",
                seconds,
                run,
                Optional.empty(),
                quiet,
                led));
    }

    private RunSettings settings() {
        Optional<String> scale = EntryForm.typed(fullScale);
        scale.ifPresent(text -> FullScale.parse(text, BadInput.in("full scale")));
        OptionalDouble read = ImportForm.number(rpm, "rpm as read");
        RunSettings settings = mark().map(RunSettings.NONE::withMarkChannel).orElse(RunSettings.NONE);
        settings = scale.isPresent() ? settings.withFullScale(scale.get()) : settings;
        return read.isPresent() ? settings.withEngineRpm(read.getAsDouble()) : settings;
    }

    private Conditions conditions() {
        Conditions conditions = Conditions.NONE;
        for (Map.Entry<Condition, JTextField> each : noted.entrySet()) {
            Optional<String> typed = EntryForm.typed(each.getValue());
            conditions = typed.isPresent() ? conditions.with(each.getKey(), typed.get()) : conditions;
        }
        return conditions;
    }

    /**
     * A take into a file of its own, with the engine standing.
     *
     * @return opens the input, which may take a while
     * @throws BadInput where a field can't be used
     */
    Supplier<LiveRecording> quiet(Path file, double seconds) {
        return prepared(
                file,
                OptionalDouble.of(seconds),
                NewRun.labelled("quiet", RunSettings.NONE),
                Optional.empty(),
                Optional.empty());
    }
}
