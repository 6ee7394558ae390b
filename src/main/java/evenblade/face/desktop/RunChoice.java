package evenblade.face.desktop;

import evenblade.keep.job.Event;
import java.awt.Component;
import java.util.List;
import java.util.Optional;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JComboBox;
import javax.swing.JList;

/** The runs of a job to choose one from. */
final class RunChoice extends JComboBox<Event> {
    RunChoice(String name, List<Event> runs) {
        super(runs.toArray(Event[]::new));
        setName(name);
        setRenderer(new DefaultListCellRenderer() {
            @Override
            public Component getListCellRendererComponent(
                    JList<?> list, Object value, int index, boolean selected, boolean focused) {
                String words = value instanceof Event run ? Words.name(run) : "";
                return super.getListCellRendererComponent(list, words, index, selected, focused);
            }
        });
    }

    Optional<Event> chosen() {
        return Optional.ofNullable((Event) getSelectedItem());
    }
}
