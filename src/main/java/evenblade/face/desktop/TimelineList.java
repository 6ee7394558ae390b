package evenblade.face.desktop;

import evenblade.keep.job.Event;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.DefaultListModel;
import javax.swing.JList;
import javax.swing.ListSelectionModel;

/** What was done in a job, the newest in front. */
final class TimelineList extends JList<Event> {
    private final transient Consumer<Event> chosen;
    private boolean filling;

    TimelineList(Consumer<Event> chosen) {
        this.chosen = chosen;
        setName("timeline");
        setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        getAccessibleContext().setAccessibleName("What was done, newest first");
        addListSelectionListener(e -> {
            if (!e.getValueIsAdjusting() && !filling && getSelectedValue() != null) {
                this.chosen.accept(getSelectedValue());
            }
        });
    }

    void show(OpenJob job) {
        filling = true;
        DefaultListModel<Event> model = new DefaultListModel<>();
        model.addAll(job.newestFirst());
        setCellRenderer(new TimelineCell(job.record().struckOut()));
        setFixedCellHeight(4 * Look.em());
        setModel(model);
        filling = false;
    }

    /** Long words are cut rather than scrolled to. */
    @Override
    public boolean getScrollableTracksViewportWidth() {
        return true;
    }

    /** Marks an entry without showing it again. */
    void mark(Optional<Event> event) {
        filling = true;
        event.ifPresentOrElse(
                each -> {
                    for (int i = 0; i < getModel().getSize(); i++) {
                        if (getModel().getElementAt(i).id().equals(each.id())) {
                            setSelectedIndex(i);
                            ensureIndexIsVisible(i);
                        }
                    }
                },
                this::clearSelection);
        filling = false;
    }
}
