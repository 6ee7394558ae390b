package evenblade.intake;

import evenblade.units.SignalUnit;

/**
 * What the largest storable sample of a recording stands for.
 *
 * @param value above zero, in the unit
 * @param unit the unit that the channel's samples get
 */
public record FullScale(double value, SignalUnit unit) {}
