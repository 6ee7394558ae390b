package evenblade.tell.document;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.judge.findings.EvidenceItem;
import evenblade.judge.findings.Finding;
import evenblade.judge.findings.FindingFact;
import evenblade.judge.tie.JobTie;
import evenblade.tell.document.Block.Tone;
import java.util.List;
import java.util.Optional;

/** What a job's measurements point to: of each cause how sure, how much it shakes, what speaks for and against, what is next. */
public final class FindingsDocument {
    private final Phrases phrases;
    private final Document.Builder text = Document.begin();

    private FindingsDocument(Phrases phrases) {
        this.phrases = phrases;
    }

    /**
     * The whole answer.
     *
     * @param findings in the order in which they are numbered
     * @param tie how much of 1× goes with track; empty where it isn't known or is shown elsewhere
     * @param warnings runs that had to be left out
     */
    public static Document of(List<Finding> findings, Optional<JobTie> tie, List<Warning> warnings, Phrases phrases) {
        FindingsDocument document = new FindingsDocument(phrases);
        for (int i = 0; i < findings.size(); i++) {
            document.finding(i + 1, findings.get(i));
        }
        tie.ifPresent(found -> document.text.addAll(TieDocument.of(found, phrases)));
        document.text.warnings(Tone.CAUTION, phrases, warnings);
        document.text.say(
                Tone.NOTE,
                "Each point doubles the odds from 1 to 8 at the start, for or against; it orders findings and is not"
                        + " counted from real jobs. A finding points somewhere; it decides nothing.");
        return document.text.handsOff().done();
    }

    /** In per cent and in words, and whether it was put right: {@code 97 %, fairly sure.} */
    public static String howSure(Finding finding, Phrases phrases) {
        return FigureFormat.share(finding.sureness().share()) + ", "
                + phrases.text(Fact.of(finding.sureness().word())) + "."
                + finding.goneSince()
                        .map(run -> " Put right: no longer seen since '" + run.name() + "'.")
                        .orElse("");
    }

    private void finding(int number, Finding finding) {
        text.subject(number + ". " + phrases.text(finding.statement()));
        text.known("how sure", howSure(finding, phrases));
        finding.carried()
                .ifPresent(carried -> text.known(
                        "carries",
                        new VelocityFigures(phrases.figures()).fixed(carried.mmS(), 1)
                                + " peak where its line is largest: " + FigureFormat.share(carried.share())
                                + " of the power of all lines there."));
        evidence("for", finding.speaksFor());
        evidence("against", finding.speaksAgainst());
        text.add(new Block.Known(
                finding.next().code() == FindingFact.WENT_AWAY_AFTER ? "cured" : "next",
                phrases.sentence(finding.next()).capital()));
    }

    private void evidence(String side, List<EvidenceItem> items) {
        String name = side;
        for (EvidenceItem item : items) {
            String points = item.points() == 0 ? "" : FigureFormat.offset(item.points(), 0) + " ";
            text.add(new Block.Known(
                    name, Sentence.of(points).then(phrases.sentence(item.fact())), Optional.of(item.ref())));
            name = "";
        }
    }
}
