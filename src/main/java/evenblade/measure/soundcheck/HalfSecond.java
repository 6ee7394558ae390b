package evenblade.measure.soundcheck;

/**
 * Half a second of a run.
 *
 * @param propellerHz speed
 * @param levelDb of all that is heard
 * @param floorDb of the noise between the lines
 */
public record HalfSecond(double propellerHz, double levelDb, double floorDb) {}
