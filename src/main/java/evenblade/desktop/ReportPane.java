package evenblade.desktop;

import evenblade.app.WriteReport;
import evenblade.problem.BadInput;
import evenblade.report.PaperSize;
import java.awt.Desktop;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The record to hand over: where to write it, and what was written. */
final class ReportPane extends JPanel {
    private final transient Bench bench;
    private final transient OpenJob job;
    private final FilesField folder = new FilesField("report folder", JFileChooser.DIRECTORIES_ONLY, false);
    private final JComboBox<String> paper = new JComboBox<>(PaperSize.words().toArray(String[]::new));
    private final Lines lines = new Lines();
    private final Complaint complaint = new Complaint();
    private final JButton write = Look.main(new JButton("Write the report"));

    ReportPane(Bench bench, OpenJob job) {
        super(new MigLayout("insets 18, wrap 2, hidemode 3", "[][grow,fill]", "[][][][][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        setName("report");
        add(Look.heading("The record to hand over"), "span 2");
        add(
                new Paragraph("A page for the browser, sheets to print, and tables. Everything that counts in this job "
                        + "is in it, with its pictures and the fingerprints of all raw files."),
                "span 2, growx, wmin 50");
        folder.put(java.util.List.of(job.folder()));
        add(new JLabel("Folder"));
        add(folder);
        JLabel paperWord = new JLabel("Paper");
        paperWord.setLabelFor(paper);
        paper.setName("paper");
        add(paperWord);
        add(paper, "grow 0");
        add(complaint, "span 2, growx");
        write.setName("write report");
        write.addActionListener(e -> write());
        add(write, "span 2, grow 0");
        add(lines, "span 2, grow, wmin 100, hmin 60");
    }

    private void write() {
        complaint.clear();
        Optional<Path> out = folder.paths().stream().findFirst();
        Path from = job.folder();
        PaperSize size =
                PaperSize.named(String.valueOf(paper.getSelectedItem())).orElseThrow();
        if (out.isEmpty()) {
            complaint.show(BadInput.in("folder")
                    .found("nothing", "a folder to write to")
                    .getMessage());
            return;
        }
        write.setEnabled(false);
        bench.work()
                .begin(
                        "Writing the report",
                        progress -> WriteReport.answer(from, out, size, progress),
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
        lines.put(opening("Open the page", "open page", out.resolve(WriteReport.HTML)));
        lines.put(opening("Open the sheets", "open sheets", out.resolve(WriteReport.PDF)));
        lines.put(opening("Open the folder", "open folder", out));
        written.files().forEach(file -> lines.say(file.toString()));
        written.warnings().forEach(warning -> lines.say("!  " + warning.message()));
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
                        () -> bench.say("Nothing on this machine opens " + what + "; it lies there."));
            }
        }));
        return button;
    }
}
