package evenblade.face.desktop;

import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** Sentences below each other, scrolled where there is no room. */
final class Lines extends JScrollPane {
    private final JPanel panel = new WidePanel(new MigLayout("insets 8, wrap 1, gapy 5", "[grow,fill]"));

    Lines() {
        setViewportView(panel);
        setBorder(BorderFactory.createEmptyBorder());
        setHorizontalScrollBarPolicy(HORIZONTAL_SCROLLBAR_NEVER);
        getVerticalScrollBar().setUnitIncrement(Look.em());
    }

    void clear() {
        panel.removeAll();
    }

    WrappedLabel say(String text) {
        WrappedLabel paragraph = new WrappedLabel(text);
        panel.add(paragraph, "wmin 50");
        return paragraph;
    }

    /** A sentence with something to press behind it. */
    WrappedLabel say(String text, JComponent behind) {
        JPanel row = new JPanel(new MigLayout("insets 0, gap 8", "[grow,fill][]", "[top]"));
        WrappedLabel paragraph = new WrappedLabel(text);
        row.add(paragraph, "wmin 50");
        row.add(behind);
        panel.add(row, "wmin 50");
        return paragraph;
    }

    WrappedLabel strong(String text) {
        WrappedLabel paragraph = new WrappedLabel(text);
        paragraph.setFont(paragraph.getFont().deriveFont(java.awt.Font.BOLD));
        panel.add(paragraph, "wmin 50, gaptop 8");
        return paragraph;
    }

    void put(JComponent component) {
        panel.add(component, "grow 0");
    }

    /** All is said: shows it from the top. */
    void done() {
        panel.revalidate();
        panel.repaint();
        javax.swing.SwingUtilities.invokeLater(() -> getVerticalScrollBar().setValue(0));
    }
}
