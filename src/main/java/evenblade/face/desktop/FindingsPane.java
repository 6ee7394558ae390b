package evenblade.face.desktop;

import evenblade.face.app.FigureText;
import evenblade.face.app.LengthWords;
import evenblade.face.app.SeeEvidence;
import evenblade.face.app.TieWords;
import evenblade.face.app.WeighFindings;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.keep.job.Kind;
import evenblade.tell.chart.Ink;
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
                        progress -> WeighFindings.answer(job.folder(), progress),
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
        tie(answer);
        answer.warnings().forEach(warning -> lines.say("!  " + Words.warning(warning)));
        lines.say("Each point doubles the odds from 1 to 8 at the start, for or against; it orders findings and is not "
                + "counted from real jobs. A finding points somewhere; it decides nothing.");
        lines.done();
    }

    private void finding(int number, Finding finding) {
        WrappedLabel statement = lines.strong(number + ". " + words(finding.statement()));
        statement.setName("finding " + number);
        statement.setForeground(Look.ink(finding.open() ? Ink.TEXT : Ink.QUIET_TEXT));
        lines.say("How sure: " + FigureText.fixed(100 * finding.sureness().share(), 0) + " %, "
                + finding.sureness().words() + "."
                + finding.goneSince()
                        .map(run -> " Put right: no longer seen since '" + run + "'.")
                        .orElse(""));
        evidence(number, "for", finding, finding.speaksFor());
        evidence(number, "against", finding, finding.speaksAgainst());
        lines.say("Next: " + words(Words.onScreen(finding.next())));
    }

    private void evidence(int number, String side, Finding finding, List<EvidenceItem> pieces) {
        int count = 1;
        for (EvidenceItem piece : pieces) {
            SeeEvidence.Sight sight = SeeEvidence.of(job.record(), finding, piece);
            JButton see = new JButton(where(sight));
            see.setName("see " + side + " " + number + "." + count);
            see.getAccessibleContext().setAccessibleDescription(piece.text());
            see.setMargin(new java.awt.Insets(1, 8, 1, 8));
            see.addActionListener(e -> open(sight));
            lines.say("    " + side + "  " + words(piece(piece)), see);
            count++;
        }
    }

    private String words(String sentence) {
        return LengthWords.in(bench.settings().lengthUnit(), sentence);
    }

    private static String piece(EvidenceItem piece) {
        return (piece.points() == 0 ? "" : String.format(Locale.ROOT, "%+d ", piece.points())) + piece.text();
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

    private static String side(SeeEvidence.Side side) {
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
    private void tie(WeighFindings.Answer answer) {
        answer.tie().ifPresent(tie -> {
            lines.strong("1× and track over the runs");
            TieWords.sentences(tie).forEach(sentence -> lines.say(words(sentence)));
        });
    }
}
