package evenblade.face.desktop;

import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedResult;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.SpeedWords;
import java.util.Locale;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The speed of a run in large figures, and how it is known. */
final class SpeedHeading extends JPanel {
    private final JLabel figures = Look.heading(" ");
    private final JLabel known = new JLabel(" ");

    SpeedHeading() {
        super(new MigLayout("insets 0, wrap 1, gapy 2", "[grow,fill]"));
        figures.setName("speed");
        known.setName("speed known");
        add(figures, "wmin 0");
        add(known, "wmin 0");
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
