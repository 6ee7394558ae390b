package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.judge.findings.RunEvidence.RunRef;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the measurements point to.
 *
 * @param cause what it is about
 * @param statement in one sentence
 * @param speaksFor with numbers and runs, heaviest first
 * @param speaksAgainst likewise
 * @param next what to do or measure next
 * @param sureness how sure
 * @param goneSince the run from which on it is no longer seen; empty while it stands
 * @param carried how much of the shaking lies on its line; empty where that has no scale or no line
 * @param among causes of which any one would have left these numbers, likeliest first, where the finding names several;
 *     else none
 */
public record Finding(
        Cause cause,
        Fact statement,
        List<EvidenceItem> speaksFor,
        List<EvidenceItem> speaksAgainst,
        Fact next,
        Confidence sureness,
        Optional<RunRef> goneSince,
        Optional<Carried> carried,
        List<Cause> among) {
    public Finding {
        among = List.copyOf(among);
        speaksFor = List.copyOf(speaksFor);
        speaksAgainst = List.copyOf(speaksAgainst);
    }

    /** Whether it still stands. */
    public boolean open() {
        return goneSince.isEmpty();
    }

    /** Doublings of the odds by all that speaks for it and against it. */
    int points() {
        return Stream.concat(speaksFor.stream(), speaksAgainst.stream())
                .mapToInt(EvidenceItem::points)
                .sum();
    }
}
