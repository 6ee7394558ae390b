package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import java.awt.Dimension;
import javax.swing.BorderFactory;
import javax.swing.JTextArea;
import javax.swing.text.DefaultCaret;

/** What is wrong, in its place, in words; nothing where nothing is. */
final class Complaint extends JTextArea {
    Complaint() {
        setName("complaint");
        setEditable(false);
        setFocusable(false);
        ((DefaultCaret) getCaret()).setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
        setLineWrap(true);
        setWrapStyleWord(true);
        setOpaque(false);
        setVisible(false);
    }

    /** Shows what is wrong. */
    void show(String text) {
        setText("✕  " + text);
        setForeground(Look.ink(Ink.LIMIT));
        setBorder(BorderFactory.createCompoundBorder(
                BorderFactory.createMatteBorder(0, 4, 0, 0, Look.ink(Ink.LIMIT)),
                BorderFactory.createEmptyBorder(4, 8, 4, 4)));
        setVisible(true);
        revalidate();
    }

    /** Nothing is wrong any more. */
    void clear() {
        setText("");
        setVisible(false);
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(50, super.getPreferredSize().height);
    }
}
