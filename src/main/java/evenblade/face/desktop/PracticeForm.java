package evenblade.face.desktop;

import evenblade.base.problem.BadInput;
import evenblade.face.app.MakePractice;
import evenblade.keep.practice.Fault;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JFileChooser;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** Makes an invented job with known truth, to practise on. */
final class PracticeForm extends JPanel {
    private static final String FORM = "practice";

    private final transient Navigator bench;
    private final FilesField folder = new FilesField("practice folder", JFileChooser.DIRECTORIES_ONLY, false);
    private final JComboBox<String> fault = new JComboBox<>();
    private final Complaint complaint = new Complaint();
    private final JButton make = Look.main(new JButton("Make the practice job"));

    PracticeForm(Navigator bench, Runnable back) {
        super(new MigLayout("insets 18, wrap 2, hidemode 3", "[][grow,fill]"));
        this.bench = bench;
        setName("practice");
        add(Look.heading("Practice job"), "span 2");
        add(
                new WrappedLabel("An invented aircraft with one thing wrong, five ground runs and the static checks. "
                        + "Nothing in it was measured, and every page of it says so. What is really wrong is written "
                        + "in the folder 'truth' of the job."),
                "span 2, growx, wmin 50");
        add(new JLabel("Folder"));
        add(folder);
        add(new JLabel("What is wrong"));
        Arrays.stream(Fault.values()).forEach(each -> fault.addItem(each.word().replace('-', ' ')));
        fault.setSelectedItem(MakePractice.USUAL_FAULT.word().replace('-', ' '));
        fault.setName("fault");
        bench.drafts().keep(FORM, folder.text());
        bench.drafts().keep(FORM, fault);
        add(fault);
        add(complaint, "span 2, growx");
        make.setName("make");
        make.addActionListener(e -> make());
        JButton leave = Look.button("Back", "back", back);
        add(make, "span 2, split 2");
        add(leave);
    }

    private void make() {
        complaint.clear();
        try {
            Path place = folder.paths().stream().findFirst().orElseThrow(() -> BadInput.in("folder")
                    .found("nothing", "a folder that is empty or not there yet"));
            String wrong = Fault.values()[fault.getSelectedIndex()].word();
            make.setEnabled(false);
            bench.begin(
                    "Inventing the job",
                    progress -> MakePractice.make(place, List.of(wrong), 1, Optional.empty())
                            .folder(),
                    made -> {
                        bench.drafts().forget(FORM);
                        bench.openJob(made);
                    },
                    this::wrong);
        } catch (BadInput e) {
            wrong(e.getMessage());
        }
    }

    private void wrong(String why) {
        make.setEnabled(true);
        complaint.show(why);
    }
}
