package evenblade.machine.plan;

/**
 * Two places that are near each other but not the same: a run long enough splits them, once the
 * wander of the speed is taken out.
 *
 * @param lower the lower one
 * @param upper the upper one
 * @param apartHz their distance at the dwell's speed, above zero
 */
public record ClosePair(Place lower, Place upper, double apartHz) {
    /** A run of this many periods of the difference splits two lines (a rule of thumb, no source). */
    static final double PERIODS_TO_SPLIT = 1.5;

    /** Lines nearer than this share of their frequency run into one where speed wanders by ± 1 %. */
    static final double WANDER_SHARE = 0.02;

    /** Lines that need a run longer than this, in seconds, are near whatever their frequency. */
    static final double SHORT_RUN_S = 1;

    /** How long the dwell must last to split them: 1.5 / |Δf| seconds. */
    public double splitAfterS() {
        return PERIODS_TO_SPLIT / apartHz;
    }

    /** Whether the distance is worth a word. */
    boolean near() {
        double share = (upper.propellerOrder() - lower.propellerOrder()) / upper.propellerOrder();
        return share <= WANDER_SHARE || splitAfterS() > SHORT_RUN_S;
    }
}
