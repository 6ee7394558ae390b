package evenblade.judge.tracking;

import evenblade.base.numeric.Phasor;
import evenblade.base.units.Length;
import evenblade.base.units.Mass;
import java.util.List;

/**
 * Rough size of the couple that blades out of track turn with the propeller: an estimate for the order of magnitude,
 * from blades that lean as rigid bodies.
 *
 * <p>A blade whose tip lies δ out of the mean plane has its centre of gravity δ·r/R out of it; the pull m·ω²·r acts
 * there: M = |Σ m·ω²·r·(δ·r/R)·e^{jθ}|.
 *
 * @param newtonMetres size of the couple in N·m
 * @param degrees where on the hub it points, from hub position 1
 */
public record CoupleEstimate(double newtonMetres, double degrees) {
    /**
     * Estimates the couple.
     *
     * @param bladeMass mass of one blade
     * @param centreOfGravity distance of a blade's centre of gravity from the shaft's centre
     * @param tipRadius distance of the tips
     * @param propellerRpm speed of the propeller
     * @param marksMm tip marks by hub position in mm; their mean doesn't matter
     */
    public static CoupleEstimate of(
            Mass bladeMass, Length centreOfGravity, Length tipRadius, double propellerRpm, List<Double> marksMm) {
        double omega = 2 * Math.PI * propellerRpm / 60;
        double pull = bladeMass.kilograms() * omega * omega * centreOfGravity.metres();
        double lever = centreOfGravity.metres() / tipRadius.metres() / 1000;
        Phasor couple = around(marksMm).times(pull * lever);
        return new CoupleEstimate(couple.magnitude(), couple.degrees());
    }

    /** Σ (d − mean)·e^{jθ} over the hub positions. */
    static Phasor around(List<Double> byPosition) {
        double mean = MarkStatistics.mean(byPosition);
        Phasor sum = Phasor.ZERO;
        for (int p = 1; p <= byPosition.size(); p++) {
            sum = sum.plus(Phasor.ofDegrees(byPosition.get(p - 1) - mean, HubPattern.degreesAt(p, byPosition.size())));
        }
        return sum;
    }
}
