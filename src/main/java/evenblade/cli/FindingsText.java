package evenblade.cli;

import evenblade.app.WeighFindings.Answer;
import evenblade.findings.Finding;
import evenblade.findings.Piece;
import evenblade.tie.Size;
import evenblade.tie.TieAnswer;
import evenblade.tie.TrackTie;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A job's findings as text for a terminal of 80 columns. */
final class FindingsText {
    private final Answer answer;
    private final List<String> lines = new ArrayList<>();

    private FindingsText(Answer answer) {
        this.answer = answer;
    }

    static List<String> lines(Answer answer) {
        FindingsText text = new FindingsText(answer);
        text.heading();
        int number = 1;
        for (Finding finding : answer.findings().list()) {
            text.finding(number, finding);
            number++;
        }
        text.tie();
        text.warnings();
        text.footing();
        return text.lines;
    }

    private void heading() {
        paragraph("", "", answer.job());
        if (answer.invented()) {
            lines.add("INVENTED FOR PRACTICE: nothing in this job was measured.");
        }
        lines.add("");
    }

    private void finding(int number, Finding finding) {
        paragraph(number + ". ", "   ", finding.statement());
        String standing = finding.goneSince()
                .map(run -> " Put right: no longer seen since '" + run + "'.")
                .orElse("");
        paragraph(
                "   How sure  ",
                " ".repeat(13),
                format(
                        "%.0f %%, %s.%s",
                        100 * finding.sureness().share(), finding.sureness().words(), standing));
        pieces("   For       ", finding.speaksFor());
        pieces("   Against   ", finding.speaksAgainst());
        paragraph("   Next      ", " ".repeat(13), finding.next());
        lines.add("");
    }

    private void pieces(String first, List<Piece> pieces) {
        String lead = first;
        for (Piece piece : pieces) {
            paragraph(lead, " ".repeat(15), (piece.points() == 0 ? "" : format("%+d ", piece.points())) + piece.text());
            lead = " ".repeat(13);
        }
    }

    private void tie() {
        if (answer.tie().isEmpty()) {
            return;
        }
        lines.add("1× and track over the runs");
        if (answer.tie().get() instanceof TieAnswer.NotYet notYet) {
            paragraph("   ", "   ", notYet.why() + " " + notYet.whatWouldSettle());
            TextTable table = new TextTable("lrr").row("   run", "track 1× mm", "1× amplitude");
            notYet.sideBySide()
                    .forEach(s ->
                            table.row("   " + s.label(), format("%.2f", s.trackMm()), format("%.3g", s.amplitude())));
            lines.addAll(table.lines());
        } else {
            tied(((TieAnswer.Tied) answer.tie().get()).tie());
        }
        lines.add("");
    }

    private void tied(TrackTie tie) {
        TextTable table = new TextTable("lrl").row("   run", "1×", "of that with track (95 % interval)");
        tie.shares().forEach(s -> table.row("   " + s.label(), format("%.3g", s.measured()), size(s.withTrack())));
        lines.addAll(table.lines());
        paragraph(
                "   ",
                "   ",
                (tie.trackMatters()
                                ? "1× changes with track"
                                : "These runs don't show that 1× changes with track at all")
                        + "; at perfect track " + size(tie.left()) + " would be left (mass or engine).");
        answer.smoothest()
                .ifPresent(s -> paragraph(
                        "   ",
                        "   ",
                        "Predicted to shake least: " + s.layout().text() + " with " + size(s.predicted()) + ", against "
                                + size(s.now()) + " as it stands."));
    }

    private static String size(Size size) {
        return Double.isFinite(size.high())
                ? format("%.3g (%.3g to %.3g)", size.value(), size.low(), size.high())
                : format("%.3g (%.3g or more)", size.value(), size.low());
    }

    private void warnings() {
        answer.warnings().forEach(w -> paragraph("! ", "  ", w.message()));
    }

    private void footing() {
        paragraph(
                "",
                "",
                "Each point doubles the odds from 1 to 8 at the start, for or against; it orders findings and is not"
                        + " counted from real jobs. A finding points somewhere; it decides nothing.");
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(Paragraph.lines(first, rest, text));
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
