package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.DescribeInstallation;
import evenblade.face.app.DescribeInstallation.Form;
import evenblade.face.app.StartJob;
import evenblade.face.app.WriteEntry;
import evenblade.machine.installation.Engine;
import evenblade.machine.installation.HubCounting;
import evenblade.machine.installation.Installation;
import evenblade.machine.installation.Reduction;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/**
 * Begins a job: where it is kept and what is on the aircraft, with the order table growing beside it. Or puts the
 * installation of a job right, by a later entry.
 */
final class InstallationForm extends JPanel {
    private static final String FORM = "new job";

    private final transient Navigator bench;
    private final transient Optional<OpenJob> changed;
    private final JPanel fields = new WidePanel(new MigLayout("insets 0, wrap 2, gapy 2, hidemode 3", "[][grow,fill]"));
    private final Map<JTextField, String> labels = new HashMap<>();
    private final FilesField folder = new FilesField("folder", JFileChooser.DIRECTORIES_ONLY, false);
    private final JTextField remark = new JTextField(16);
    private final JTextField jobName = field("job name", "Job", "left empty: the folder's name");
    private final JTextField name;
    private final JComboBox<String> cycle = new JComboBox<>(Engine.Cycle.words().toArray(String[]::new));
    private final JTextField cylinders;
    private final JTextField idle;
    private final JTextField max;
    private final JComboBox<String> drive =
            new JComboBox<>(Reduction.Kind.words().toArray(String[]::new));
    private final JTextField ratio;
    private final JTextField driving;
    private final JTextField driven;
    private final JTextField blades;
    private final JTextField diameter;
    private final JComboBox<String> rotation = new JComboBox<>(new String[] {"", "clockwise", "counter-clockwise"});
    private final JComboBox<String> counted = new JComboBox<>();
    private final JTextField chord;
    private final JTextField bladeMass;
    private final JTextField centreOfGravity;
    private final JTextField limit;
    private final JTextField limitSource;
    private final JTextField sensorAhead;
    private final JTextField sensorAbove;
    private final JTextField positionAtMark;
    private final OrderLinesTable lines = new OrderLinesTable();
    private final WrappedLabel linesWord = new WrappedLabel(" ");
    private final Complaint complaint = new Complaint();
    private final JButton begin = Look.main(new JButton("Begin the job"));

    /** What is on the aircraft of a job, to be put right. */
    static InstallationForm changing(Navigator bench, OpenJob job) {
        InstallationForm form = new InstallationForm(bench, bench::showNewest, Optional.of(job));
        form.fill(DescribeInstallation.form(job.record().installationNow()));
        form.listen(Optional.empty());
        return form;
    }

    InstallationForm(Navigator bench, Runnable back) {
        this(bench, back, Optional.empty());
    }

    private InstallationForm(Navigator bench, Runnable back, Optional<OpenJob> changed) {
        super(new MigLayout(
                "insets 8 18 4 18, wrap 2, hidemode 3", "[grow 55,fill]20[grow 45,fill]", "[][grow,fill][][]"));
        this.bench = bench;
        this.changed = changed;
        setName(changed.isPresent() ? "installation" : "new job");
        add(Look.heading(changed.isPresent() ? "Installation, put right from now on" : "New job"), "span 2");
        if (changed.isPresent()) {
            fields.removeAll();
            labelled("What was wrong", remark, -1);
            remark.setName("remark");
            begin.setText("Write it into the job");
        } else {
            labelled("Folder for the job *", folder, 0);
            bench.drafts().keep(FORM, folder.text());
        }
        name = field("aircraft", "Aircraft or engine", "any words");
        group("Engine");
        choice("cycle", "Engine", cycle);
        cylinders = field("cylinders", "Cylinders *", "4");
        idle = field("idle rpm", "Idle rpm", "1600");
        max = field("max rpm", "Highest rpm", "5800");
        group("Drive");
        choice("drive", "Drive", drive);
        ratio = field("ratio", "Reduction ratio *", "or count teeth; like 2.43");
        driving = field("driving teeth", "Driving teeth", "if counted, like 21");
        driven = field("driven teeth", "Driven teeth", "if counted, like 51");
        group("Propeller");
        blades = field("blades", "Propeller blades *", "3");
        diameter = field("diameter", "Diameter", "like 1.70 m or 68 in");
        choice("rotation", "Turns, seen from behind", rotation);
        counted.addItem("");
        HubCounting.words().forEach(word -> counted.addItem(word.replace('-', ' ')));
        choice("positions counted", "Hub positions counted", counted);
        boolean inches = bench.settings().inches();
        chord = field("chord", "Mean blade width", inches ? "if known, like 4 in" : "if known, like 100 mm");
        bladeMass =
                field("blade mass", "Mass of one blade", inches ? "if known, like 4.6 lb" : "if known, like 2.1 kg");
        centreOfGravity = field(
                "centre of gravity",
                "Balance point from shaft",
                inches ? "if known, like 13 3/4 in" : "if known, like 350 mm");
        group("Limits");
        limit = field("track limit", "Most track spread", "like 1/8 in; the maker's figure rules");
        limitSource = field("limit source", "Who says so", "maker's sheet");
        sensorAhead = field(
                "sensor ahead", "Sensor ahead of the mounts", inches ? "roughly, like 10 in" : "roughly, like 250 mm");
        sensorAbove = field(
                "sensor above", "Sensor above the mounts", inches ? "roughly, like 6 in" : "roughly, like 150 mm");
        positionAtMark = field("position at mark", "Hub position on the mark", "with a mark, like 1");
        add(scrolled(fields), "wmin 100");
        JPanel right = new JPanel(new MigLayout("insets 0, wrap 1", "[grow,fill]", "[][grow,fill][]"));
        right.add(Look.strong("Lines to expect"));
        right.add(new JScrollPane(lines), "wmin 50, hmin 50");
        right.add(linesWord, "wmin 50");
        add(right, "wmin 100");
        add(complaint, "span 2");
        JButton leave = Look.button("Back", "back", back);
        begin.setName("begin");
        begin.addActionListener(e -> begin());
        JPanel buttons = new JPanel(new MigLayout("insets 0"));
        buttons.add(begin);
        buttons.add(leave);
        buttons.add(Look.quiet("* is needed"));
        add(buttons, "span 2");
        cycle.addActionListener(e -> typed());
        drive.addActionListener(e -> typed());
        typed();
    }

