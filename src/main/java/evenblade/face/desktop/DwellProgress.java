package evenblade.face.desktop;

import evenblade.face.app.LiveRecording;
import evenblade.measure.live.LiveReading;
import evenblade.measure.live.StepProgress;
import evenblade.measure.orders.DwellOrders;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import java.awt.Font;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JProgressBar;
import net.miginfocom.swing.MigLayout;

/** What speed to hold now and for how long still; without steps, for how long the speed was steady. */
final class DwellProgress extends JPanel {
    private static final float LARGE = 1.6f; // read from the other seat; ours

    private final JLabel words = new JLabel(" ");
    private final JProgressBar bar = new JProgressBar(0, 1000);
    private int steps;

    DwellProgress() {
        super(new MigLayout("insets 0, gapy 2, wrap 1, hidemode 2", "[grow,fill]", "[][]"));
        words.setName("live dwell");
        words.setFont(words.getFont().deriveFont(Font.BOLD, words.getFont().getSize2D() * LARGE));
        bar.setName("dwell bar");
        add(words, "wmin 0");
        add(bar, "hmin " + Look.em());
    }

    /** A recording begins with so many steps to be led through. */
    void began(int stepCount) {
        steps = stepCount;
        words.setText(steps == 0 ? " " : "Step 1 of " + steps + ": waiting for the speed");
        bar.setValue(0);
        bar.setVisible(steps > 0);
    }

    void show(LiveRecording.View view) {
        if (steps == 0) {
            view.reading().ifPresent(this::steady);
            return;
        }
        int done = view.finished().size();
        if (done == steps) {
            say("All " + steps + " dwells held. Stop the recording (space).", Ink.TEXT);
            bar.setValue(bar.getMaximum());
            return;
        }
        view.step().filter(step -> !step.done()).ifPresent(step -> lead(step, "Step " + (done + 1) + " of " + steps));
    }

    private void lead(StepProgress step, String which) {
        String rpm = FigureFormat.fixed(step.engineRpm(), 0) + " engine rpm";
        if (step.state() == StepProgress.State.GO_THERE) {
            say(which + ": go to " + rpm, Ink.CRANK);
            bar.setValue(0);
            return;
        }
        double held = Math.min(1, step.heldS() / Math.max(1, step.wantedS()));
        say(
                which + ": hold " + rpm + ", " + FigureFormat.fixed(step.heldS(), 0) + " of "
                        + FigureFormat.fixed(step.wantedS(), 0) + " s"
                        + (held < 1 ? "" : ", a little longer: the lines are weak"),
                Ink.TEXT);
        bar.setValue((int) (held * bar.getMaximum()));
    }

    private void steady(LiveReading reading) {
        Optional<DwellOrders> held = LiveScreen.latestDwell(reading);
        say(
                held.map(each -> "Steady for "
                                + FigureFormat.fixed(each.dwell().durationS(), 0) + " s of the last "
                                + FigureFormat.fixed(reading.toS() - reading.fromS(), 0))
                        .orElse("Not steady yet"),
                Ink.TEXT);
    }

    private void say(String text, Ink ink) {
        words.setText(text);
        words.setForeground(Look.ink(ink));
    }
}
