package evenblade.face.desktop;

import java.awt.Dimension;
import javax.swing.JTextArea;
import javax.swing.UIManager;
import javax.swing.text.DefaultCaret;

/** Words that wrap at the width there is, and can be copied. */
final class WrappedLabel extends JTextArea {
    WrappedLabel(String text) {
        super(text);
        setEditable(false);
        setLineWrap(true);
        setWrapStyleWord(true);
        setOpaque(false);
        setBorder(null);
        setFocusable(false);
        ((DefaultCaret) getCaret()).setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
        setFont(UIManager.getFont("Label.font"));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(50, super.getMinimumSize().height);
    }
}
