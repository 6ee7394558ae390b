package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Value;

/**
 * One piece of evidence.
 *
 * @param fact with its numbers and where they come from
 * @param points doublings of the odds: above 0 for the cause, below 0 against it
 * @param origin how it was measured
 * @param ref where it can be seen
 */
public record EvidenceItem(Fact fact, int points, Origin origin, EvidenceRef ref) {
    /** How something was measured. */
    public enum Origin {
        /** With the engine running. */
        RUNNING,
        /** With the engine off. */
        STANDING
    }

    static EvidenceItem running(int points, EvidenceRef ref, FindingFact code, Value... values) {
        return new EvidenceItem(Fact.of(code, values), points, Origin.RUNNING, ref);
    }

    static EvidenceItem standing(int points, EvidenceRef ref, FindingFact code, Value... values) {
        return new EvidenceItem(Fact.of(code, values), points, Origin.STANDING, ref);
    }
}
