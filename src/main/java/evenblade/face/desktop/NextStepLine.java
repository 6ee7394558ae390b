package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import java.util.Optional;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** One line that always says the next useful step, with a button that begins it. */
final class NextStepLine extends JPanel {
    private final JLabel words = Look.strong(" ");
    private final JButton go = Look.main(new JButton());

    NextStepLine() {
        super(new MigLayout("insets 1 14 1 14, hidemode 3", "[][grow,fill][]"));
        words.setName("next step");
        go.setName("do next step");
        go.setMargin(new java.awt.Insets(2, 12, 2, 12));
        add(new JLabel("Next"));
        add(words, "wmin 0");
        add(go);
        updateLine();
    }

    private void updateLine() {
        setBackground(Look.ink(Ink.SHADE));
        setBorder(BorderFactory.createMatteBorder(0, 6, 0, 0, Look.ink(Ink.CRANK)));
    }

    void show(String step, Optional<Action> action) {
        words.setText(step);
        words.setToolTipText(step);
        go.setVisible(action.isPresent());
        action.ifPresent(go::setAction);
    }

    @Override
    public void updateUI() {
        super.updateUI();
        updateLine();
    }
}
