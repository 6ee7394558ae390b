package evenblade.tell.report;

import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.tell.document.FigureFormat;
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
    public static FindingPart of(Finding finding) {
        String sure = String.format(
                Locale.ROOT,
                "%s (%.0f %%; a measure to order findings by, not counted from real jobs)",
                finding.sureness().words(),
                100 * finding.sureness().share());
        return new FindingPart(
                finding.statement(),
                finding.speaksFor().stream()
                        .map(EvidenceItem::text)
                        .map(FigureFormat::capital)
                        .toList(),
                finding.speaksAgainst().stream()
                        .map(EvidenceItem::text)
                        .map(FigureFormat::capital)
                        .toList(),
                finding.next(),
                finding.goneSince()
                                .map(run -> "Put right: no longer seen since '" + run + "'. Before that: ")
                                .orElse("")
                        + sure,
                finding.open());
    }
}
