package evenblade.face.desktop;

import evenblade.face.app.AnalyseRecording;
import evenblade.face.app.AnalysedRecording;
import evenblade.face.app.DrawRecording;
import evenblade.face.app.LookCloser;
import evenblade.face.app.SeeEvidence;
import evenblade.judge.findings.EvidenceRef;
import evenblade.keep.job.Detail;
import evenblade.keep.job.Event;
import evenblade.keep.job.Kind;
import evenblade.measure.orders.ChannelOrders;
import evenblade.measure.orders.DwellOrders;
import evenblade.measure.orders.RunOrders;
import evenblade.measure.speed.Dwell;
import evenblade.tell.chart.Caption;
import evenblade.tell.chart.Picture;
import evenblade.tell.chart.SpectrumCurve;
import evenblade.tell.document.Document;
import evenblade.tell.document.Phrases;
import evenblade.tell.document.RunDocument;
import evenblade.tell.document.SpeedWords;
import evenblade.tell.report.RunSections;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** One ground run: its speed and how sure, its orders, its pictures. */
final class RunView extends JPanel {
    private static final int BARS = 1; // place of the tab
    private static final int SPECTRUM = 2; // place of the tab
    private static final int SPEED = 5; // place of the tab
    private static final int TO_KNOW = 6; // place of the tab

    private final transient Navigator bench;
    private final transient OpenJob job;
    private final transient Event run;
    private final SpeedHeading speed = new SpeedHeading();
    private final JComboBox<String> channel = new JComboBox<>();
    private final JComboBox<String> dwell = new JComboBox<>();
    private final Page table = new Page("orders");
    private final Page toKnow = new Page("to know");
    private final PicturePane bars;
    private final PicturePane spectrum;
    private final WaterfallPane waterfall;
    private final SpectrumOverlays overlays;
    private final ListenButton listen;
    private final ListenButton listenAlong;
    private final PicturePane turn;
    private final PicturePane speedPicture;
    private final JTabbedPane tabs = new JTabbedPane();
    private final Complaint complaint = new Complaint();
    private transient Optional<SeeEvidence.Sight> sight;
    private final transient Map<Dwell, Map<String, Picture>> ofDwells = new HashMap<>();
    private transient Optional<Work.Task> task = Optional.empty();
    private transient Optional<Work.Task> closing = Optional.empty();
    private boolean filling;

    RunView(Navigator bench, OpenJob job, Event run, Optional<SeeEvidence.Sight> sight) {
        super(new MigLayout("insets 6 14 8 14, gapy 3, wrap 1, hidemode 3", "[grow,fill]", ""));
        this.bench = bench;
        this.job = job;
        this.run = run;
        this.sight = sight;
        setName("run");
        bars = new PicturePane(bench);
        spectrum = new PicturePane(bench);
        waterfall = new WaterfallPane(bench);
        overlays = new SpectrumOverlays(bench, spectrum);
        listen = new ListenButton(bench, spectrum, false);
        turn = new PicturePane(bench);
        speedPicture = new PicturePane(bench);
        listenAlong = new ListenButton(bench, speedPicture, true);
        add(new EntryHeading(bench, job, run));
        choices();
        add(speed, "wmin 50");
        add(complaint);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        fillTabs();
        job.answer(run).ifPresentOrElse(this::show, this::work);
    }

    private void choices() {
        channel.setName("channel");
        dwell.setName("dwell");
        channel.addActionListener(e -> choose());
        dwell.addActionListener(e -> choose());
        speed.choice("Channel", channel);
        speed.choice("Dwell", dwell);
    }

    private void fillTabs() {
        tabs.setName("run tabs");
        tabs.addTab("Orders", table);
        tabs.addTab("Bars", bars);
        tabs.addTab("Spectrum", spectrum);
        tabs.addTab("Waterfall", waterfall);
        tabs.addTab("One turn", turn);
        tabs.addTab("Speed", speedPicture);
        tabs.addTab("To know", toKnow);
    }

