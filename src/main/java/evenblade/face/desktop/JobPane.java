package evenblade.face.desktop;

import evenblade.base.fact.Warning;
import evenblade.face.app.NextStep;
import evenblade.face.app.SummariseRuns;
import evenblade.face.app.WhatNext;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.InstallationDocument;
import java.awt.BorderLayout;
import java.awt.Component;
import java.util.Optional;
import java.util.stream.Collectors;
import javax.swing.Action;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JSplitPane;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;

/** An open job: the next step, the timeline, and the thing at hand beside it. */
final class JobPane extends JPanel {
    /** Usual width of the timeline in tenths of the height of a letter, so that it grows with the text. */
    private static final int TIMELINE_TENTHS = 235;

    private static final String TIMELINE_KEY = "timeline.tenths";
    private static final int TENTHS = 10; // of a letter's height
    private static final int LEAST_TIMELINE_WIDTH = 240; // narrower no entry can be read

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final transient JobCommands commands;
    private final NextStepLine next = new NextStepLine();
    private final TimelineList timeline;
    private final RowsPanel pages = new RowsPanel(3, 10, 3, 10);
    private final JPanel atHand = new JPanel(new BorderLayout());
    private final JSplitPane split;
    private final JPanel troubles = new JPanel(new MigLayout("insets 0, wrap 1, hidemode 3", "[grow,fill]"));

    private transient Optional<Work.Task> weighing = Optional.empty();
    private transient Optional<Work.Task> summing = Optional.empty();

