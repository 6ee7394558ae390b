package evenblade.measure.soundcheck;

/**
 * A line of mains hum.
 *
 * @param frequencyHz a multiple of 50 or 60 Hz
 * @param amplitude peak, in the channel's unit
 * @param overFloorDb over the noise around it
 */
public record HumLine(double frequencyHz, double amplitude, double overFloorDb) {}
