package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.machine.plan.Planner;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.document.PlanDocument;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** The card to take along to the aircraft: cautions, speeds to hold, what a sensor can't see. */
final class RunCardPane extends JPanel {
    private final transient OpenJob job;
    private final JTextField speeds = new JTextField(16);
    private final JTextField rate = new JTextField(8);
    private final TablesPane tables = new TablesPane("run card tables");
    private final Page words = new Page("run card words");
    private final Complaint complaint = new Complaint();

    RunCardPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 4 14 8 14, gapy 3, wrap 1, hidemode 3", "[grow,fill]", ""));
        this.job = job;
        setName("run card");
        add(Look.heading("Run card"));
        RowsPanel row = new RowsPanel(0, 0, 0, 0);
        field(row, "Engine speeds", "card speeds", speeds, "4000, 4800; empty: the usual");
        field(row, "Samples a second", "card rate", rate, "of the sensor");
        JButton again = Look.button("Show", "show card", this::plan);
        row.add(again);
        JButton print = Look.button("Print…", "print card", () -> words.print("run card", bench.work(), bench::say));
        row.add(print);
        add(row, "wmin 50");
        add(complaint);
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("run card tabs");
        tabs.addTab("Card", words);
        tabs.addTab("Tables", tables);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        bench.drafts().keep(job.draft("run card"), speeds);
        bench.drafts().keep(job.draft("run card"), rate);
        plan();
    }

    private static void field(JPanel row, String label, String name, JTextField field, String hint) {
        field.setName(name);
        field.putClientProperty("JTextField.placeholderText", hint);
        field.setToolTipText(hint);
        row.add(Look.label(label, field));
        row.add(field);
    }

    private void plan() {
        complaint.clear();
        try {
            List<Double> rpms = rpms(speeds);
            OptionalDouble hz = ImportForm.number(rate, "samples a second");
            show(Planner.plan(job.record().installation(), rpms, hz));
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
        words.show(PlanDocument.cardFirst(plan, Words.PHRASES));
        tables.show(PlanDocument.cardFirst(plan, Words.PHRASES));
    }
}
