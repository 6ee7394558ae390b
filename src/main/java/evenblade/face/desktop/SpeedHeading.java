package evenblade.face.desktop;

import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.SpeedWords;
import java.util.Locale;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The speed of a run in large figures, and how it is known. */
final class SpeedHeading extends RowsPanel {
    private final JLabel figures = Look.heading(" ");
    private final JLabel known = new JLabel(" ");

    SpeedHeading() {
        super(0, 0, 0, 0);
        figures.setName("speed");
        known.setName("speed known");
        add(figures);
        add(known);
    }

    /** Puts a choice between the figures and how they are known. */
    void choice(String words, JComponent choice) {
        JPanel both = new JPanel(new MigLayout("insets 0"));
        JLabel label = new JLabel(words);
        label.setLabelFor(choice);
        both.add(label);
        both.add(choice, "wmin 50");
        add(both, getComponentCount() - 1);
    }

    void show(RunOrders run) {
        SpeedResult speed = run.speed();
        if (speed.main().isEmpty()) {
            figures.setText("Speed not found");
            known.setText(
                    speed.doubt().map(Words::fact).orElse("") + ". Add the run again with its rpm if it is known.");
            return;
        }
        Dwell main = speed.main().get();
        figures.setText("Engine " + SpeedWords.engine(run, main));
        figures.setToolTipText(figures.getText());
        String how = speed.confirmed()
                ? (speed.origin() == SpeedResult.Origin.MARK ? "Confirmed by the mark" : "Confirmed by the signal")
                : "NOT CONFIRMED: " + speed.doubt().map(Words::fact).orElseThrow();
        known.setText("Propeller " + SpeedWords.propeller(run, main) + ". " + how + ".");
        known.setToolTipText(known.getText());
    }

    /** A dwell in a list to choose from. */
    static String dwell(Dwell dwell, RunOrders run) {
        return String.format(
                Locale.ROOT,
                "%s engine rpm, %s to %s s",
                FigureFormat.fixed(dwell.propellerRpm() * run.ratio(), 0),
                FigureFormat.fixed(dwell.fromS(), 1),
                FigureFormat.fixed(dwell.toS(), 1));
    }
}
