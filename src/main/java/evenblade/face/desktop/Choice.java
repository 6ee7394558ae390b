package evenblade.face.desktop;

import java.awt.Component;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javax.swing.DefaultComboBoxModel;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JComboBox;
import javax.swing.JList;

/** One of several things, or what was found without saying. */
final class Choice<T> extends JComboBox<Optional<T>> {
    private final transient Function<T, String> words;
    private transient Optional<T> found = Optional.empty();

    Choice(String name, Function<T, String> words) {
        this.words = words;
        setName(name);
        setRenderer(new DefaultListCellRenderer() {
            @Override
            public Component getListCellRendererComponent(
                    JList<?> list, Object value, int index, boolean selected, boolean focused) {
                return super.getListCellRendererComponent(list, text(value), index, selected, focused);
            }
        });
        offer(List.of());
    }

    /** Offers these beside what is found; what was said is no longer. */
    void offer(List<T> items) {
        List<Optional<T>> all = new ArrayList<>();
        all.add(Optional.empty());
        items.forEach(item -> all.add(Optional.of(item)));
        DefaultComboBoxModel<Optional<T>> model = new DefaultComboBoxModel<>();
        model.addAll(all);
        model.setSelectedItem(all.get(0));
        setModel(model);
    }

    /** Shows what was found without saying. */
    void found(Optional<T> item) {
        found = item;
        repaint();
    }

    void unsay() {
        found = Optional.empty();
        getModel().setSelectedItem(Optional.empty());
    }

    /** What is said; empty where it is left as found. */
    Optional<T> said() {
        int at = getSelectedIndex();
        return at < 0 ? Optional.empty() : getItemAt(at);
    }

    /** Says what these words say, where it is offered. */
    void say(String said) {
        for (int i = 1; i < getItemCount(); i++) {
            if (words.apply(getItemAt(i).orElseThrow()).equals(said)) {
                setSelectedIndex(i);
            }
        }
    }

    /** What is said, in words; blank where it is left as found. */
    String saidWords() {
        return said().map(words).orElse("");
    }

    private String text(Object value) {
        for (int i = 1; i < getItemCount(); i++) {
            if (getItemAt(i).equals(value)) {
                return words.apply(getItemAt(i).orElseThrow());
            }
        }
        return found.map(item -> words.apply(item) + " (found)").orElse("find out");
    }
}
