package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteReport;
import evenblade.machine.plan.Planner;
import evenblade.machine.plan.RunPlan;
import evenblade.tell.document.PlanDocument;
import evenblade.tell.report.PaperSize;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** The card to take along to the aircraft: cautions, speeds to hold, what a sensor can't see. */
final class RunCardPane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final JTextField speeds = new JTextField(16);
    private final JTextField rate = new JTextField(8);
    private final TablesPane tables = new TablesPane("run card tables");
    private final Page words = new Page("run card words");
    private final SheetsView sheets;
    private final JComboBox<String> paper = new JComboBox<>(PaperSize.words().toArray(String[]::new));
    private final JButton print = new JButton("Print…");
    private final JButton pdf = new JButton("Write a PDF");
    private transient Optional<RunPlan> planned = Optional.empty();
    private transient Optional<Work.Task> setting = Optional.empty();
    private final Complaint complaint = new Complaint();

    RunCardPane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 4 14 8 14, gapy 3, wrap 1, hidemode 3", "[grow,fill]", ""));
        this.bench = bench;
        this.job = job;
        sheets = new SheetsView(bench.work());
        setName("run card");
        add(Look.heading("Run card"));
        RowsPanel row = new RowsPanel(0, 0, 0, 0);
        field(row, "Engine speeds", "card speeds", speeds, "4000, 4800; empty: the usual");
        field(row, "Samples a second", "card rate", rate, "of the sensor");
        JButton again = Look.button("Show", "show card", this::plan);
        row.add(again);
        paper.setName("card paper");
        paper.addActionListener(e -> set());
        row.add(Look.label("Paper", paper));
        row.add(paper);
        print.setName("print card");
        print.addActionListener(e -> sheets.print(bench::say));
        row.add(print);
        pdf.setName("write card");
        pdf.setToolTipText("run-card.pdf in the folder of the job");
        pdf.addActionListener(e -> write());
        row.add(pdf);
        add(row, "wmin 50");
        add(complaint);
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("run card tabs");
        tabs.addTab("Card", words);
        tabs.addTab("Tables", tables);
        JScrollPane scroll = new JScrollPane(sheets);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        tabs.addTab("To print", scroll);
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

    private PaperSize paperSize() {
        return PaperSize.named(String.valueOf(paper.getSelectedItem())).orElseThrow();
    }

    /** Sets the sheet with the blanks to fill in by hand. */
    private void set() {
        setting.ifPresent(Work.Task::giveUp);
        print.setEnabled(false);
        pdf.setEnabled(planned.isPresent());
        PaperSize size = paperSize();
        setting = planned.map(plan -> bench.begin(
                "Setting the run card",
                progress -> WriteReport.previewRunCard(plan, size),
                card -> {
                    sheets.show(card);
                    print.setEnabled(true);
                },
                complaint::show));
    }

    @Override
    public void removeNotify() {
        setting.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }

    private void write() {
        Path file = job.folder().resolve("run-card.pdf");
        PaperSize size = paperSize();
        planned.ifPresent(plan -> bench.begin(
                "Writing the run card",
                progress -> {
                    WriteReport.runCard(plan, file, size);
                    return file;
                },
                written -> bench.say("Wrote " + written),
                complaint::show));
    }

    private void plan() {
        complaint.clear();
        planned = Optional.empty();
        try {
            List<Double> rpms = rpms(speeds);
            OptionalDouble hz = ImportForm.number(rate, "samples a second");
            show(Planner.plan(job.record().installation(), rpms, hz));
        } catch (BadInput e) {
            complaint.show(e.getMessage());
        }
        set();
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
        planned = Optional.of(plan);
        words.show(PlanDocument.cardFirst(plan, Words.PHRASES));
        tables.show(PlanDocument.cardFirst(plan, Words.PHRASES));
    }
}
