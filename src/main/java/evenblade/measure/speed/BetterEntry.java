package evenblade.measure.speed;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * An entry of the installation that explains the lines clearly better than the one made; one of the two.
 *
 * @param ratio engine revolutions per propeller revolution
 * @param blades number of blades
 */
record BetterEntry(OptionalDouble ratio, OptionalInt blades) {}
