package evenblade.base.fact;

import evenblade.base.units.SignalUnit;

/**
 * A sample's value, in the unit of its channel.
 *
 * @param value in that unit
 * @param unit may be unstated
 */
public record SignalValue(double value, SignalUnit unit) implements Value {}
