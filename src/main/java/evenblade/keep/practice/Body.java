package evenblade.keep.practice;

import evenblade.base.numeric.Phasor;

/**
 * Engine and propeller as one stiff body on its mounts, and where the sensor sits on it. Distances along the
 * shaft count from the centre of gravity, ahead is positive.
 *
 * @param massKg of the whole
 * @param tiltInertia about a line across the shaft, kg·m²
 * @param rollInertia about the shaft, kg·m²
 * @param propellerAheadM of the disc
 * @param sensorAheadM of the sensor
 * @param sensorAboveM of the sensor above the shaft's axis
 * @param slide resonance of the body sliding on its mounts
 * @param rock resonance of the body tilting and rolling on its mounts
 */
public record Body(
        double massKg,
        double tiltInertia,
        double rollInertia,
        double propellerAheadM,
        double sensorAheadM,
        double sensorAboveM,
        Resonance slide,
        Resonance rock) {
    /**
     * A body on a spring: {@code a/a_free = f²/(f² − f_n² − 2jζ·f·f_n)}, from {@code m·x'' + c·x' + k·x = F}.
     * Well above its natural frequency the body moves as if free.
     *
     * @param naturalHz f_n
     * @param damping ζ, share of critical
     */
    public record Resonance(double naturalHz, double damping) implements Line.Response {
        @Override
        public Phasor at(double frequencyHz) {
            double square = frequencyHz * frequencyHz;
            double re = square - naturalHz * naturalHz;
            double im = -2 * damping * frequencyHz * naturalHz;
            double below = re * re + im * im;
            return new Phasor(square * re / below, -square * im / below);
        }
    }

    Body onMounts(Resonance newSlide, Resonance newRock) {
        return new Body(
                massKg, tiltInertia, rollInertia, propellerAheadM, sensorAheadM, sensorAboveM, newSlide, newRock);
    }
}
