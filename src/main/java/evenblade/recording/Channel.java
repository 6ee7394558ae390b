package evenblade.recording;

import evenblade.units.SignalUnit;

/**
 * One measured quantity of a recording.
 *
 * @param name as the file names it, or a name given by the reader ("left", "channel 3")
 * @param unit the unit of the values
 * @param values one per stamp of the recording
 */
public record Channel(String name, SignalUnit unit, Series values) {}
