package evenblade.keep.practice;

import java.util.List;

/**
 * Engine and reduction drive as they truly are.
 *
 * @param cylinderStrength of each cylinder in firing order, 1 for as strong as it should be; empty for an
 *     electric motor
 * @param crankImbalanceKgM heavy spot of crank or rotor, mass × radius
 * @param meshAcceleration at the sensor from teeth meeting at the reference speed, m/s² peak
 * @param meshModulation share (0 to 1) by which the mesh swells once per propeller revolution
 * @param rattleAcceleration of a loose mount at the reference speed, m/s² peak
 */
public record Drive(
        List<Double> cylinderStrength,
        double crankImbalanceKgM,
        double meshAcceleration,
        double meshModulation,
        double rattleAcceleration) {
    public Drive {
        cylinderStrength = List.copyOf(cylinderStrength);
    }

    Drive withCylinders(List<Double> strengths) {
        return new Drive(strengths, crankImbalanceKgM, meshAcceleration, meshModulation, rattleAcceleration);
    }

    Drive withCrankImbalance(double kgM) {
        return new Drive(cylinderStrength, kgM, meshAcceleration, meshModulation, rattleAcceleration);
    }

    Drive withMesh(double acceleration, double modulation) {
        return new Drive(cylinderStrength, crankImbalanceKgM, acceleration, modulation, rattleAcceleration);
    }

    Drive withRattle(double acceleration) {
        return new Drive(cylinderStrength, crankImbalanceKgM, meshAcceleration, meshModulation, acceleration);
    }
}
