package evenblade.tell.report;

import evenblade.base.fact.Fact;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.tell.document.FigureFormat;
import evenblade.tell.document.Phrases;
import java.util.List;
import java.util.Locale;

/**
 * What the measurements point to.
 *
 * @param statement in one sentence
 * @param speaksFor evidence for it, each with its numbers and runs
 * @param speaksAgainst evidence against it, likewise
 * @param next what to do or measure next
 * @param howSure in words
 * @param open whether it still stands
 */
public record FindingPart(
        String statement,
        List<String> speaksFor,
        List<String> speaksAgainst,
        String next,
        String howSure,
        boolean open) {
    public FindingPart {
        speaksFor = List.copyOf(speaksFor);
        speaksAgainst = List.copyOf(speaksAgainst);
    }

    /** A finding in words. */
    public static FindingPart of(Finding finding, Phrases phrases) {
        String sure = String.format(
                Locale.ROOT,
                "%s (%.0f %%; a measure to order findings by, not counted from real jobs)",
                phrases.text(Fact.of(finding.sureness().word())),
                100 * finding.sureness().share());
        return new FindingPart(
                phrases.text(finding.statement()),
                finding.speaksFor().stream()
                        .map(EvidenceItem::fact)
                        .map(phrases::text)
                        .map(FigureFormat::capital)
                        .toList(),
                finding.speaksAgainst().stream()
                        .map(EvidenceItem::fact)
                        .map(phrases::text)
                        .map(FigureFormat::capital)
                        .toList(),
                phrases.text(finding.next()),
                finding.goneSince()
                                .map(run -> "Put right: no longer seen since '" + run.name() + "'. Before that: ")
                                .orElse("")
                        + sure,
                finding.open());
    }
}