    private static JScrollPane scrolled(JPanel panel) {
        JScrollPane scroll = new JScrollPane(panel);
        scroll.setBorder(javax.swing.BorderFactory.createEmptyBorder());
        scroll.getVerticalScrollBar().setUnitIncrement(Look.em());
        return scroll;
    }

    private void group(String words) {
        fields.add(Look.strong(words), "span 2, gaptop 8");
    }

    private JTextField field(String name, String label, String hint) {
        JTextField field = new JTextField(16);
        field.setName(name);
        field.putClientProperty("JTextField.placeholderText", hint);
        field.setToolTipText(hint);
        labelled(label, field, -1);
        labels.put(field, label.replace(" *", ""));
        return field;
    }

    private void choice(String name, String label, JComboBox<String> box) {
        box.setName(name);
        labelled(label, box, -1);
    }

    private void labelled(String label, JComponent field, int at) {
        JLabel word = Look.label(label, field);
        if (at < 0) {
            fields.add(word);
            fields.add(field);
        } else {
            fields.add(word, at);
            fields.add(field, at + 1);
        }
        if (field instanceof JTextField text) {
            word.setLabelFor(text);
        }
    }

    /** Keeps every field as it is typed, and shows the lines of what stands there. */
    private void typed() {
        boolean electric = "electric".equals(cycle.getSelectedItem());
        cylinders.setEnabled(!electric);
        boolean direct = "direct".equals(drive.getSelectedItem());
        List.of(ratio, driving, driven).forEach(field -> field.setEnabled(!direct));
        Form form = form();
        lines.show(DescribeInstallation.linesSoFar(form));
        try {
            DescribeInstallation.describe(form);
            linesWord.setText("Lines that coincide can't be separated by any analysis.");
        } catch (BadInput e) {
            linesWord.setText("All lines appear once engine, drive and blades are there.");
        }
    }

    private Form form() {
        return new Form(
                name.getText(),
                String.valueOf(cycle.getSelectedItem()),
                cylinders.getText(),
                idle.getText(),
                max.getText(),
                String.valueOf(drive.getSelectedItem()),
                ratio.getText(),
                driving.getText(),
                driven.getText(),
                blades.getText(),
                diameter.getText(),
                chord.getText(),
                bladeMass.getText(),
                centreOfGravity.getText(),
                String.valueOf(rotation.getSelectedItem()),
                String.valueOf(counted.getSelectedItem()).replace(' ', '-'),
                limit.getText(),
                limitSource.getText(),
                sensorAhead.getText(),
                sensorAbove.getText(),
                positionAtMark.getText());
    }

