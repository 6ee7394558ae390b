package evenblade.judge.findings;

/**
 * One piece of evidence.
 *
 * @param text with its numbers and where they come from
 * @param points doublings of the odds: above 0 for the cause, below 0 against it
 * @param origin how it was measured
 */
public record EvidenceItem(String text, int points, Origin origin) {
    /** How something was measured. */
    public enum Origin {
        /** With the engine running. */
        RUNNING,
        /** With the engine off. */
        STANDING
    }

    static EvidenceItem running(int points, String text) {
        return new EvidenceItem(text, points, Origin.RUNNING);
    }

    static EvidenceItem standing(int points, String text) {
        return new EvidenceItem(text, points, Origin.STANDING);
    }
}
