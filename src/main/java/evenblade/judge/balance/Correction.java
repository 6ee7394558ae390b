package evenblade.judge.balance;

import evenblade.base.numeric.Crossing;
import evenblade.base.numeric.Minimum;
import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.PlanarSpread;
import java.util.function.DoubleUnaryOperator;

/**
 * The weight that stills the 1× line, in place of all weights that were on in the runs.
 *
 * <p>Standard errors by the covariance of the fit (for one trial: σ_C² = |W|²(|T|²σ_O² + |O|²σ_T²)/|T − O|⁴ each part).
 * Intervals of 95 % by the likelihood: every mass is in it with which, at its best angle, the runs would still agree
 * within t standard deviations; every angle likewise. That stays right where α is known to a few tenths only.
 *
 * @param value mass × radius at its angle
 * @param standardErrorGmm of mass × radius
 * @param standardErrorDeg of the angle
 * @param lowGmm lower end of the interval of mass × radius, 0 where no weight at all fits the runs as well
 * @param highGmm upper end
 * @param belowDeg how far the interval of the angle reaches below the angle, at most 180
 * @param aboveDeg how far above
 */
public record Correction(
        Unbalance value,
        double standardErrorGmm,
        double standardErrorDeg,
        double lowGmm,
        double highGmm,
        double belowDeg,
        double aboveDeg) {
    private static final double WIDER = 1.5; // from step to step, until the limit lies inside; any factor will do
    /** Halvings in the search of an end: to a ten thousandth of the bracket or better. */
    private static final int HALVINGS = 14;
    /** A best angle or mass is sought to a ten thousandth of the bracket: the misfit is flat there. */
    private static final double FINE = 1e-4;
    /** Masses so many times the best one are past any interval worth having. */
    private static final double FARTHEST = 1000;

    /** The correction that a fit calls for. */
    static Correction of(Influence influence) {
        Phasor best = influence.correctionGmm();
        PlanarSpread line = influence.lineAt(best);
        // dC = −(error of the line at C)/α: along C it moves the mass, across the angle.
        Phasor along = influence.perGmm().times(best.times(1 / Math.max(best.magnitude(), Double.MIN_NORMAL)));
        double perGmm = influence.perGmm().magnitude();
        double mass = line.sigmaAlong(along) / perGmm;
        double across = line.sigmaAlong(along.times(new Phasor(0, 1))) / perGmm;
        Search search = new Search(influence, best, Math.pow(influence.reach95(), 2));
        return new Correction(
                new Unbalance(best),
                mass,
                Math.min(180, Math.toDegrees(across / Math.max(best.magnitude(), Double.MIN_NORMAL))),
                search.lowest(),
                search.highest(),
                search.reachDeg(-1),
                search.reachDeg(1));
    }

    /** Whether no weight at all would fit the runs as well. */
    public boolean withinError() {
        return lowGmm <= 0;
    }

    /** From one angle to another, −180 to 180. */
    static double turn(double fromDeg, double toDeg) {
        return Math.IEEEremainder(toDeg - fromDeg, 360);
    }

    /** Ends of the likelihood intervals. */
    private record Search(Influence influence, Phasor best, double limit) {
        private double misfit(double gmm, double degrees) {
            return influence.misfit(Phasor.ofDegrees(gmm, degrees));
        }

        private double atMass(double gmm) {
            double angle = best.degrees();
            // A third of a turn to either side holds the lowest misfit, as no other one is as near.
            return Minimum.between(degrees -> misfit(gmm, degrees), angle - 120, angle + 120, 240 * FINE)
                    .value();
        }

        private double atAngle(double degrees) {
            double size = best.magnitude();
            return Minimum.between(x -> misfit(size * x / (1 - x), degrees), 0, 1 - 1 / FARTHEST, FINE)
                    .value();
        }

        double lowest() {
            if (atMass(0) <= limit) {
                return 0;
            }
            return crossing(this::atMass, best.magnitude(), 0);
        }

        double highest() {
            double far = best.magnitude();
            while (atMass(far) <= limit && far < FARTHEST * best.magnitude()) {
                far *= WIDER;
            }
            return crossing(this::atMass, best.magnitude(), far);
        }

        double reachDeg(int sense) {
            double angle = best.degrees();
            DoubleUnaryOperator turned = by -> atAngle(angle + sense * by);
            double far = 1;
            while (far < 180 && turned.applyAsDouble(far) <= limit) {
                far = Math.min(180, WIDER * far);
            }
            return turned.applyAsDouble(far) <= limit ? 180 : crossing(turned, 0, far);
        }

        /** Where a misfit that is within the limit inside and beyond it outside crosses it. */
        private double crossing(DoubleUnaryOperator misfit, double inside, double outside) {
            return Crossing.between(at -> misfit.applyAsDouble(at) <= limit, inside, outside, HALVINGS);
        }
    }
}
