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
 */
public record UnexplainedLine(
        double frequencyHz, double amplitude, double propellerOrder, double crankOrder, boolean followsSpeed) {}
