package evenblade.judge.balance;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Phasor;
import evenblade.base.numeric.PlanarSpread;
import java.util.List;

/**
 * What runs with and without weights say about the machine: V = V₀ + α·W, with the errors of both.
 *
 * <p>Without a mark on the shaft V₀ lies along 0° by choice; lengths and everything about weights hold all the same.
 */
public final class Influence {
    /** So many degrees of freedom are as good as knowing. */
    private static final double KNOWN = 1e4;

    private final Phasor atRest;
    private final Phasor perGmm;
    private final double[][] fromLines;
    private final double[][] fromScatter;
    private final double[][] fromWeights;
    private final double[][] fromAll;
    private final TrialScatter scatter;
    private final double sumOfSquares;
    private final int spareFigures;

    Influence(
            Phasor atRest,
            Phasor perGmm,
            double[][] fromLines,
            double[][] fromScatter,
            double[][] fromWeights,
            TrialScatter scatter,
            double sumOfSquares,
            int spareFigures) {
        this.atRest = atRest;
        this.perGmm = perGmm;
        this.fromLines = fromLines;
        this.fromScatter = fromScatter;
        this.fromWeights = fromWeights;
        this.fromAll = new double[4][4];
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                fromAll[i][j] = fromLines[i][j] + fromScatter[i][j] + fromWeights[i][j];
            }
        }
        this.scatter = scatter;
        this.sumOfSquares = sumOfSquares;
        this.spareFigures = spareFigures;
    }

    /** V₀, the line without weights. */
    public Phasor atRest() {
        return atRest;
    }

    /** |V₀|. */
    public double restAmplitude() {
        return atRest.magnitude();
    }

    /** α, what one g·mm at 0° adds to the line. */
    public Phasor perGmm() {
        return perGmm;
    }

    /** Scatter from run to run that was reckoned with, as a share of the line's length. */
    public double scatterShare() {
        return scatter.share();
    }

    /** Whether runs of this job alone say that scatter; else the usual one of ground runs is in it. */
    public boolean scatterMeasured() {
        return scatter.seen();
    }

    /** Whether runs of this job say something about it. */
    boolean scatterSeenInPart() {
        return scatter.measuredFreedom() > 0;
    }

    /** Residuals weighted by their errors; on average {@link #spareFigures()} if the errors are right. */
    double sumOfSquares() {
        return sumOfSquares;
    }

    /** Figures read beyond the unknowns. */
    int spareFigures() {
        return spareFigures;
    }

    /** C = −V₀/α in g·mm, the sum of weights that stills the line. */
    public Phasor correctionGmm() {
        return atRest.over(perGmm).times(-1);
    }

    /** V₀ + α·W for a sum of weights that is exactly so, with the errors of V₀ and α. */
    PlanarSpread lineAt(Phasor weightGmm) {
        return spread(weightGmm, fromAll);
    }

    /** How ill it fits the runs that a sum of weights stills the line: on average 2 for the true one. */
    double misfit(Phasor weightGmm) {
        return lineAt(weightGmm).distanceSquared(Phasor.ZERO);
    }

    /**
     * What a run with these weights will read: with errors of their mass and placing, and the scatter of that run; the
     * error of its own line left out.
     */
    public PlanarSpread predicted(List<Weight> weights) {
        Phasor sum = weights.stream().map(Weight::vectorGmm).reduce(Phasor.ZERO, Phasor::plus);
        PlanarSpread line = lineAt(sum);
        for (Weight weight : weights) {
            Phasor vector = weight.vectorGmm();
            line = line.plusError(perGmm.times(WeightErrors.massError(weight, vector)))
                    .plusError(perGmm.times(WeightErrors.placingError(vector)));
        }
        return line.plusVariance(scatter.share() * scatter.share() * line.meanSquare());
    }

    /** Variance of the amplitude read in a run: its line, the scatter, and the placing of its weights. */
    double varianceOfAmplitude(WeightedReading run) {
        Phasor line = atRest.plus(perGmm.times(run.weightGmm()));
        double level = Math.hypot(line.magnitude(), InfluenceFit.STILL_SHARE * atRest.magnitude());
        double sum = Math.pow(run.standardError(), 2) + Math.pow(scatter.share() * level, 2);
        for (Weight weight : run.weights()) {
            Phasor moved = perGmm.times(WeightErrors.placingError(weight.vectorGmm()));
            double along =
                    (line.re() * moved.re() + line.im() * moved.im()) / Math.max(line.magnitude(), Double.MIN_NORMAL);
            sum += along * along;
        }
        return Math.max(sum, Math.pow(InfluenceFit.LEAST_ERROR * atRest.magnitude(), 2));
    }

    /** How many standard deviations (of lines and scatter, weights taken as exact) α lies from zero. */
    double trialEffect() {
        PlanarSpread error = new PlanarSpread(
                Phasor.ZERO,
                fromLines[2][2] + fromScatter[2][2],
                fromLines[2][3] + fromScatter[2][3],
                fromLines[3][3] + fromScatter[3][3]);
        return Math.sqrt(error.distanceSquared(perGmm));
    }

    /** Degrees of freedom behind the error of the correction: only the scatter's part is uncertain (Satterthwaite). */
    double freedom() {
        Phasor at = correctionGmm();
        double part = spread(at, fromScatter).variance();
        double whole = lineAt(at).variance();
        if (!(part * KNOWN > whole)) {
            return KNOWN;
        }
        return Math.min(KNOWN, scatter.freedom() * (whole / part) * (whole / part));
    }

    /** Degrees of freedom behind the errors of the readings alone, weights taken as exact. */
    double freedomOfReadings() {
        double part = fromScatter[2][2] + fromScatter[3][3];
        double whole = part + fromLines[2][2] + fromLines[3][3];
        if (!(part * KNOWN > whole)) {
            return KNOWN;
        }
        return Math.min(KNOWN, scatter.freedom() * (whole / part) * (whole / part));
    }

    /** Half width of a 95 % interval in standard deviations. */
    double reach95() {
        return Distributions.reach95(freedom());
    }

    /** By how much normal standard deviations are widened for it. */
    double widening() {
        return reach95() / Distributions.reach95();
    }

    /** Covariance of V₀ + α·W from that of (V₀, α). */
    private PlanarSpread spread(Phasor w, double[][] c) {
        double x = w.re();
        double y = w.im();
        // The error of V₀x + αx·x − αy·y, and of V₀y + αx·y + αy·x.
        double xx = c[0][0] + x * x * c[2][2] + y * y * c[3][3] + 2 * (x * c[0][2] - y * c[0][3] - x * y * c[2][3]);
        double yy = c[1][1] + y * y * c[2][2] + x * x * c[3][3] + 2 * (y * c[1][2] + x * c[1][3] + x * y * c[2][3]);
        double xy = c[0][1]
                + y * c[0][2]
                + x * c[0][3]
                + x * c[1][2]
                - y * c[1][3]
                + x * y * (c[2][2] - c[3][3])
                + (x * x - y * y) * c[2][3];
        return new PlanarSpread(atRest.plus(perGmm.times(w)), xx, xy, yy);
    }
}
