package evenblade.desktop;

import evenblade.app.Figures;
import evenblade.app.WeighFindings;
import evenblade.chart.Ink;
import evenblade.findings.Cause;
import evenblade.findings.Finding;
import evenblade.findings.Piece;
import evenblade.job.Event;
import evenblade.job.Kind;
import evenblade.problem.Warning;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** What a job's measurements point to, heaviest first, with what speaks for and against, and where it can be seen. */
final class FindingsPane extends JPanel {
    private static final Set<Cause> SEEN_STANDING = Set.of(Cause.TRACK, Cause.FLANGE, Cause.PITCH);
    private static final Set<Cause> SEEN_OVER_RUNS = Set.of(Cause.RESONANCE, Cause.NOTHING);

    private final transient Bench bench;
    private final transient OpenJob job;
    private final transient JobCommands commands;
    private final Lines lines = new Lines();
    private final Complaint complaint = new Complaint();

    FindingsPane(Bench bench, OpenJob job, JobCommands commands) {
        super(new MigLayout("insets 18, wrap 1, hidemode 3", "[grow,fill]", "[][][grow,fill]"));
        this.bench = bench;
        this.job = job;
        this.commands = commands;
        setName("findings");
        add(Look.heading("What it points to"));
        add(complaint);
        add(lines, "wmin 100, hmin 100");
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
        answer.warnings().stream().map(Warning::message).forEach(words -> lines.say("!  " + words));
        lines.say(
                "Each point doubles the odds from 1 to 8 at the start, for or against. A finding points somewhere; it "
                        + "decides nothing.");
        lines.done();
    }

    private void finding(int number, Finding finding) {
        Paragraph statement = lines.strong(number + ". " + finding.statement());
        statement.setName("finding " + number);
        statement.setForeground(Look.ink(finding.open() ? Ink.TEXT : Ink.QUIET_TEXT));
        lines.say("How sure: " + Figures.fixed(100 * finding.sureness().share(), 0) + " %, "
                + finding.sureness().words() + "."
                + finding.goneSince()
                        .map(run -> " Put right: no longer seen since '" + run + "'.")
                        .orElse(""));
        finding.speaksFor().forEach(piece -> lines.say("    for  " + piece(piece)));
        finding.speaksAgainst().forEach(piece -> lines.say("    against  " + piece(piece)));
        lines.say("Next: " + Words.onScreen(finding.next()));
        JButton see = new JButton(evidence(finding.cause()));
        see.setName("see " + number);
        see.addActionListener(e -> see(finding));
        lines.put(see);
    }

    private static String piece(Piece piece) {
        return (piece.points() == 0 ? "" : String.format(java.util.Locale.ROOT, "%+d ", piece.points())) + piece.text();
    }

    private static String evidence(Cause cause) {
        if (SEEN_STANDING.contains(cause)) {
            return "See the tip marks";
        }
        return SEEN_OVER_RUNS.contains(cause) ? "See all runs" : "See the run it rests on";
    }

    /** Opens the picture that the finding rests on. */
    private void see(Finding finding) {
        if (SEEN_STANDING.contains(finding.cause())) {
            commands.track.actionPerformed(null);
        } else if (SEEN_OVER_RUNS.contains(finding.cause())) {
            commands.trend.actionPerformed(null);
        } else {
            run(finding).ifPresent(bench::showEntry);
        }
    }

    /** The run that the finding's evidence names, else the latest. */
    private Optional<Event> run(Finding finding) {
        List<Event> runs = job.record().standing(Kind.RUN);
        Optional<Event> named = runs.stream()
                .filter(run -> finding.speaksFor().stream().anyMatch(piece -> run.label()
                        .filter(label -> piece.text().contains("'" + label + "'"))
                        .isPresent()))
                .findFirst();
        return named.or(() -> runs.stream().reduce((one, later) -> later));
    }
}
