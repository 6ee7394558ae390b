package evenblade.tell.chart;

/** What a colour is used for; each {@link Palette} has one colour for each. */
public enum Ink {
    PAPER,
    TEXT,
    QUIET_TEXT,
    GRID,
    /** A line counted on the propeller. */
    PROPELLER,
    /** A line counted on the crank or in the drive. */
    CRANK,
    /** A propeller and a crank line that lie on each other. */
    BOTH,
    /** A steady line that no order explains. */
    OTHER,
    BEFORE,
    AFTER,
    /** A stretch of the picture set off from the rest. */
    SHADE,
    /** What must not be passed: a limit. */
    LIMIT
}
