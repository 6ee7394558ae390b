package evenblade.face.desktop;

import evenblade.face.app.SummariseRuns.Summary;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.measure.orders.Level;
import java.util.Comparator;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.DefaultListModel;
import javax.swing.JList;
import javax.swing.ListSelectionModel;

/** What was done in a job, the newest in front. */
final class TimelineList extends JList<Event> {
    private final transient Consumer<Event> chosen;
    private transient Optional<OpenJob> shown = Optional.empty();
    private transient Map<String, Summary> summaries = Map.of();
    private Order order = Order.NEWEST;
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

    /** In what order entries stand. */
    enum Order {
        NEWEST,
        LARGEST,
        FASTEST
    }

    void show(OpenJob job) {
        shown = Optional.of(job);
        fill();
    }

    /** What the runs came to, by their id. */
    void summaries(Map<String, Summary> known) {
        summaries = known;
        fill();
    }

    void sort(Order by) {
        order = by;
        fill();
    }

    private double size(Event run) {
        Optional<Summary> known = Optional.ofNullable(summaries.get(run.id()));
        return order == Order.FASTEST
                ? known.map(Summary::engineRpm).orElse(0.0)
                : known.flatMap(Summary::once).map(Level.Measured::amplitude).orElse(0.0);
    }

    private void fill() {
        if (shown.isEmpty()) {
            return;
        }
        filling = true;
        OpenJob job = shown.get();
        Optional<Event> marked = Optional.ofNullable(getSelectedValue());
        DefaultListModel<Event> model = new DefaultListModel<>();
        model.addAll(
                order == Order.NEWEST
                        ? job.newestFirst()
                        : job.newestFirst().stream()
                                .filter(each -> each.kind() == Kind.RUN)
                                .sorted(Comparator.comparingDouble(each -> -size(each)))
                                .toList());
        setCellRenderer(new TimelineCell(job.record().struckOut(), summaries));
        setFixedCellHeight(4 * Look.em());
        setModel(model);
        filling = false;
        mark(marked);
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
