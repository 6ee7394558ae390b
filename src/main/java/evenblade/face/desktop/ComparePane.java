package evenblade.face.desktop;

import evenblade.face.app.CompareRuns;
import evenblade.face.app.DrawComparison;
import evenblade.face.app.DrawComparison.Pictures;
import evenblade.face.app.DrawComparison.View;
import evenblade.face.app.WriteEntry;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.tell.document.ComparisonDocument;
import evenblade.tell.document.Document;
import java.awt.Component;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** Two runs held against each other: the verdict in words, bars with intervals, spectra and one turn over each other. */
final class ComparePane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final RunChoice before;
    private final RunChoice after;
    private final TablesPane tables = new TablesPane("comparison tables");
    private final Page words = new Page("comparison words");
    private final PicturePane bars;
    private final PicturePane spectra;
    private final PicturePane turn;
    private final JComboBox<String> view = new JComboBox<>();
    private final Complaint complaint = new Complaint();
    private final WrappedLabel question = new WrappedLabel(
            "Runs with no change entered between them differ more than twofold. If something was changed, enter it"
                    + " (+\u00a0Change); if not, say so:");
    private final RowsPanel answers = new RowsPanel(0, 0, 0, 0);
    private final JTabbedPane tabs = new JTabbedPane();
    private transient Optional<DrawComparison> drawing = Optional.empty();
    private transient List<View> views = List.of();
    private boolean filling;
    private transient Optional<Work.Task> task = Optional.empty();

    ComparePane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 4 14 8 14, gapy 3, wrap 1, hidemode 3", "[grow,fill]", ""));
        this.bench = bench;
        this.job = job;
        setName("compare");
        List<Event> runs = job.record().standing(Kind.RUN);
        before = new RunChoice("before", runs);
        after = new RunChoice("after", runs);
        bars = new PicturePane(bench);
        spectra = new PicturePane(bench);
        turn = new PicturePane(bench);
        add(viewed(), "wmin 50");
        add(choices(runs), "wmin 50");
        add(complaint);
        answers.setName("answers");
        question.setName("question");
        question.setVisible(false);
        answers.setVisible(false);
        add(question, "growx, wmin 50");
        add(answers, "wmin 50");
        tabs.setName("compare tabs");
        tabs.addTab("Tables", tables);
        tabs.addTab("Orders", bars);
        tabs.addTab("Spectra", spectra);
        tabs.addTab("One turn", turn);
        tabs.addTab("In words", words);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        if (runs.size() < 2) {
            complaint.show("Two runs are needed; this job has " + runs.size() + ".");
        } else {
            compare();
        }
    }

    private JPanel choices(List<Event> runs) {
        RowsPanel row = new RowsPanel(0, 0, 0, 0);
        if (runs.size() > 1) {
            before.setSelectedIndex(runs.size() - 2);
            after.setSelectedIndex(runs.size() - 1);
        }
        JButton go = new JButton("Compare");
        go.setName("do compare");
        go.setMargin(new java.awt.Insets(2, 12, 2, 12));
        go.addActionListener(e -> compare());
        row.add(Look.label("Before", before));
        row.add(before);
        row.add(Look.label("After", after));
        row.add(after);
        row.add(go);
        return row;
    }

    private JPanel viewed() {
        RowsPanel row = new RowsPanel(0, 0, 0, 0);
        row.add(Look.heading("Before and after"));
        view.setName("compare view");
        view.addActionListener(e -> choose());
        row.add(Look.label("Pictures of", view));
        row.add(view);
        return row;
    }

    private record Answer(CompareRuns.Answer compared, Optional<DrawComparison> drawing) {}

    private void compare() {
        complaint.clear();
        question.setVisible(false);
        answers.setVisible(false);
        task.ifPresent(Work.Task::giveUp);
        Path folder = job.folder();
        Optional<Event> one = before.chosen();
        Optional<Event> other = after.chosen();
        if (one.isEmpty() || other.isEmpty()) {
            return;
        }
        task = Optional.of(bench.begin(
                "Comparing " + Words.name(one.get()) + " with " + Words.name(other.get()),
                progress -> {
                    progress.at(0, "measuring the runs");
                    CompareRuns.Answer compared = CompareRuns.compare(
                            folder, one.get().id(), other.get().id(), OptionalDouble.empty());
                    return new Answer(compared, DrawComparison.prepare(folder, compared));
                },
                this::show,
                complaint::show));
    }

    private void show(Answer answer) {
        CompareRuns.Answer compared = answer.compared();
        Document answered = ComparisonDocument.of(
                compared.comparison(),
                compared.changes(),
                compared.warnings(),
                ComparisonDocument.Extent.ALL,
                Words.PHRASES);
        tables.show(answered);
        words.show(answered);
        if (!compared.comparison().comparable()) {
            // There is no table of what can't be compared: the reasons stand in the words.
            tabs.setSelectedComponent(words);
        }
        ask(compared.unanswered());
        drawing = answer.drawing();
        views = drawing.map(DrawComparison::views).orElse(List.of());
        filling = true;
        view.removeAllItems();
        views.forEach(each -> view.addItem(each.words()));
        filling = false;
        view.setEnabled(!views.isEmpty());
        if (views.isEmpty()) {
            show(new Pictures(Optional.empty(), Optional.empty(), Optional.empty()));
        } else {
            choose();
        }
    }

    /** What was asked of runs that differ too much to repeat each other can be answered here. */
    private void ask(List<Event> unanswered) {
        answers.removeAll();
        for (Event run : unanswered) {
            answers.add(Look.button(
                    "Nothing was changed before '" + Words.name(run) + "'",
                    "nothing changed before " + run.id(),
                    () -> answer(run)));
        }
        question.setVisible(!unanswered.isEmpty());
        answers.setVisible(!unanswered.isEmpty());
        revalidate();
    }

    private void answer(Event run) {
        Path folder = job.folder();
        bench.begin(
                "Writing into the job",
                progress -> WriteEntry.nothingChanged(folder, run.id()),
                written -> {
                    bench.entered(List.of());
                    compare();
                },
                complaint::show);
    }

    /** Draws the channel and speed chosen. */
    private void choose() {
        int index = view.getSelectedIndex();
        if (filling || index < 0 || index >= views.size()) {
            return;
        }
        View chosen = views.get(index);
        drawing.ifPresent(two -> bench.begin(
                "Drawing " + chosen.words(), progress -> two.pictures(chosen), this::show, complaint::show));
    }

    private void show(Pictures pictures) {
        String nothing = "Nothing that could be compared.";
        bars.show(pictures.orders(), nothing);
        spectra.show(pictures.spectra(), views.isEmpty() ? nothing : "The two runs are in different units.");
        turn.show(
                pictures.turn(),
                views.isEmpty() ? nothing : "One turn is averaged where both runs held a confirmed speed long enough.");
    }

    @Override
    public void removeNotify() {
        task.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }

    /** The runs of a job to choose one from. */
    static final class RunChoice extends JComboBox<Event> {
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
}
