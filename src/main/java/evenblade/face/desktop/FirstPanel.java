package evenblade.face.desktop;

import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** What stands beside the timeline of a job without entries. */
final class FirstPanel extends JPanel {
    FirstPanel() {
        super(new MigLayout("insets 18, wrap 1", "[grow,fill]"));
        add(Look.heading("Nothing was done yet"));
        add(
                new WrappedLabel("Write down what is done, in the order it is done: tip marks, runs, what was changed. "
                        + "Change one thing at a time, and run the same speeds before and after."),
                "wmin 50");
    }
}
