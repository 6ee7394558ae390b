package evenblade.face.desktop;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;

/**
 * What was said, at the foot until it is read; and what is being done, how far, and a way to stop it.
 */
final class WorkStrip extends JPanel implements Work.Watcher {
    private static final int STEPS = 1000; // finer than the bar has pixels
    /** More than a few lines would take the room of what one works at; the oldest give way. */
    private static final int MOST_UNREAD = 4;

    private final JLabel words = new JLabel(" ");
    private final JProgressBar bar = new JProgressBar(0, STEPS);
    private final List<String> unread = new ArrayList<>();
    private final WrappedLabel said = new WrappedLabel("");
    private final JButton read = new JButton("Read");
    private final JButton stop = new JButton("Stop this");
    private final JPanel working = new JPanel(new MigLayout("insets 0 20 0 8, hidemode 3", "push[right,0::][120!][]"));
    private final List<Work.Task> tasks = new ArrayList<>();

    WorkStrip() {
        super(new MigLayout("insets 0 n 0 n, hidemode 3", "[grow,fill][]"));
        setName("work");
        words.setName("work words");
        stop.setName("stop");
        stop.setMargin(new java.awt.Insets(0, 10, 0, 10));
        stop.setMnemonic('P');
        stop.addActionListener(e -> {
            tasks.forEach(Work.Task::stop);
            words.setText("Stopping…");
        });
        said.setName("said");
        read.setName("read");
        read.setMargin(stop.getMargin());
        read.setMnemonic('D');
        read.setToolTipText("Takes the message away (Alt+D)");
        read.addActionListener(e -> {
            unread.clear();
            showUnread();
        });
        add(said, "growx, wmin 0");
        add(read);
        working.setOpaque(false);
        working.add(words, "wmin 0");
        working.add(bar);
        working.add(stop);
        showUnread();
        idle();
    }

    /** What is being done, for the end of the menu bar, where it takes no room from the work. */
    JPanel working() {
        return working;
    }

    /** Says something that stays in sight until it is read. */
    void say(String text) {
        unread.remove(text);
        unread.add(text);
        if (unread.size() > MOST_UNREAD) {
            unread.remove(0);
        }
        showUnread();
    }

    /** Says what was said by another strip and not read there. */
    void takeOver(WorkStrip other) {
        other.unread.forEach(this::say);
    }

    /** Says what goes on by itself; the next work takes its place. */
    void passing(String text) {
        words.setText(text);
    }

    private void showUnread() {
        said.setText(String.join("\n", unread));
        said.setVisible(!unread.isEmpty());
        read.setVisible(!unread.isEmpty());
        revalidate();
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
