package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.WriteReport;
import evenblade.tell.report.PaperSize;
import java.awt.Desktop;
import java.awt.event.FocusAdapter;
import java.awt.event.FocusEvent;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextField;
import net.miginfocom.swing.MigLayout;

/** The record to hand over: how its sheets will look, where to write them, and what was written. */
final class ReportPane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final FilesField folder = new FilesField("report folder", JFileChooser.DIRECTORIES_ONLY, false);
    private final JComboBox<String> what = new JComboBox<>(HandedOver.words().toArray(String[]::new));
    private final WrappedLabel explained = new WrappedLabel(HandedOver.SHORT.explained());
    private final JTextField question = new JTextField(20);
    private final JLabel questionWord = Look.label("What is asked", question);
    private final JComboBox<String> paper = new JComboBox<>(PaperSize.words().toArray(String[]::new));
    private final Lines lines = new Lines();
    private final SheetsView sheets;
    private final JLabel sheetsWord = Look.quiet(" ");
    private final Complaint complaint = new Complaint();
    private transient Optional<String> shownQuestion = Optional.empty();
    private transient Optional<Work.Task> previewing = Optional.empty();
    private final JButton write = Look.main(new JButton("Write the report"));
    private final JButton print = new JButton("Print…");

    ReportPane(Navigator bench, OpenJob job) {
        super(new MigLayout(
                "insets 8 18 10 18, wrap 2, hidemode 3", "[280:36%:,fill]18[grow,fill]", "[][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("report");
        sheets = new SheetsView(bench.work());
        sheetsWord.setName("sheets word");
        JLabel heading = Look.heading("The record to hand over");
        heading.setToolTipText(heading.getText());
        add(heading, "wmin 0");
        add(sheetsWord, "wmin 0");
        add(complaint, "span 2");
        add(writing(), "pushy, grow, wmin 280, hmin 100");
        JScrollPane scroll = new JScrollPane(sheets);
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(scroll, "pushy, grow, wmin 200, hmin 100");
        preview();
    }

    private JPanel writing() {
        JPanel panel =
                new JPanel(new MigLayout("insets 0, wrap 1, hidemode 3", "[grow,fill]", "[][][][][][][][][grow,fill]"));
        what.setName("what to hand over");
        what.getAccessibleContext().setAccessibleName("What to hand over");
        what.addActionListener(e -> chosen());
        panel.add(what, "wmin 60");
        panel.add(explained, "wmin 50");
        question.setName("question to the maker");
        question.putClientProperty("JTextField.placeholderText", "a check against the maker's own limits");
        question.addActionListener(e -> askedAnew());
        question.addFocusListener(new FocusAdapter() {
            @Override
            public void focusLost(FocusEvent e) {
                askedAnew();
            }
        });
        bench.drafts().keep(job.draft("report"), question);
        panel.add(questionWord, "gaptop 4");
        panel.add(question, "wmin 60");
        questionWord.setVisible(false);
        question.setVisible(false);
        folder.put(java.util.List.of(job.folder()));
        JLabel folderWord = new JLabel("Folder to write to");
        folderWord.setLabelFor(folder.text());
        panel.add(folderWord, "gaptop 8");
        panel.add(folder, "wmin 100");
        paper.setName("paper");
        paper.addActionListener(e -> preview());
        panel.add(Look.label("Paper", paper), "gaptop 4, split 2, grow 0");
        panel.add(paper, "grow 0, pushx");
        write.setName("write report");
        write.addActionListener(e -> write());
        panel.add(write, "gaptop 8, split 2, grow 0");
        print.setName("print report");
        print.setEnabled(false);
        print.addActionListener(e -> sheets.print(bench::say));
        panel.add(print, "grow 0, pushx");
        panel.add(lines, "wmin 100, hmin 60");
        return panel;
    }

    /** The sheet that is shown and printed has what is asked now. */
    private void askedAnew() {
        if (!EntryForm.typed(question).equals(shownQuestion)) {
            preview();
        }
    }

    private void chosen() {
        explained.setText(handedOver().explained());
        boolean asks = handedOver() == HandedOver.FOR_MAKER;
        questionWord.setVisible(asks);
        question.setVisible(asks);
        write.setText(asks ? "Write the sheet" : "Write the report");
        preview();
    }

    private HandedOver handedOver() {
        return HandedOver.named(String.valueOf(what.getSelectedItem()));
    }

    private PaperSize paperSize() {
        return PaperSize.named(String.valueOf(paper.getSelectedItem())).orElseThrow();
    }

    /** Sets the sheets as they would be written now. */
    private void preview() {
        previewing.ifPresent(Work.Task::giveUp);
        complaint.clear();
        sheetsWord.setText("Setting the sheets…");
        print.setEnabled(false);
        Path from = job.folder();
        PaperSize size = paperSize();
        HandedOver chosen = handedOver();
        Optional<String> asked = EntryForm.typed(question);
        shownQuestion = asked;
        previewing = Optional.of(bench.begin(
                "Setting the sheets",
                progress -> chosen.sheets(from, size, asked, progress),
                set -> {
                    sheetsWord.setText(
                            "As it will be printed: " + set.count() + (set.count() == 1 ? " sheet" : " sheets"));
                    sheets.show(set);
                    print.setEnabled(true);
                },
                wrong -> {
                    sheetsWord.setText(" ");
                    complaint.show(wrong);
                }));
    }

    @Override
    public void removeNotify() {
        previewing.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }

    private void write() {
        complaint.clear();
        Optional<Path> out = folder.paths().stream().findFirst();
        Path from = job.folder();
        PaperSize size = paperSize();
        if (out.isEmpty()) {
            complaint.show(BadInput.in("folder")
                    .found("nothing", "a folder to write to")
                    .getMessage());
            return;
        }
        write.setEnabled(false);
        HandedOver chosen = handedOver();
        Optional<String> asked = EntryForm.typed(question);
        bench.begin(
                "Writing the report",
                progress -> chosen.write(from, out.get(), size, asked, progress),
                written -> show(written, out.get()),
                wrong -> {
                    write.setEnabled(true);
                    complaint.show(wrong);
                });
    }

    private void show(WriteReport.Written written, Path out) {
        write.setEnabled(true);
        lines.clear();
        lines.strong("Written").setName("written");
        lines.put(opening("Open the page", "open page", written.files().get(0)));
        lines.put(opening("Open the sheets", "open sheets", written.files().get(1)));
        lines.put(opening("Open the folder", "open folder", out));
        written.files().forEach(file -> lines.say(file.toString()));
        written.warnings().forEach(warning -> lines.say("!  " + Words.warning(warning)));
        lines.done();
    }

    private JButton opening(String words, String name, Path what) {
        JButton button = new JButton(words);
        button.setName(name);
        button.addActionListener(e -> bench.work().aside(() -> {
            try {
                Desktop.getDesktop().open(what.toFile());
            } catch (IOException | UnsupportedOperationException | IllegalArgumentException wrong) {
                javax.swing.SwingUtilities.invokeLater(
                        () -> bench.say("Nothing on this machine opens " + what + "; it is there."));
            }
        }));
        return button;
    }
}
