package evenblade.tell.report;

import evenblade.base.units.SignalUnit;
import java.util.OptionalDouble;

/** Peak velocity in mm/s of a line: the measure of shaking that a customer is shown. */
final class Velocity {
    private Velocity() {}

    /**
     * {@code v = 1000·k·a/(2πf)} for an acceleration, {@code 1000·k·a} for a velocity, {@code k} the SI factor of the unit; empty
     * where the scale isn't known.
     *
     * @param amplitude peak value in the unit
     * @param frequencyHz of the line, above 0
     */
    static OptionalDouble mmS(double amplitude, SignalUnit unit, double frequencyHz) {
        double si = 1000 * amplitude * unit.siFactor();
        return switch (unit.quantity()) {
            case ACCELERATION -> OptionalDouble.of(si / (2 * Math.PI * frequencyHz));
            case VELOCITY -> OptionalDouble.of(si);
            case VOLTAGE, UNCALIBRATED -> OptionalDouble.empty();
        };
    }
}
