package evenblade.judge.findings;

import evenblade.base.units.SignalUnit;
import evenblade.measure.orders.OrderReading;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * One line as one channel saw it in one dwell.
 *
 * @param run name of the run
 * @param dwell number of the dwell in the run, from 0
 * @param engineRpm of the dwell
 * @param channel its name
 * @param direction which way it feels
 * @param unit of the amplitude
 * @param microphone whether it is sound
 * @param reading what was measured
 * @param amplitude peak value, in the unit
 * @param ciLow lower end of its 95 % interval
 * @param ciHigh upper end
 */
record OrderObservation(
        String run,
        int dwell,
        double engineRpm,
        String channel,
        Direction direction,
        SignalUnit unit,
        boolean microphone,
        OrderReading reading,
        double amplitude,
        double ciLow,
        double ciHigh) {
    boolean detected() {
        return reading.detected();
    }

    /** Whether it stands for this line alone. */
    boolean alone() {
        return reading.inseparableFrom().isEmpty();
    }

    /** Peak velocity in mm/s: a/(2πf) for an acceleration; empty where the scale isn't known. */
    OptionalDouble velocityMmS() {
        if (microphone) {
            return OptionalDouble.empty();
        }
        double si = 1000 * amplitude * unit.siFactor();
        return switch (unit.quantity()) {
            case ACCELERATION -> OptionalDouble.of(si / (2 * Math.PI * reading.frequencyHz()));
            case VELOCITY -> OptionalDouble.of(si);
            case VOLTAGE, UNCALIBRATED -> OptionalDouble.empty();
        };
    }

    boolean sameMoment(OrderObservation other) {
        return run.equals(other.run) && dwell == other.dwell;
    }

    /** Amplitude with its unit. */
    String size() {
        return String.format(Locale.ROOT, "%.3g %s", amplitude, unit.display());
    }

    /** Where and when, for a sentence. */
    String where() {
        return String.format(Locale.ROOT, "at %.0f engine rpm in '%s'", engineRpm, run);
    }
}
