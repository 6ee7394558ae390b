package evenblade.measure.orders;

/**
 * A steady line that no order of the installation explains.
 *
 * @param frequencyHz where it lies
 * @param amplitude peak value in the channel's unit
 * @param propellerOrder as a multiple of the dwell's mean propeller speed
 * @param crankOrder as a multiple of the dwell's mean crank speed
 * @param followsSpeed whether it moves with the speed rather than standing at one frequency; false
 *     where the speed was too steady to tell
 * @param hum whether it stands where the mains do, as all such lines of the dwell together show it
 */
public record UnexplainedLine(
        double frequencyHz,
        double amplitude,
        double propellerOrder,
        double crankOrder,
        boolean followsSpeed,
        boolean hum) {
    /** Ours: a line this near a whole order of the crank may be one of its own. */
    private static final double WHOLE = 0.002;

    /** Whether it may be a multiple of the crank's speed, which the installation doesn't list. */
    public boolean ofTheCrank() {
        double whole = Math.rint(crankOrder);
        return whole >= 1 && Math.abs(crankOrder / whole - 1) < WHOLE;
    }
}
