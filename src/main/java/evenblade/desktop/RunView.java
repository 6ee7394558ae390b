package evenblade.desktop;

import evenblade.app.AnalyseRun;
import evenblade.app.AnalysedRecording;
import evenblade.app.DrawRecording;
import evenblade.chart.Picture;
import evenblade.job.Event;
import evenblade.orders.ChannelOrders;
import evenblade.orders.DwellOrders;
import evenblade.orders.RunOrders;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** One ground run: its speed and how sure, its orders, its pictures. */
final class RunView extends JPanel {
    private final transient Bench bench;
    private final transient OpenJob job;
    private final transient Event run;
    private final SpeedHeading speed = new SpeedHeading();
    private final JComboBox<String> channel = new JComboBox<>();
    private final JComboBox<String> dwell = new JComboBox<>();
    private final OrdersTable table;
    private final PicturePane bars;
    private final PicturePane spectrum;
    private final PicturePane waterfall;
    private final PicturePane speedPicture;
    private final JTabbedPane tabs = new JTabbedPane();
    private final Complaint complaint = new Complaint();
    private transient Optional<Work.Task> task = Optional.empty();
    private boolean filling;

    RunView(Bench bench, OpenJob job, Event run) {
        super(new MigLayout("insets 14, wrap 1, hidemode 3", "[grow,fill]", "[][][][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.run = run;
        setName("run");
        table = new OrdersTable(bench.settings());
        bars = new PicturePane(bench);
        spectrum = new PicturePane(bench);
        waterfall = new PicturePane(bench);
        speedPicture = new PicturePane(bench);
        add(new EntryHeading(bench, job, run));
        add(speed);
        add(complaint);
        add(choices());
        add(tabs, "wmin 100");
        fillTabs();
        job.answer(run).ifPresentOrElse(this::show, this::work);
    }

    private JPanel choices() {
        channel.setName("channel");
        dwell.setName("dwell");
        channel.addActionListener(e -> choose());
        dwell.addActionListener(e -> choose());
        JPanel row = new JPanel(new MigLayout("insets 0", "[][]16[][]push"));
        JLabel channelWord = new JLabel("Channel");
        channelWord.setLabelFor(channel);
        JLabel dwellWord = new JLabel("Dwell");
        dwellWord.setLabelFor(dwell);
        row.add(channelWord);
        row.add(channel);
        row.add(dwellWord);
        row.add(dwell);
        return row;
    }

    private void fillTabs() {
        tabs.setName("run tabs");
        tabs.addTab("Orders", new JScrollPane(table));
        tabs.addTab("Bars", bars);
        tabs.addTab("Spectrum", spectrum);
        tabs.addTab("Waterfall", waterfall);
        tabs.addTab("Speed", speedPicture);
        tabs.addTab("To know", new JPanel());
    }

    private void work() {
        Path folder = job.folder();
        bars.show(Optional.empty(), "working…");
        task = Optional.of(bench.work()
                .begin(
                        "Analysing " + Words.name(run),
                        progress -> {
                            AnalysedRecording analysed = AnalyseRun.answer(folder, run.id(), progress);
                            progress.at(1, "drawing the pictures");
                            return new OpenJob.RunAnswer(analysed, DrawRecording.answer(analysed));
                        },
                        answer -> {
                            job.keep(run, answer);
                            show(answer);
                        },
                        wrong -> {
                            complaint.show(wrong);
                            bars.show(Optional.empty(), "");
                        }));
    }

    private void show(OpenJob.RunAnswer answer) {
        RunOrders orders = answer.analysed().orders();
        speed.show(orders);
        filling = true;
        channel.removeAllItems();
        orders.channels().forEach(each -> channel.addItem(each.channel()));
        filling = false;
        tabs.setComponentAt(5, ToKnow.lines(orders.warnings(), run));
        tabs.setTitleAt(5, "To know (" + orders.warnings().size() + ")");
        choose();
    }

    private void choose() {
        Optional<OpenJob.RunAnswer> answer = job.answer(run);
        if (filling || answer.isEmpty() || channel.getSelectedIndex() < 0) {
            return;
        }
        RunOrders orders = answer.get().analysed().orders();
        ChannelOrders chosen = orders.channels().get(channel.getSelectedIndex());
        fillDwells(chosen, orders);
        Map<String, Picture> pictures = answer.get().pictures();
        boolean found = orders.speed().main().isPresent();
        bars.show(picture(pictures, "orders"), found ? "no dwell to measure orders in" : "no speed, no orders");
        spectrum.show(picture(pictures, "spectrum"), "no spectrum");
        waterfall.show(picture(pictures, "waterfall"), "no waterfall");
        speedPicture.show(Optional.ofNullable(pictures.get("speed")), "the speed was not found");
        if (dwell.getSelectedIndex() >= 0) {
            DwellOrders measured = chosen.dwells().get(dwell.getSelectedIndex());
            table.show(measured, chosen.unit(), orders.speed().confirmed());
        }
    }

    private void fillDwells(ChannelOrders chosen, RunOrders orders) {
        if (dwell.getItemCount() == chosen.dwells().size()) {
            return;
        }
        filling = true;
        dwell.removeAllItems();
        int longest = 0;
        for (DwellOrders each : chosen.dwells()) {
            dwell.addItem(SpeedHeading.dwell(each.dwell(), orders));
            if (each.dwell().equals(orders.speed().main().orElse(null))) {
                longest = dwell.getItemCount() - 1;
            }
        }
        if (dwell.getItemCount() > 0) {
            dwell.setSelectedIndex(longest);
        }
        filling = false;
    }

    private Optional<Picture> picture(Map<String, Picture> pictures, String kind) {
        String numbered = kind + "-" + (channel.getSelectedIndex() + 1) + "-";
        return pictures.entrySet().stream()
                .filter(e -> e.getKey().equals(kind) || e.getKey().startsWith(numbered))
                .map(Map.Entry::getValue)
                .findFirst();
    }

    @Override
    public void removeNotify() {
        task.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }
}
