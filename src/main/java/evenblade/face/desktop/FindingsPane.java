package evenblade.face.desktop;

import evenblade.face.app.SeeEvidence;
import evenblade.face.app.WeighFindings;
import evenblade.judge.findings.EvidenceRef;
import evenblade.keep.job.Kind;
import evenblade.tell.document.FindingsDocument;
import evenblade.tell.document.Phrases;
import java.util.Optional;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** What a job's measurements point to, heaviest first, with what speaks for and against, and where it can be seen. */
final class FindingsPane extends JPanel {
    private final transient Navigator bench;
    private final transient OpenJob job;
    private final transient JobCommands commands;
    private final Lines lines = new Lines();
    private final Complaint complaint = new Complaint();

    FindingsPane(Navigator bench, OpenJob job, JobCommands commands) {
        super(new MigLayout("insets 8 18 10 18, wrap 1, hidemode 3", "[grow,fill]", "[][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.commands = commands;
        setName("findings");
        add(Look.heading("What it points to"));
        add(complaint);
        add(lines, "pushy, grow, wmin 100, hmin 100");
        lines.say("Weighing what was measured…");
        bench.begin(
                "Weighing the findings", progress -> WeighFindings.weigh(job.folder(), progress), this::show, wrong -> {
                    lines.clear();
                    lines.done();
                    complaint.show(wrong);
                });
    }

    private void show(WeighFindings.Answer answer) {
        lines.clear();
        Phrases phrases = Words.phrases(bench.settings());
        lines.show(FindingsDocument.of(answer.findings().list(), answer.tie(), answer.warnings(), phrases), this::see);
        lines.done();
    }

    private JButton see(EvidenceRef ref) {
        SeeEvidence.Sight sight = SeeEvidence.of(job.record(), ref);
        JButton see = new JButton(where(sight));
        see.setMargin(new java.awt.Insets(1, 8, 1, 8));
        see.addActionListener(e -> open(sight));
        return see;
    }

    private static String where(SeeEvidence.Sight sight) {
        return switch (sight.page()) {
            case TRACK -> "See the tips";
            case ALL_RUNS -> "See all runs";
            case ENTRY ->
                sight.entry()
                        .map(entry -> entry.kind() == Kind.RUN ? side(sight.side()) : "See the reading")
                        .orElse("See");
        };
    }

    private static String side(EvidenceRef.Side side) {
        return switch (side) {
            case ORDERS -> "See the bars";
            case SPECTRUM -> "See the spectrum";
            case SPEED -> "See the speed";
            case REMARKS -> "See what is known";
        };
    }

    /** Opens what a piece of evidence rests on. */
    private void open(SeeEvidence.Sight sight) {
        switch (sight.page()) {
            case TRACK -> commands.track.actionPerformed(null);
            case ALL_RUNS -> commands.trend.actionPerformed(null);
            case ENTRY -> sight.entry().ifPresent(entry -> bench.showEntry(entry, Optional.of(sight)));
        }
    }
}
