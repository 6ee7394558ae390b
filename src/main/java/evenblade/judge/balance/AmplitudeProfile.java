package evenblade.judge.balance;

import evenblade.base.numeric.Phasor;
import java.util.List;

/**
 * Likelihood of masses and angles of the correction where only amplitudes were read: T = O·|1 − W/C|.
 *
 * <p>Weights near the size of the correction make two answers nearly alike, one lighter and one heavier, for
 * |1 − s·e^{jφ}| = s·|1 − e^{jφ}/s|: only the run without weights tells them apart. So the interval is looked for over a
 * wide net of masses and angles, O solved for at each, not from the slope at the best answer.
 */
final class AmplitudeProfile {
    /** Masses tried, evenly in their logarithm, from a fourth to four times the best. */
    private static final int MASSES = 161;

    private static final double WIDEST = 4; // ours: influences a factor four apart are no one rotor's
    /** Angles tried: so many to either side of the best, by steps of a degree. */
    private static final int TURNS = 120;
    /** The end lies somewhere between two of them. */
    private static final double HALF_TURN_STEP_DEG = 0.5;

    private final List<WeightedReading> runs;
    private final Influence fit;
    private final double[] variances;
    private final double[][] misfits = new double[MASSES][];

    private AmplitudeProfile(List<WeightedReading> runs, Influence fit) {
        this.runs = runs;
        this.fit = fit;
        this.variances = runs.stream().mapToDouble(fit::varianceOfAmplitude).toArray();
        for (int m = 0; m < MASSES; m++) {
            misfits[m] = misfits(m);
        }
    }

    static AmplitudeProfile of(List<WeightedReading> runs, Influence fit) {
        return new AmplitudeProfile(runs, fit);
    }

    /**
     * The correction found by another formula, with the errors of the fit and the interval from here, made to hold it.
     *
     * @param byFit the correction of the fit, with its errors
     * @param value what is recommended
     */
    Correction interval(Correction byFit, Phasor value) {
        double best = Double.MAX_VALUE;
        for (double[] row : misfits) {
            for (double misfit : row) {
                best = Math.min(best, misfit);
            }
        }
        double limit = best + Math.pow(fit.reach95(), 2);
        double low = value.magnitude();
        double high = value.magnitude();
        double turned = Correction.turn(fit.correctionGmm().degrees(), value.degrees());
        double below = 0;
        double above = 0;
        for (int m = 0; m < MASSES; m++) {
            for (int a = 0; a <= 2 * TURNS; a++) {
                if (misfits[m][a] <= limit) {
                    low = Math.min(low, correction(m, 0).magnitude());
                    high = Math.max(high, correction(m, 0).magnitude());
                    below = Math.max(below, turned - (a - TURNS));
                    above = Math.max(above, a - TURNS - turned);
                }
            }
        }
        // The weights' common error of mass is in the slopes of the fit only: the mass is never surer than those say.
        return new Correction(
                new Unbalance(value),
                byFit.standardErrorGmm(),
                byFit.standardErrorDeg(),
                Math.min(low, byFit.lowGmm()),
                Math.max(high, byFit.highGmm()),
                below + HALF_TURN_STEP_DEG,
                above + HALF_TURN_STEP_DEG);
    }

    private Phasor correction(int mass, int turnDeg) {
        double power = 2.0 * mass / (MASSES - 1) - 1;
        Phasor best = fit.correctionGmm();
        return best.times(Math.pow(WIDEST, power)).times(Phasor.ofDegrees(1, turnDeg));
    }

    /**
     * Misfits of one mass at all angles: each run's amplitude should be O·|1 − W/C|, O is solved for. The sum of squares of
     * what was read is the same everywhere and left out.
     */
    private double[] misfits(int mass) {
        Phasor correction = correction(mass, 0);
        List<Phasor> over =
                runs.stream().map(run -> run.weightGmm().over(correction)).toList();
        double[] all = new double[2 * TURNS + 1];
        for (int a = 0; a < all.length; a++) {
            Phasor turn = Phasor.ofDegrees(1, a - TURNS);
            double pp = 0;
            double pt = 0;
            for (int i = 0; i < variances.length; i++) {
                Phasor w = over.get(i);
                double along = w.re() * turn.re() + w.im() * turn.im();
                double square = Math.max(0, 1 - 2 * along + w.re() * w.re() + w.im() * w.im());
                double amplitude = runs.get(i).amplitude();
                pp += square / variances[i];
                pt += Math.sqrt(square) * amplitude / variances[i];
            }
            all[a] = pp > 0 ? -pt * pt / pp : 0;
        }
        return all;
    }
}
