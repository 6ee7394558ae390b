package evenblade.face.desktop;

import evenblade.base.fact.Fact;
import evenblade.face.app.SeeEvidence;
import evenblade.face.app.WeighFindings;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.EvidenceRef;
import evenblade.judge.findings.Finding;
import evenblade.judge.tie.JobTie;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Ink;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.TieDocument;
import java.util.List;
import java.util.Locale;
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
        bench.work()
                .begin(
                        "Weighing the findings",
                        progress -> WeighFindings.weigh(job.folder(), progress),
                        this::show,
                        wrong -> {
                            lines.clear();
                            lines.done();
                            complaint.show(wrong);
                        });
    }

    private void show(WeighFindings.Answer answer) {
        lines.clear();
        int number = 1;
        for (Finding finding : answer.findings().list()) {
            finding(number, finding);
            number++;
        }
        answer.tie().ifPresent(this::tie);
        answer.warnings().forEach(warning -> lines.say("!  " + Words.warning(warning)));
        lines.say("Each point doubles the odds from 1 to 8 at the start, for or against; it orders findings and is not "
                + "counted from real jobs. A finding points somewhere; it decides nothing.");
        lines.done();
    }

    private void finding(int number, Finding finding) {
        WrappedLabel statement = lines.strong(number + ". " + words(finding.statement()));
        statement.setName("finding " + number);
        statement.setForeground(Look.ink(finding.open() ? Ink.TEXT : Ink.QUIET_TEXT));
        lines.say("How sure: " + FigureFormat.fixed(100 * finding.sureness().share(), 0) + " %, "
                + Words.fact(Fact.of(finding.sureness().word())) + "."
                + finding.goneSince()
                        .map(run -> " Put right: no longer seen since '" + run.name() + "'.")
                        .orElse(""));
        evidence(number, "for", finding.speaksFor());
        evidence(number, "against", finding.speaksAgainst());
        lines.say("Next: " + words(finding.next()));
    }

    private void evidence(int number, String side, List<EvidenceItem> pieces) {
        int count = 1;
        for (EvidenceItem piece : pieces) {
            SeeEvidence.Sight sight = SeeEvidence.of(job.record(), piece.ref());
            JButton see = new JButton(where(sight));
            see.setName("see " + side + " " + number + "." + count);
            see.getAccessibleContext().setAccessibleDescription(words(piece.fact()));
            see.setMargin(new java.awt.Insets(1, 8, 1, 8));
            see.addActionListener(e -> open(sight));
            lines.say("    " + side + "  " + piece(piece), see);
            count++;
        }
    }

    private String words(Fact fact) {
        return Words.fact(fact, bench.settings().lengthUnit());
    }

    private String piece(EvidenceItem piece) {
        return (piece.points() == 0 ? "" : String.format(Locale.ROOT, "%+d ", piece.points())) + words(piece.fact());
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

    /** How much of 1× goes with track, or what is missing to tell. */
    private void tie(JobTie tie) {
        lines.strong("1× and track over the runs");
        TieDocument.sentences(tie, new FigureFormat(bench.settings().lengthUnit()))
                .forEach(lines::say);
    }
}
