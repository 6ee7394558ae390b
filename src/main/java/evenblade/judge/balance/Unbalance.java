package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;

/**
 * A mass at a radius, as a vector across the shaft: mass × radius at an angle.
 *
 * <p>Angles of weights turn the same way as phases; counted against the rotation where phases are measured.
 *
 * @param vectorGmm in g·mm
 */
public record Unbalance(Phasor vectorGmm) {
    /** 1 oz·in: 28.349523125 g (avoirdupois pound / 16, exact) × 25.4 mm (exact). */
    public static final double GMM_PER_OUNCE_INCH = 28.349523125 * 25.4;
    /** g·mm to kg·m. */
    private static final double KGM_PER_GMM = 1e-6;

    public static Unbalance of(double massG, double radiusMm, double angleDeg) {
        return new Unbalance(Phasor.ofDegrees(massG * radiusMm, angleDeg));
    }

    public double gmm() {
        return vectorGmm.magnitude();
    }

    /** 0 up to but not including 360. */
    public double angleDeg() {
        return vectorGmm.degrees();
    }

    public double ounceInches() {
        return gmm() / GMM_PER_OUNCE_INCH;
    }

    /** The mass in g that makes it at a radius in mm, above zero. */
    public double gramsAt(double radiusMm) {
        return gmm() / radiusMm;
    }

    public Unbalance plus(Unbalance other) {
        return new Unbalance(vectorGmm.plus(other.vectorGmm));
    }

    public Unbalance minus(Unbalance other) {
        return new Unbalance(vectorGmm.minus(other.vectorGmm));
    }
}
