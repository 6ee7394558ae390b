package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import java.util.List;
import java.util.Optional;

/**
 * What a rule says of its cause in one stage.
 *
 * @param statement one sentence that says what it points to
 * @param pieces for and against, at least one with points above 0
 * @param needsBoth whether it takes running and standing evidence together to be confident
 * @param symptom how strong the sign is, in any unit that stays the same over the job; to see whether it went away
 * @param next what to do or measure next
 * @param most the surest it can be: below confident where what was measured can't tell the cause from its likes
 * @param carried how much of the shaking lies on its line; empty where the scale isn't known
 */
record Assessment(
        Fact statement,
        List<EvidenceItem> pieces,
        boolean needsBoth,
        double symptom,
        Fact next,
        double most,
        Optional<Carried> carried) {
    Assessment {
        pieces = List.copyOf(pieces);
    }

    Assessment(Fact statement, List<EvidenceItem> pieces, boolean needsBoth, double symptom, Fact next) {
        this(statement, pieces, needsBoth, symptom, next, 1, Optional.empty());
    }

    /** Keeps it below confident unless its likes would have left other numbers. */
    Assessment toldApart(boolean told) {
        return told ? this : atMost(Confidence.MOST_ONE_SIDED);
    }

    /** Makes it never surer than that. */
    Assessment atMost(double share) {
        return new Assessment(statement, pieces, needsBoth, symptom, next, Math.min(most, share), carried);
    }

    /** Adds what lies on its line. */
    Assessment carrying(Optional<Carried> shaking) {
        return new Assessment(statement, pieces, needsBoth, symptom, next, most, shaking);
    }

    int points() {
        return pieces.stream().mapToInt(EvidenceItem::points).sum();
    }

    Confidence sureness() {
        Confidence sureness = Confidence.of(points());
        boolean both = has(EvidenceItem.Origin.RUNNING) && has(EvidenceItem.Origin.STANDING);
        return (needsBoth && !both ? sureness.oneSided() : sureness).atMost(most);
    }

    private boolean has(EvidenceItem.Origin origin) {
        return pieces.stream().anyMatch(p -> p.origin() == origin && p.points() > 0);
    }
}
