package evenblade.measure.speed;

/**
 * A stretch at a steady speed that isn't confirmed. Nothing is measured in it.
 *
 * @param fromS start, seconds into the recording
 * @param toS end
 * @param propellerHz speed that explains most there, or the entered one
 * @param doubt why it isn't confirmed
 */
public record DoubtfulDwell(double fromS, double toS, double propellerHz, SpeedDoubt doubt) {}
