package evenblade.face.desktop;

import evenblade.tell.chart.Ink;
import java.awt.Component;
import java.awt.Container;
import java.awt.Dimension;
import java.util.Arrays;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JTextArea;
import javax.swing.text.DefaultCaret;

/** What is wrong, in its place, in words; nothing where nothing is. */
final class Complaint extends JTextArea {
    private static final String OUTLINE = "JComponent.outline";

    private transient Optional<JComponent> marked = Optional.empty();

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

    /** Shows what is wrong with a field, marks it and goes there. */
    void show(String text, JComponent field) {
        show(text);
        marked = Optional.of(field);
        field.putClientProperty(OUTLINE, "error");
        field.requestFocusInWindow();
    }

    /** Shows what is wrong, at the field of that name where there is one. */
    void show(String text, Container fields, String name) {
        named(fields, name).ifPresentOrElse(field -> show(text, field), () -> show(text));
    }

    private static Optional<JComponent> named(Container in, String name) {
        return Arrays.stream(in.getComponents())
                .flatMap(each -> found(each, name).stream())
                .findFirst();
    }

    private static Optional<JComponent> found(Component each, String name) {
        return name.equals(each.getName()) && each instanceof JComponent there
                ? Optional.of(there)
                : each instanceof Container inner ? named(inner, name) : Optional.empty();
    }

    /** Nothing is wrong any more. */
    void clear() {
        marked.ifPresent(field -> field.putClientProperty(OUTLINE, null));
        marked = Optional.empty();
        setText("");
        setVisible(false);
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(50, super.getPreferredSize().height);
    }
}
