package evenblade.machine.installation;

import evenblade.base.units.Length;

/**
 * Where the accelerometer sits on the engine, roughly (a few centimetres are near enough), seen from the middle between
 * the engine mounts. A couple rocks the engine about its middle, a pull at the propeller shoves and rocks it: which of
 * the two a ratio of along to across speaks for depends on this place.
 *
 * @param ahead towards the propeller; below zero behind the middle
 * @param above below zero under it
 */
public record SensorPlace(Length ahead, Length above) {}
