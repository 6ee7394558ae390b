package evenblade.judge.balance;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;

/**
 * Balancing without phase by the squares of the amplitudes.
 *
 * <p>|V₀ + α·W|² = O² + a²·|W|² + X·Wx + Y·Wy with a = |α| and (X, Y) = 2·O·a at the angle of the heavy side: linear in
 * O², a², X and Y, solved by least squares. For three equal weights at 0°, 120° and 240° that is V² = mean(T²) − O²,
 * V = a·|W|, and (x, y) = (X, Y)/(2·O·a) from the cosine terms (T² − O² − V²)/(2OV). √(x² + y²), the closure, must be 1;
 * it isn't used for the answer and says how well the readings agree. Correction: O/a opposite (X, Y).
 *
 * <p>Methods as in Thearle 1934 (Trans. ASME 56); its printed digits weren't read.
 *
 * @param atRest O
 * @param perGmm a
 * @param correctionGmm the correction
 * @param closure √(x² + y²)
 */
record SquaredFit(double atRest, double perGmm, Phasor correctionGmm, double closure) {
    private static final int UNKNOWNS = 4; // two parts of the vector, its square and the influence's
    /** Parts of a weight smaller than this are rounding of sine and cosine. */
    private static final double ROUNDING = 1e-9;

    /** Where a run's figure vanishes, its square still counts with so much of the longest one's error. */
    private static final double LEAST_WEIGHT = 0.05;

    /**
     * Solves.
     *
     * @return nothing where the runs can't tell the four apart, or give a square below zero
     */
    static Optional<SquaredFit> of(List<WeightedReading> runs) {
        double longest =
                runs.stream().mapToDouble(WeightedReading::amplitude).max().orElseThrow();
        double heaviest =
                runs.stream().mapToDouble(r -> r.weightGmm().magnitude()).max().orElseThrow();
        if (!(longest > 0 && heaviest > 0)) {
            return Optional.empty();
        }
        double[][] rows = new double[runs.size()][];
        double[] squares = new double[runs.size()];
        for (int i = 0; i < rows.length; i++) {
            Phasor w = share(runs.get(i), heaviest);
            double amplitude = runs.get(i).amplitude() / longest;
            double error = error(runs.get(i), longest);
            rows[i] =
                    new double[] {1 / error, (w.re() * w.re() + w.im() * w.im()) / error, w.re() / error, w.im() / error
                    };
            squares[i] = amplitude * amplitude / error;
        }
        LinearDesign design = LinearDesign.of(rows);
        return design.rank() < UNKNOWNS ? Optional.empty() : solved(design.fit(squares), longest, heaviest);
    }

    /** Whether weights and angles differ enough to tell the four unknowns apart, whatever the readings. */
    static boolean solvable(List<WeightedReading> runs) {
        double heaviest =
                runs.stream().mapToDouble(r -> r.weightGmm().magnitude()).max().orElseThrow();
        double[][] rows = runs.stream()
                .map(r -> share(r, heaviest))
                .map(w -> new double[] {1, w.re() * w.re() + w.im() * w.im(), w.re(), w.im()})
                .toArray(double[][]::new);
        return heaviest > 0 && LinearDesign.of(rows).rank() == UNKNOWNS;
    }

    /** Weights over the heaviest, without the rounding that would pass for a part across. */
    private static Phasor share(WeightedReading run, double heaviest) {
        Phasor w = run.weightGmm().times(1 / heaviest);
        return new Phasor(Math.abs(w.re()) < ROUNDING ? 0 : w.re(), Math.abs(w.im()) < ROUNDING ? 0 : w.im());
    }

    /** Standard error of the square of amplitude over longest, without run-to-run weights that need a fit. */
    private static double error(WeightedReading run, double longest) {
        double amplitude = Math.max(run.amplitude() / longest, LEAST_WEIGHT);
        return 2 * amplitude * Math.hypot(run.standardError() / longest, TrialScatter.PRIOR_SHARE * amplitude);
    }

    private static Optional<SquaredFit> solved(LinearFit fit, double longest, double heaviest) {
        double restSquare = fit.parameter(0);
        double weightSquare = fit.parameter(1);
        if (!(restSquare > 0 && weightSquare > 0)) {
            return Optional.empty();
        }
        double rest = Math.sqrt(restSquare);
        double perWeight = Math.sqrt(weightSquare);
        Phasor heavySide = new Phasor(fit.parameter(2), fit.parameter(3));
        double closure = heavySide.magnitude() / (2 * rest * perWeight);
        return Optional.of(new SquaredFit(
                rest * longest,
                perWeight * longest / heaviest,
                Phasor.ofDegrees(heaviest * rest / perWeight, heavySide.degrees() + 180),
                closure));
    }

    /** The correction by the cosine terms alone, 2·O²/|(X, Y)|; the two agree as well as the closure is near 1. */
    double byCosinesGmm() {
        return correctionGmm.magnitude() / closure;
    }

    /** V₀ along 0° and α turned to it, to start the fit of amplitudes from. */
    double[] start() {
        Phasor alpha = new Phasor(-atRest, 0).over(correctionGmm);
        return new double[] {atRest, alpha.re(), alpha.im()};
    }
}