    private void fill(Form form) {
        name.setText(form.name());
        cycle.setSelectedItem(form.cycle());
        cylinders.setText(form.cylinders());
        idle.setText(form.idleRpm());
        max.setText(form.maxRpm());
        drive.setSelectedItem(form.drive());
        ratio.setText(form.ratio());
        driving.setText(form.drivingTeeth());
        driven.setText(form.drivenTeeth());
        blades.setText(form.blades());
        diameter.setText(form.diameter());
        chord.setText(form.chord());
        bladeMass.setText(form.bladeMass());
        centreOfGravity.setText(form.centreOfGravity());
        rotation.setSelectedItem(form.rotation());
        counted.setSelectedItem(form.positionsCounted().replace('-', ' '));
        limit.setText(form.trackLimit());
        limitSource.setText(form.limitSource());
        sensorAhead.setText(form.sensorAhead());
        sensorAbove.setText(form.sensorAbove());
        positionAtMark.setText(form.positionAtMark());
    }

    /** Marks what is needed and isn't there, and goes to the first of it. */
    private boolean complete() {
        boolean direct = "direct".equals(drive.getSelectedItem());
        boolean counted = !driving.getText().isBlank() && !driven.getText().isBlank();
        Map<JTextField, String> needed = new LinkedHashMap<>();
        if (changed.isEmpty()) {
            needed.put(folder.text(), "Folder for the job");
        }
        if (cylinders.isEnabled()) {
            needed.put(cylinders, "Cylinders");
        }
        if (!direct && !counted) {
            needed.put(ratio, "Reduction ratio, or both counts of teeth");
        }
        needed.put(blades, "Propeller blades");
        List.of(folder.text(), cylinders, ratio, blades)
                .forEach(field -> field.putClientProperty("JComponent.outline", null));
        List<JTextField> missing = needed.keySet().stream()
                .filter(field -> field.getText().isBlank())
                .toList();
        missing.forEach(field -> field.putClientProperty("JComponent.outline", "error"));
        missing.stream().findFirst().ifPresent(field -> {
            field.requestFocusInWindow();
            complaint.show(
                    "Still needed: " + missing.stream().map(needed::get).collect(Collectors.joining("; ")) + ".");
        });
        return missing.isEmpty();
    }

    private void begin() {
        complaint.clear();
        if (!complete()) {
            return;
        }
        Form form = form();
        Installation installation;
        try {
            installation = DescribeInstallation.describe(form);
        } catch (BadInput e) {
            wrong(e);
            return;
        }
        begin.setEnabled(false);
        if (changed.isPresent()) {
            bench.begin(
                    "Writing into the job",
                    progress -> WriteEntry.installation(
                            changed.get().folder(), form, remark.getText().strip()),
                    event -> bench.entered(List.of(event)),
                    this::wrong);
            return;
        }
        Path place = folder.paths().get(0);
        Optional<String> called = EntryForm.typed(jobName);
        bench.begin(
                "Beginning the job",
                progress -> StartJob.start(place, installation, called).path(),
                made -> {
                    bench.drafts().forget(FORM);
                    bench.openJob(made);
                },
                this::wrong);
    }

    /** At the field whose value can't be used, in its words: a form has no lines and no keys. */
    private void wrong(BadInput e) {
        String key = e.place().key().orElse("");
        Optional.ofNullable(byKey().get(key.substring(key.lastIndexOf('.') + 1)))
                .ifPresentOrElse(
                        field -> complaint.show(
                                labels.get(field) + ": \"" + field.getText().strip() + "\", expected " + e.expected(),
                                field),
                        () -> wrong(e.withoutPlace()));
    }

    private Map<String, JTextField> byKey() {
        return Map.ofEntries(
                Map.entry("cylinders", cylinders),
                Map.entry("idleRpm", idle),
                Map.entry("maxRpm", max),
                Map.entry("ratio", ratio),
                Map.entry("drivingTeeth", driving),
                Map.entry("drivenTeeth", driven),
                Map.entry("blades", blades),
                Map.entry("diameter", diameter),
                Map.entry("chord", chord),
                Map.entry("bladeMass", bladeMass),
                Map.entry("centreOfGravity", centreOfGravity),
                Map.entry("value", limit),
                Map.entry("ahead", sensorAhead),
                Map.entry("above", sensorAbove),
                Map.entry("positionAtMark", positionAtMark));
    }

    private void wrong(String why) {
        begin.setEnabled(true);
        complaint.show(why);
    }

    /** Ready once all fields are there: what is typed is kept and shown. */
    InstallationForm listening() {
        listen(Optional.of(FORM));
        return this;
    }

    private void listen(Optional<String> draft) {
        for (java.awt.Component each : fields.getComponents()) {
            if (each instanceof JTextField text) {
                draft.ifPresent(form -> bench.drafts().keep(form, text));
                text.getDocument().addDocumentListener(new Drafts.Typed(this::typed));
            }
        }
        for (JComboBox<String> each : List.of(cycle, drive, rotation, counted)) {
            draft.ifPresent(form -> bench.drafts().keep(form, each));
        }
        typed();
    }
}
