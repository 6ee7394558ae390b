package evenblade.judge.tracking;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import java.util.List;

/**
 * Rough size of what blades of different pitch do to the thrust: an estimate for the order of magnitude.
 *
 * <p>Blade-element theory with one chord from hub to tip, no stall, and the inflow left as it is, which makes it rather
 * too large than too small: a blade turned by Δβ pulls ρ·a·c·Ω²·R³·Δβ/6 more, and its share of the couple across the
 * shaft is ρ·a·c·Ω²·R⁴·Δβ/8 (the lift ½ρ(Ωr)²·c·a·Δβ per length, integrated over r).
 *
 * @param thrustNewtons thrust of the strongest blade less that of the weakest, in N
 * @param coupleNewtonMetres couple across the shaft that turns with the propeller, in N·m
 * @param liftSlopePerRadian lift slope that was used
 */
public record ThrustOffsetEstimate(double thrustNewtons, double coupleNewtonMetres, double liftSlopePerRadian) {
    /** Lift slope of a usual section: 2π of the thin aerofoil less some 10 %. Common practice, no source. */
    public static final double USUAL_LIFT_SLOPE_PER_RADIAN = 5.7;

    /** Density of air at sea level in kg/m³, standard atmosphere ISO 2533 (from memory). */
    private static final double AIR_DENSITY = 1.225;

    /**
     * Estimates with the usual lift slope and air at sea level.
     *
     * @param anglesDeg blade angles by hub position in degrees; their mean doesn't matter
     * @param chord mean chord of a blade
     * @param tipRadius distance of the tips from the shaft's centre
     * @param propellerRpm speed of the propeller
     */
    public static ThrustOffsetEstimate of(List<Double> anglesDeg, Length chord, Length tipRadius, double propellerRpm) {
        double omega = 2 * Math.PI * propellerRpm / 60;
        double r = tipRadius.metres();
        double perRadian = AIR_DENSITY * USUAL_LIFT_SLOPE_PER_RADIAN * chord.metres() * omega * omega * r * r * r;
        double spread = Math.toRadians(MarkStatistics.spread(anglesDeg));
        Phasor around = CoupleEstimate.around(anglesDeg).times(Math.toRadians(1));
        return new ThrustOffsetEstimate(
                perRadian * spread / 6, perRadian * r * around.magnitude() / 8, USUAL_LIFT_SLOPE_PER_RADIAN);
    }
}
