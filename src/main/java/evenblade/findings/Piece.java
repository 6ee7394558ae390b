package evenblade.findings;

/**
 * One piece of evidence.
 *
 * @param text with its numbers and where they come from
 * @param points doublings of the odds: above 0 for the cause, below 0 against it
 * @param origin how it was measured
 */
public record Piece(String text, int points, Origin origin) {
    /** How something was measured. */
    public enum Origin {
        /** With the engine running. */
        RUNNING,
        /** With the engine off. */
        STANDING
    }

    static Piece running(int points, String text) {
        return new Piece(text, points, Origin.RUNNING);
    }

    static Piece standing(int points, String text) {
        return new Piece(text, points, Origin.STANDING);
    }
}
