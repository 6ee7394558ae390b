package evenblade.face.desktop;

import evenblade.face.app.BalanceJob;
import evenblade.face.app.DrawBalance;
import evenblade.judge.balance.JobBalance;
import evenblade.tell.chart.Picture;
import evenblade.tell.document.BalanceDocument;
import evenblade.tell.document.FigureFormat;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** The weight that the runs of the job call for, or why there is none; with the hub and the runs as vectors. */
final class BalancePane extends JPanel {
    private final Page words = new Page("balance words");
    private final PicturePane hub;
    private final PicturePane vectors;
    private final Complaint complaint = new Complaint();
    private final transient Navigator bench;

    BalancePane(Navigator bench, OpenJob job) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3", "[grow,fill]", "[][][grow,fill]"));
        this.bench = bench;
        setName("balance");
        hub = new PicturePane(bench);
        vectors = new PicturePane(bench);
        hub.show(Optional.empty(), "working…");
        vectors.show(Optional.empty(), "working…");
        add(Look.heading("Balance weights"));
        add(complaint);
        JTabbedPane tabs = new JTabbedPane();
        tabs.setName("balance tabs");
        tabs.addTab("In words", words);
        tabs.addTab("Hub", hub);
        tabs.addTab("Runs as vectors", vectors);
        add(tabs, "pushy, grow, wmin 100, hmin 100");
        bench.begin(
                "Reckoning the balance",
                progress -> {
                    progress.at(0, "measuring the runs");
                    JobBalance balance = BalanceJob.balance(job.folder(), OptionalDouble.empty(), Optional.empty());
                    return new Answer(
                            balance,
                            DrawBalance.draw(
                                    balance, new FigureFormat(bench.settings().lengthUnit())));
                },
                this::show,
                complaint::show);
    }

    private record Answer(JobBalance balance, Map<String, Picture> pictures) {}

    private void show(Answer answer) {
        hub.show(Optional.ofNullable(answer.pictures().get("hub")), "");
        vectors.show(
                Optional.ofNullable(answer.pictures().get("vectors")),
                "Without a mark on the propeller the runs have no phase: there are no vectors to show.");
        words.show(BalanceDocument.of(answer.balance(), Words.phrases(bench.settings())));
    }
}
