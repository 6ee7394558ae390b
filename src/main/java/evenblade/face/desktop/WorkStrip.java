package evenblade.face.desktop;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;

/** The strip at the bottom: what is being done, how far, and a way to stop it. */
final class WorkStrip extends JPanel implements Work.Watcher {
    private static final int STEPS = 1000;

    private final JLabel words = new JLabel(" ");
    private final JProgressBar bar = new JProgressBar(0, STEPS);
    private final JButton stop = new JButton("Stop this");
    private final List<Work.Task> tasks = new ArrayList<>();

    WorkStrip() {
        super(new MigLayout("insets 0 n 0 n, hidemode 2", "[grow,fill][200!][]", "[" + 2 * Look.em() + "!]"));
        setName("work");
        words.setName("work words");
        stop.setName("stop");
        stop.setMargin(new java.awt.Insets(1, 12, 1, 12));
        stop.setMnemonic('P');
        stop.addActionListener(e -> {
            tasks.forEach(Work.Task::stop);
            words.setText("Stopping…");
        });
        add(words);
        add(bar);
        add(stop);
        idle();
    }

    /** Says something that needs no answer. */
    void say(String text) {
        words.setText(text.isEmpty() ? " " : text);
    }

    @Override
    public void began(Work.Task task) {
        tasks.add(task);
        name();
        bar.setIndeterminate(true);
        bar.setVisible(true);
        stop.setVisible(true);
    }

    @Override
    public void at(Work.Task task, double share, String doing) {
        if (tasks.isEmpty() || tasks.get(0) != task || task.stopping()) {
            return;
        }
        bar.setIndeterminate(false);
        bar.setValue((int) (share * STEPS));
        words.setText(task.what() + ": " + doing);
    }

    @Override
    public void ended(Work.Task task) {
        tasks.remove(task);
        if (tasks.isEmpty()) {
            idle();
        } else {
            name();
        }
    }

    private void name() {
        words.setText(tasks.get(0).what() + "…");
    }

    private void idle() {
        words.setText(" ");
        bar.setVisible(false);
        bar.setIndeterminate(false);
        stop.setVisible(false);
    }

    boolean busy() {
        return !tasks.isEmpty();
    }
}
