package evenblade.face.desktop;

import evenblade.face.app.LiveRecording;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.Font;
import java.awt.event.ActionListener;
import java.util.List;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;

/** What speed to hold now and for how long still; without steps, for how long the speed was steady. */
final class DwellProgress extends JPanel {
    private final FarLabel words = new FarLabel(" ", Font.PLAIN);
    private final JLabel note = Look.quiet(" ");
    private final JProgressBar bar = new JProgressBar(0, 1000);
    private final JButton skip = new JButton("Later");
    private final JButton repeat = new JButton("Once more");
    private final MigLayout rows = new MigLayout("insets 0, gapy 2, hidemode 3", "[grow,fill][]");
    private final JPanel choices = new JPanel(new MigLayout("insets 0, gap 6", "[][]"));
    private int steps;

    DwellProgress() {
        setLayout(rows);
        words.setName("live dwell");
        note.setName("dwell note");
        bar.setName("dwell bar");
        add(words, "span 2, wmin 0, wrap");
        add(note, "split 2, growx 0");
        add(bar, "growx, hmin " + Look.em());
        skip.setName("skip step");
        skip.setMnemonic('L');
        skip.setToolTipText("Leave this step for later; any step may be held at any time");
        repeat.setName("repeat step");
        repeat.setMnemonic('O');
        repeat.setToolTipText("Take back the step that was done last, and hold it anew");
        for (JButton each : List.of(skip, repeat)) {
            // The space bar belongs to the recording.
            each.setFocusable(false);
            choices.add(each);
        }
        add(choices);
    }

    /** Makes figures so high. */
    void figures(double heightPx) {
        words.figures(heightPx);
        // One height, also where long words are smaller.
        rows.setRowConstraints("[" + words.room(" ").height + "px!][]");
    }

    /** A recording begins with so many steps to be led through. */
    void began(int stepCount, LiveRecording run) {
        steps = stepCount;
        for (JButton each : List.of(skip, repeat)) {
            for (ActionListener old : each.getActionListeners()) {
                each.removeActionListener(old);
            }
        }
        skip.addActionListener(e -> run.skipStep());
        repeat.addActionListener(e -> run.repeatStep());
        choices.setVisible(steps > 0);
        say(" ", Ink.TEXT);
        bar.setValue(0);
        bar.setVisible(steps > 0);
    }

    void show(LiveRecording.View view) {
        if (steps == 0) {
            view.reading().ifPresent(this::steady);
            return;
        }
        skip.setEnabled(view.step().isPresent());
        repeat.setEnabled(!view.finished().isEmpty());
        if (view.liveStopped()) {
            say("Live stopped. Recording goes on.", Ink.LIMIT, "Nobody counts the steps");
            bar.setValue(0);
        } else if (view.step().isPresent()) {
            lead(view.step().get());
        } else {
            int done = view.finished().size();
            String which = done == steps ? "All " + steps : done + " of " + steps;
            say(which + " dwells held. Stop (space).", Ink.TEXT);
            bar.setValue(bar.getMaximum());
        }
    }

    private void lead(StepProgress step) {
        String which = "Step " + step.number() + " of " + step.of();
        String rpm = FigureFormat.fixed(step.engineRpm(), 0) + " rpm";
        if (step.state() == StepProgress.State.GO_THERE) {
            say(which + ": go to " + rpm, Ink.CRANK);
            bar.setValue(0);
            return;
        }
        double held = Math.min(1, step.heldS() / Math.max(1, step.wantedS()));
        say(
                which + ": hold " + rpm + ", " + FigureFormat.fixed(step.heldS(), 0) + " of "
                        + FigureFormat.fixed(step.wantedS(), 0) + " s",
                Ink.TEXT,
                held < 1 ? "" : "Weak lines: hold longer");
        bar.setValue((int) (held * bar.getMaximum()));
    }

    private void steady(LiveReading reading) {
        say(
                reading.heldS()
                        .map(held -> "Steady for " + FigureFormat.fixed(held, 0) + " s")
                        .orElse("Not steady yet"),
                Ink.TEXT);
    }

    private void say(String text, Ink ink) {
        say(text, ink, "");
    }

    private void say(String text, Ink ink, String more) {
        words.setText(text);
        words.setForeground(Look.ink(ink));
        note.setText(more);
        note.setVisible(!more.isEmpty());
    }
}
