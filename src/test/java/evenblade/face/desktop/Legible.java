package evenblade.face.desktop;

import java.awt.Component;
import java.awt.Container;
import java.awt.FontMetrics;
import java.awt.Insets;
import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import javax.swing.AbstractButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JLayeredPane;
import javax.swing.JSplitPane;
import javax.swing.JTabbedPane;
import javax.swing.JTable;
import javax.swing.JTextArea;
import javax.swing.JTextField;
import javax.swing.JViewport;
import javax.swing.SwingUtilities;

/**
 * Looks a window over for words that are cut off and things that lie on each other. Words that are
 * shortened are let pass where the whole of them stands in the tip that opens under the pointer.
 */
final class Legible {
    private static final int ROUNDING_PX = 1;

    private final List<String> troubles = new ArrayList<>();

    private Legible() {}

    /** What can't be read or reached, in words; nothing where all can. Called on the event thread. */
    static List<String> troubles(Container window) {
        Legible look = new Legible();
        look.over(window);
        return look.troubles;
    }

    private void over(Container in) {
        List<Component> seen = new ArrayList<>();
        for (Component each : in.getComponents()) {
            if (each.isShowing() && each.getWidth() > 0 && each.getHeight() > 0) {
                if (!(in instanceof JViewport)) {
                    inside(in, each);
                }
                seen.add(each);
                words(each);
                if (each instanceof Container inner && !(each instanceof JComboBox)) {
                    over(inner);
                }
            } else if (each.isShowing() && each instanceof JComponent c && anythingIn(c)) {
                troubles.add(name(each) + " has no room at all");
            }
        }
        boolean piled = in instanceof JLayeredPane || in instanceof JTabbedPane || in instanceof JSplitPane;
        if (!piled) {
            apart(seen);
        }
    }

    private static boolean anythingIn(JComponent component) {
        return java.util.Arrays.stream(component.getComponents()).anyMatch(Component::isVisible);
    }

    private void inside(Container in, Component each) {
        Rectangle room = new Rectangle(0, 0, in.getWidth(), in.getHeight());
        room.grow(ROUNDING_PX, ROUNDING_PX);
        if (!room.contains(each.getBounds())) {
            troubles.add(name(each) + " reaches out of " + name(in) + ": " + each.getBounds() + " of " + in.getSize());
        }
    }

    private void apart(List<Component> seen) {
        for (int i = 0; i < seen.size(); i++) {
            for (int j = i + 1; j < seen.size(); j++) {
                Rectangle both =
                        seen.get(i).getBounds().intersection(seen.get(j).getBounds());
                if (both.width > ROUNDING_PX && both.height > ROUNDING_PX) {
                    troubles.add(name(seen.get(i)) + " lies on " + name(seen.get(j)));
                }
            }
        }
    }

    private void words(Component each) {
        if (each instanceof JLabel label && label.getText() != null) {
            whole(label, label.getText());
        } else if (each instanceof AbstractButton button && button.getText() != null) {
            whole(button, button.getText());
        } else if (each instanceof JComboBox<?> box) {
            whole(box, String.valueOf(box.getSelectedItem()));
        } else if (each instanceof JTextArea area && !area.isEditable()) {
            if (area.getPreferredSize().height > area.getHeight() + ROUNDING_PX) {
                troubles.add("lines are cut off: " + area.getText());
            }
        } else if (each instanceof JTextField field && field.getText().isEmpty()) {
            hint(field);
        } else if (each instanceof JTabbedPane tabs) {
            tabs(tabs);
        } else if (each instanceof JTable table) {
            cells(table);
        }
    }

    private void whole(JComponent component, String text) {
        boolean cut = component.getPreferredSize().width > component.getWidth() + ROUNDING_PX
                || component.getPreferredSize().height > component.getHeight() + ROUNDING_PX;
        if (cut && !text.isBlank() && !text.equals(component.getToolTipText())) {
            troubles.add("cut off: '" + text + "' (" + component.getWidth() + " of "
                    + component.getPreferredSize().width + " px)");
        }
    }

    private void hint(JTextField field) {
        Object hint = field.getClientProperty("JTextField.placeholderText");
        if (hint == null || hint.equals(field.getToolTipText())) {
            return;
        }
        Insets insets = field.getInsets();
        FontMetrics letters = field.getFontMetrics(field.getFont());
        int room = field.getWidth() - insets.left - insets.right;
        if (letters.stringWidth(hint.toString()) > room + ROUNDING_PX) {
            troubles.add(
                    "hint cut off: '" + hint + "' (" + room + " of " + letters.stringWidth(hint.toString()) + " px)");
        }
    }

    private void tabs(JTabbedPane tabs) {
        for (int i = 0; i < tabs.getTabCount(); i++) {
            Rectangle tab = tabs.getUI().getTabBounds(tabs, i);
            if (tab == null || tab.x < 0 || tab.getMaxX() > tabs.getWidth()) {
                troubles.add("tab out of sight: " + tabs.getTitleAt(i));
            }
        }
    }

    private void cells(JTable table) {
        for (int column = 0; column < table.getColumnCount(); column++) {
            for (int row = 0; row < table.getRowCount(); row++) {
                JComponent cell = (JComponent) table.prepareRenderer(table.getCellRenderer(row, column), row, column);
                int room = table.getColumnModel().getColumn(column).getWidth();
                String text = String.valueOf(table.getValueAt(row, column));
                // A figure without its end is another one; a tip doesn't mend that. Sentences may begin with one.
                boolean figure = text.matches("[+−]?[0-9.]+( .{0,20})?");
                if (cell.getPreferredSize().width > room + ROUNDING_PX
                        && (figure || !text.equals(cell.getToolTipText()))) {
                    troubles.add("cell cut off: '" + text + "'");
                }
            }
        }
    }

    private static String name(Component each) {
        Container frame = SwingUtilities.getAncestorOfClass(JComponent.class, each);
        String own = each.getName() == null ? each.getClass().getSimpleName() : each.getName();
        return each.getName() != null || frame == null
                ? own
                : own + " in " + (frame.getName() == null ? frame.getClass().getSimpleName() : frame.getName());
    }
}