    JobPane(Navigator bench, OpenJob job, JobCommands commands) {
        super(new MigLayout("insets 0, gap 0, wrap 1, hidemode 2", "[grow,fill]", "[][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.commands = commands;
        setName("job pane");
        timeline = new TimelineList(bench::showEntry);
        add(pages, "wmin 50");
        looking();
        add(next);
        add(troubles);
        split = new JSplitPane(JSplitPane.HORIZONTAL_SPLIT, left(), atHand);
        split.setContinuousLayout(true);
        split.setDividerLocation(timelineWidth());
        split.addPropertyChangeListener(JSplitPane.DIVIDER_LOCATION_PROPERTY, e -> keepWidth());
        add(split, "push, grow, wmin 300, hmin 200");
        refresh();
    }

    private int timelineWidth() {
        int width = bench.settings().number(TIMELINE_KEY, TIMELINE_TENTHS) * Look.em() / TENTHS;
        return Math.max(LEAST_TIMELINE_WIDTH, width);
    }

    /** As the hand drew it; what the divider does while the timeline is away doesn't count. */
    private void keepWidth() {
        if (split.getLeftComponent().isVisible() && split.getDividerLocation() >= LEAST_TIMELINE_WIDTH) {
            bench.settings().keep(TIMELINE_KEY, split.getDividerLocation() * TENTHS / Look.em());
        }
    }

    private void looking() {
        for (Action action : commands.looking()) {
            JToggleButton button = new JToggleButton(action);
            button.setMargin(new java.awt.Insets(3, 10, 3, 10));
            button.setName("look " + action.getValue(Action.NAME));
            button.setToolTipText(MenuCommand.keys(action));
            pages.add(button);
        }
        if (job.record().invented()) {
            JLabel invented = Look.strong("INVENTED, nothing measured");
            invented.setForeground(Look.ink(Ink.CRANK));
            pages.add(invented);
        }
    }

    JobCommands commands() {
        return commands;
    }

    private JPanel left() {
        JPanel left = new JPanel(new MigLayout("insets 0, gap 0, wrap 1", "[grow,fill]", "[][][][][grow,fill]"));
        left.add(named(Look.strong(job.record().name())), "gap 12 8 4 0, wmin 50");
        left.add(
                tipped(Look.quiet(InstallationDocument.inOneLine(job.record().installation()))),
                "gap 12 8 0 0, wmin 50");
        JPanel adding = new JPanel(
                new MigLayout("insets 4 8 4 8, wrap 3, gap 4", "[grow,fill,sg][grow,fill,sg][grow,fill,sg]"));
        adding.add(button("Tip marks", commands.marks), "wmin 40");
        adding.add(button("Run", commands.addRun), "wmin 40");
        adding.add(button("Change", commands.correction), "wmin 40");
        adding.add(button("Weight", commands.weight), "wmin 40");
        adding.add(button("Note", commands.note), "wmin 40");
        adding.add(button("Photo", commands.attach), "wmin 40");
        left.add(adding);
        left.add(sorting(), "gap 8 8 0 4");
        JScrollPane scroll = new JScrollPane(timeline);
        scroll.setBorder(BorderFactory.createMatteBorder(1, 0, 0, 0, Look.ink(Ink.GRID)));
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        left.add(scroll, "wmin 100, hmin 60");
        return left;
    }

    private static JLabel named(JLabel label) {
        label.setName("job");
        return tipped(label);
    }

    private static JLabel tipped(JLabel label) {
        label.setToolTipText(label.getText());
        return label;
    }

    private JComboBox<String> sorting() {
        JComboBox<String> order =
                new JComboBox<>(new String[] {"Newest first", "Runs, largest 1× first", "Runs, fastest first"});
        order.setName("timeline order");
        order.setToolTipText("The order of the entries below");
        order.addActionListener(e -> timeline.sort(TimelineList.Order.values()[order.getSelectedIndex()]));
        return order;
    }

    private static JButton button(String words, Action action) {
        JButton button = new JButton(action);
        button.setHideActionText(true);
        button.setText("+ " + words);
        button.setMargin(new java.awt.Insets(3, 4, 3, 4));
        button.setName("add " + words.toLowerCase(java.util.Locale.ROOT));
        button.setToolTipText(action.getValue(Action.NAME) + "  " + MenuCommand.keys(action));
        return button;
    }

    /** The record changed: shows it as it is now. */
    void refresh() {
        timeline.show(job);
        NextStep step = NextStep.of(job.record());
        next.show(Words.fact(step.fact()), Optional.of(commands.of(step)));
        weigh();
        troubles.removeAll();
        for (Warning warning : job.view().warnings()) {
            Complaint complaint = new Complaint();
            complaint.show(Words.warning(warning));
            troubles.add(complaint, "gapleft 8, wmin 50");
        }
        if (!job.view().takes().isEmpty()) {
            JButton rescue = new JButton(commands.rescue);
            rescue.setName("rescue takes");
            troubles.add(rescue, "gapleft 8, grow 0");
        }
    }

    /** The findings know better what is next than the mere entries; they take their time. */
    private void weigh() {
        weighing.ifPresent(Work.Task::giveUp);
        if (job.record().standing(Kind.RUN).isEmpty()
                && job.record().standing(Kind.TRACKING).isEmpty()) {
            return;
        }
        summing.ifPresent(Work.Task::giveUp);
        summing = Optional.of(bench.work()
                .alongside(
                        "summing up",
                        progress -> SummariseRuns.summarise(job.folder(), progress),
                        timeline::summaries,
                        wrong -> {}));
        weighing = Optional.of(bench.work()
                .alongside(
                        "weighing",
                        progress -> WhatNext.find(job.folder(), Words.phrases(bench.settings()), progress),
                        found -> next.show(words(found), Optional.of(commands.of(found.action()))),
                        wrong -> {}));
    }

    /** The step, and behind it the runs that it doesn't rest on. */
    private static String words(WhatNext found) {
        return found.step()
                + (found.leftOut().isEmpty()
                        ? ""
                        : " (" + found.leftOut().stream().map(Words::warning).collect(Collectors.joining("; ")) + ")");
    }

    /** Puts a panel at hand. */
    void show(JComponent panel, Optional<Event> entry) {
        boolean alone = panel instanceof LivePane || panel instanceof InstallationForm;
        if (split.getLeftComponent().isVisible() == alone) {
            int width = timelineWidth();
            split.getLeftComponent().setVisible(!alone);
            split.setDividerLocation(width);
        }
        atHand.removeAll();
        atHand.add(panel);
        timeline.mark(entry);
        for (Component each : pages.getComponents()) {
            if (each instanceof JToggleButton page) {
                page.setSelected(page.getAction().equals(panel.getClientProperty(JobCommands.PAGE)));
            }
        }
        atHand.revalidate();
        atHand.repaint();
    }

    @Override
    public void removeNotify() {
        weighing.ifPresent(Work.Task::giveUp);
        summing.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }

    /** Everything around the panel at hand makes room for it, or comes back. */
    void giveRoom(boolean all) {
        for (Component each : getComponents()) {
            each.setVisible(each == split || !all);
        }
    }

    /** The recording under way, which must not be left by accident. */
    Optional<LivePane> recording() {
        return atHand.getComponentCount() == 1 && atHand.getComponent(0) instanceof LivePane live && live.recording()
                ? Optional.of(live)
                : Optional.empty();
    }
}
