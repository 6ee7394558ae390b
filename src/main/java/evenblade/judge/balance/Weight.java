package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;

/**
 * A weight on the hub, as weighed and placed.
 *
 * <p>Two weights that are equal in everything count as the same weight left in its place: its errors of mass and of
 * placing are then the same in every run that had it on.
 *
 * @param massG mass, above zero
 * @param radiusMm distance of its middle from the shaft's, above zero
 * @param angleDeg angle on the hub
 * @param massErrorG standard error of the mass
 */
public record Weight(double massG, double radiusMm, double angleDeg, double massErrorG) {
    /** Standard error of weighing where none is given: a tenth of a gram; common practice, no source. */
    public static final double USUAL_MASS_ERROR_G = 0.1;
    /** Of a light weight: no scale is used whose step is more than this share of what it weighs. */
    public static final double USUAL_MASS_ERROR_SHARE = 0.01;
    /** Standard error of placing on a hub, in degrees; set by this project, common practice, no source. */
    public static final double PLACING_ERROR_DEG = 2;

    public Weight {
        if (!(massG > 0 && radiusMm > 0 && massErrorG >= 0)) {
            throw new IllegalArgumentException("a weight of " + massG + " g at " + radiusMm + " mm");
        }
    }

    /** With the usual error of its mass. */
    public static Weight of(double massG, double radiusMm, double angleDeg) {
        return new Weight(massG, radiusMm, angleDeg, usualMassErrorG(massG));
    }

    /** The smaller of a tenth of a gram and one percent. */
    public static double usualMassErrorG(double massG) {
        return Math.min(USUAL_MASS_ERROR_G, USUAL_MASS_ERROR_SHARE * massG);
    }

    /** Mass × radius in g·mm. */
    public double gmm() {
        return massG * radiusMm;
    }

    /** Mass × radius at its angle, in g·mm. */
    public Phasor vectorGmm() {
        return Phasor.ofDegrees(gmm(), angleDeg);
    }

    public Unbalance unbalance() {
        return new Unbalance(vectorGmm());
    }
}
