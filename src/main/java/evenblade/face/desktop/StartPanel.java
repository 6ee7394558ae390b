package evenblade.face.desktop;

import java.nio.file.Path;
import javax.swing.Action;
import javax.swing.JButton;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import net.miginfocom.swing.MigLayout;

/** What is there when no job is open: begin one, open one, practise. */
final class StartPanel extends JPanel {
    StartPanel(Navigator bench, Action newJob, Action open, Action practice, Action look) {
        super(new MigLayout("insets 40, wrap 1, gapy 12", "[grow,fill,260:520:720]", ""));
        setName("start");
        add(Look.heading("What shakes, how much, and whether the last thing changed helped"));
        add(
                new WrappedLabel(
                        "A job keeps everything done to one aircraft: static checks, ground runs, changes, photos. "
                                + "It is an ordinary folder."),
                "wmin 50, gapbottom 10");
        add(named("new", Look.main(new JButton(newJob))));
        add(named("open", new JButton(open)));
        add(named("practice", new JButton(practice)));
        add(
                new WrappedLabel("Or look at any recording without a job: drop it on this window, or choose it."),
                "wmin 50, gaptop 10");
        add(named("look at", new JButton(look)));
        if (!bench.settings().recentJobs().isEmpty()) {
            add(Look.strong("Jobs opened last"), "gaptop 20");
        }
        for (Path job : bench.settings().recentJobs()) {
            JButton again = new JButton(job.getFileName() + "    " + job.getParent());
            again.setName("recent " + job.getFileName());
            again.setHorizontalAlignment(SwingConstants.LEFT);
            again.addActionListener(e -> bench.openJob(job));
            add(again, "wmin 50");
        }
    }

    private static JButton named(String name, JButton button) {
        button.setName(name);
        return button;
    }
}
