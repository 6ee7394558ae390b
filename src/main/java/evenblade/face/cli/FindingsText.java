package evenblade.face.cli;

import evenblade.base.fact.Fact;
import evenblade.face.app.WeighFindings.Answer;
import evenblade.judge.findings.Cause;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.tell.document.Document;
import evenblade.tell.document.TieDocument;
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
        paragraph(number + ". ", "   ", WarningText.of(finding.statement()));
        String standing = finding.goneSince()
                .map(run -> " Put right: no longer seen since '" + run.name() + "'.")
                .orElse("");
        paragraph(
                "   How sure  ",
                " ".repeat(13),
                format(
                        "%.0f %%, %s.%s",
                        100 * finding.sureness().share(),
                        WarningText.of(Fact.of(finding.sureness().word())),
                        standing));
        pieces("   For       ", finding.speaksFor());
        pieces("   Against   ", finding.speaksAgainst());
        paragraph("   Next      ", " ".repeat(13), WarningText.of(finding.next()));
        if (finding.cause() == Cause.RECORDING && finding.open()) {
            paragraph(
                    " ".repeat(13),
                    " ".repeat(13),
                    "('job add' takes the speed read with --engine-rpm and the mark with --mark-channel.)");
        }
        lines.add("");
    }

    private void pieces(String first, List<EvidenceItem> pieces) {
        String lead = first;
        for (EvidenceItem piece : pieces) {
            paragraph(
                    lead,
                    " ".repeat(15),
                    (piece.points() == 0 ? "" : format("%+d ", piece.points())) + WarningText.of(piece.fact()));
            lead = " ".repeat(13);
        }
    }

    private void tie() {
        answer.tie().ifPresent(tie -> lines.addAll(Terminal.lines(TieDocument.of(tie, WarningText.PHRASES.figures()))));
        lines.add("");
    }

    private void warnings() {
        answer.warnings().forEach(w -> paragraph("! ", "  ", WarningText.of(w)));
    }

    private void footing() {
        paragraph(
                "",
                "",
                "Each point doubles the odds from 1 to 8 at the start, for or against; it orders findings and is not"
                        + " counted from real jobs. A finding points somewhere; it decides nothing.");
        lines.addAll(Terminal.lines(Document.begin().handsOff().done()));
    }

    private void paragraph(String first, String rest, String text) {
        lines.addAll(LineWrapper.lines(first, rest, text));
    }

    private static String format(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }
}
