package evenblade.input.recording;

import evenblade.base.units.SignalUnit;

/**
 * One measured quantity of a recording.
 *
 * @param name as the file names it, or a name given by the reader ("left", "channel 3")
 * @param unit the unit of the values
 * @param values one per stamp of the recording
 * @param axis whether it is one direction; false for the length of several axes together, whose lines
 *     are not those of any axis
 */
public record Channel(String name, SignalUnit unit, Series values, boolean axis) {
    /** One direction, or sound. */
    public Channel(String name, SignalUnit unit, Series values) {
        this(name, unit, values, true);
    }
}
