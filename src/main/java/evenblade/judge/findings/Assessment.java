package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import java.util.List;

/**
 * What a rule says of its cause in one stage.
 *
 * @param statement one sentence that says what it points to
 * @param pieces for and against, at least one with points above 0
 * @param needsBoth whether it takes running and standing evidence together to be confident
 * @param symptom how strong the sign is, in any unit that stays the same over the job; to see whether it went away
 * @param next what to do or measure next
 */
record Assessment(Fact statement, List<EvidenceItem> pieces, boolean needsBoth, double symptom, Fact next) {
    Assessment {
        pieces = List.copyOf(pieces);
    }

    int points() {
        return pieces.stream().mapToInt(EvidenceItem::points).sum();
    }

    Confidence sureness() {
        Confidence sureness = Confidence.of(points());
        boolean both = has(EvidenceItem.Origin.RUNNING) && has(EvidenceItem.Origin.STANDING);
        return needsBoth && !both ? sureness.oneSided() : sureness;
    }

    private boolean has(EvidenceItem.Origin origin) {
        return pieces.stream().anyMatch(p -> p.origin() == origin && p.points() > 0);
    }
}
