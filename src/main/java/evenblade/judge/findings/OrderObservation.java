package evenblade.judge.findings;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.SignalValue;
import evenblade.base.units.SignalUnit;
import evenblade.judge.findings.RunEvidence.Direction;
import evenblade.judge.findings.RunEvidence.RunRef;
import evenblade.measure.orders.OrderReading;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One line as one channel saw it in one dwell.
 *
 * @param run where it was seen
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
        RunRef run,
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
    SignalValue size() {
        return new SignalValue(amplitude, unit);
    }

    /** Peak velocity, where the scale is known. */
    Amount velocity() {
        return Measure.VELOCITY.of(velocityMmS().orElseThrow() / 1000);
    }

    /** Where and when, for a sentence. */
    Fact where() {
        return where(engineRpm, run);
    }

    static Fact where(double engineRpm, RunRef run) {
        return Fact.of(FindingFact.WHERE, Measure.ENGINE_RPM.of(engineRpm), run.quoted());
    }

    EvidenceRef ref() {
        return ref(EvidenceRef.Side.ORDERS);
    }

    EvidenceRef ref(EvidenceRef.Side side) {
        return new EvidenceRef.Run(
                run.id(), side, OptionalDouble.of(engineRpm), Optional.of(direction), Optional.of(reading.line()));
    }
}