    private void work() {
        Path folder = job.folder();
        bars.show(Optional.empty(), "working…");
        task = Optional.of(bench.begin(
                "Analysing " + Words.name(run),
                progress -> {
                    AnalysedRecording analysed = AnalyseRecording.ofRun(folder, run.id(), progress);
                    progress.at(1, "drawing the pictures");
                    return new OpenJob.RunAnswer(analysed, DrawRecording.draw(analysed));
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
        Phrases phrases = Words.phrases(bench.settings());
        speed.show(RunDocument.speed(orders, phrases));
        filling = true;
        channel.removeAllItems();
        orders.channels().forEach(each -> channel.addItem(each.channel()));
        sight.ifPresent(seen -> channel.setSelectedIndex(seen.channel(orders)));
        filling = false;
        Detail.Run detail = (Detail.Run) run.detail();
        toKnow.show(Document.begin()
                .addAll(RunDocument.toKnow(orders, phrases))
                .heading("The run")
                .known(
                        "File",
                        detail.file().originalName() + ", kept as "
                                + detail.file().path())
                .known("SHA-256", detail.file().stamp().sha256())
                .addAll(RunSections.noted(detail))
                .done());
        tabs.setTitleAt(TO_KNOW, "To know (" + orders.warnings().size() + ")");
        choose();
        sight.ifPresent(seen -> tabs.setSelectedIndex(tab(seen.side())));
        sight = Optional.empty();
    }

    private static int tab(EvidenceRef.Side side) {
        return switch (side) {
            case ORDERS -> BARS;
            case SPECTRUM -> SPECTRUM;
            case SPEED -> SPEED;
            case REMARKS -> TO_KNOW;
        };
    }

    private void choose() {
        Optional<OpenJob.RunAnswer> answer = job.answer(run);
        if (filling || answer.isEmpty() || channel.getSelectedIndex() < 0) {
            return;
        }
        RunOrders orders = answer.get().analysed().orders();
        ChannelOrders chosen = orders.channels().get(channel.getSelectedIndex());
        fillDwells(chosen, orders);
        if (dwell.getSelectedIndex() < 0) {
            pictures(answer.get(), answer.get().pictures(), Optional.empty());
            return;
        }
        DwellOrders measured = chosen.dwells().get(dwell.getSelectedIndex());
        table.show(RunDocument.dwell(orders, chosen, measured, Words.phrases(bench.settings())));
        if (orders.speed().main().filter(measured.dwell()::equals).isPresent()) {
            pictures(answer.get(), answer.get().pictures(), Optional.of(measured.dwell()));
        } else {
            ofDwell(answer.get(), measured.dwell());
        }
    }

    /** The pictures of another dwell than the longest are made when they are asked for. */
    private void ofDwell(OpenJob.RunAnswer answer, Dwell other) {
        if (ofDwells.containsKey(other)) {
            pictures(answer, ofDwells.get(other), Optional.of(other));
            return;
        }
        task.ifPresent(Work.Task::giveUp);
        task = Optional.of(bench.begin(
                "Drawing another dwell",
                progress -> DrawRecording.draw(answer.analysed(), other),
                made -> {
                    ofDwells.put(other, made);
                    pictures(answer, made, Optional.of(other));
                },
                complaint::show));
    }

    private void pictures(OpenJob.RunAnswer answer, Map<String, Picture> pictures, Optional<Dwell> shown) {
        RunOrders orders = answer.analysed().orders();
        boolean found = orders.speed().main().isPresent();
        bars.show(picture(pictures, "orders"), found ? "No dwell to measure orders in." : "No speed, no orders.");
        overlays.show(picture(pictures, "spectrum"), "No spectrum.", Map.of());
        waterfall.show(picture(pictures, "waterfall"), "No waterfall.", Optional.empty());
        lookCloser(answer, pictures, shown);
        turn.show(picture(pictures, "turn"), "One turn is averaged where a confirmed speed was held.");
        speedPicture.show(Optional.ofNullable(pictures.get("speed")), "The speed was not found.");
    }

    /** What needs the samples comes when they are laid out. */
    private void lookCloser(OpenJob.RunAnswer answer, Map<String, Picture> pictures, Optional<Dwell> shown) {
        int place = channel.getSelectedIndex();
        closing.ifPresent(Work.Task::giveUp);
        closing = Optional.of(bench.work()
                .alongside(
                        "Laying out the samples",
                        progress -> LookCloser.at(answer.analysed(), place, shown),
                        look -> {
                            overlays.show(
                                    picture(pictures, "spectrum"), "No spectrum.", offers(answer, look, place, shown));
                            waterfall.show(picture(pictures, "waterfall"), "No waterfall.", Optional.of(look));
                            listen.of(Optional.of(look));
                            listenAlong.of(Optional.of(look));
                        },
                        bench::say));
    }

    private Map<String, Work.Labour<Optional<SpectrumCurve>>> offers(
            OpenJob.RunAnswer answer, LookCloser look, int place, Optional<Dwell> shown) {
        Map<String, Work.Labour<Optional<SpectrumCurve>>> offers = new LinkedHashMap<>();
        offers.put("the loudest it ever was", progress -> Optional.of(look.loudest()));
        List<ChannelOrders> channels = answer.analysed().orders().channels();
        for (int i = 0; i < channels.size(); i++) {
            int other = i;
            String name = Caption.channel(channels.get(i).channel());
            if (i != place && channels.get(i).unit() == channels.get(place).unit()) {
                offers.put(
                        name,
                        progress -> Optional.of(
                                LookCloser.at(answer.analysed(), other, shown).average(name)));
            }
        }
        job.record().standing(Kind.RUN).stream()
                .filter(each -> !each.id().equals(run.id()))
                .forEach(each -> offers.put(Words.name(each), progress -> look.reference(job.folder(), each)));
        return offers;
    }

    private void fillDwells(ChannelOrders chosen, RunOrders orders) {
        if (dwell.getItemCount() == chosen.dwells().size()) {
            return;
        }
        filling = true;
        dwell.removeAllItems();
        int first = 0;
        Optional<Dwell> wanted = sight.flatMap(seen -> seen.dwell(orders))
                .or(() -> orders.speed().main());
        for (DwellOrders each : chosen.dwells()) {
            dwell.addItem(SpeedWords.dwell(orders, each.dwell()));
            if (wanted.filter(each.dwell()::equals).isPresent()) {
                first = dwell.getItemCount() - 1;
            }
        }
        if (dwell.getItemCount() > 0) {
            dwell.setSelectedIndex(first);
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
        closing.ifPresent(Work.Task::giveUp);
        super.removeNotify();
    }
}
