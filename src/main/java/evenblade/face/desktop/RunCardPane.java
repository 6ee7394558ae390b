package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.FigureText;
import evenblade.face.app.PlanRun;
import evenblade.machine.plan.Place;
import evenblade.machine.plan.PlannedDwell;
import evenblade.machine.plan.PlannedLine;
import evenblade.machine.plan.RunPlan;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** The card to take along to the aircraft: cautions, speeds to hold, what a sensor can't see. */
final class RunCardPane extends JPanel {
    private final transient OpenJob job;
    private final JTextField speeds = new JTextField(16);
    private final JTextField rate = new JTextField(8);
    private final Lines lines = new Lines();
    private final Complaint complaint = new Complaint();

    RunCardPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3", "[grow,fill]", "[][][][grow,fill]"));
        this.job = job;
        setName("run card");
        add(Look.heading("Run card"));
        JPanel row = new JPanel(new MigLayout("insets 0", "[][]12[][]12[]push"));
        field(row, "Engine speeds", "card speeds", speeds, "4000, 4800; empty: the usual");
        field(row, "Samples a second", "card rate", rate, "of the sensor");
        JButton again = new JButton("Show");
        again.setName("show card");
        again.addActionListener(e -> plan());
        row.add(again);
        add(row);
        add(complaint);
        add(lines, "wmin 100, hmin 100");
        bench.drafts().keep(job.draft("run card"), speeds);
        bench.drafts().keep(job.draft("run card"), rate);
        plan();
    }

    private static void field(JPanel row, String label, String name, JTextField field, String hint) {
        JLabel word = new JLabel(label);
        word.setLabelFor(field);
        field.setName(name);
        field.putClientProperty("JTextField.placeholderText", hint);
        row.add(word);
        row.add(field, "wmin 120");
    }

    private void plan() {
        complaint.clear();
        try {
            List<Double> rpms = rpms(speeds);
            OptionalDouble hz = ImportForm.number(rate, "samples a second");
            show(PlanRun.answer(job.record().installation(), rpms, hz));
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
    }

    /**
     * The speeds typed into a field, parted by commas.
     *
     * @throws BadInput where one is no number
     */
    static List<Double> rpms(JTextField field) {
        return Arrays.stream(field.getText().split(","))
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .map(RunCardPane::rpm)
                .toList();
    }

    private static Double rpm(String text) {
        try {
            return Double.valueOf(text);
        } catch (NumberFormatException e) {
            throw BadInput.in("engine speeds").found("\"" + text + "\"", "numbers like 4000, 4800");
        }
    }

    private void show(RunPlan plan) {
        lines.clear();
        lines.strong("Before anybody touches the propeller");
        plan.card().cautions().forEach(caution -> lines.say("▸ " + caution));
        lines.strong("The run");
        plan.card().steps().forEach(step -> lines.say("▸ " + step));
        plan.warnings().forEach(warning -> lines.say("!  " + Words.warning(warning)));
        if (!plan.coincident().isEmpty()) {
            lines.strong("Can't be told apart at any speed");
            plan.coincident().stream().map(Place::names).forEach(names -> lines.say(String.join(" and ", names)));
        }
        for (PlannedDwell dwell : plan.dwells()) {
            lines.strong("At " + FigureText.fixed(dwell.engineRpm(), 0) + " engine rpm (propeller "
                    + FigureText.fixed(dwell.propellerRpm(), 0) + ")");
            dwell.lines().forEach(line -> lines.say(words(line)));
        }
        lines.done();
    }

    private static String words(PlannedLine line) {
        String at = line.line().name() + ": " + FigureText.fixed(line.frequencyHz(), 1) + " Hz";
        return line.fold()
                .map(fold -> at + ", out of this sensor's reach; would show falsely at "
                        + FigureText.fixed(fold.toHz(), 1) + " Hz")
                .orElse(at);
    }
}
