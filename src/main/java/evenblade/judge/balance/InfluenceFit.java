package evenblade.judge.balance;

import evenblade.base.numeric.GeneralLeastSquares;
import evenblade.base.numeric.Phasor;
import java.util.List;
import java.util.Optional;

/**
 * Weighted least squares of V = V₀ + α·W over all runs: without weights, with trial weights, trim runs.
 *
 * <p>Each figure's error: of its line; of the scatter from run to run, a share of the fitted length of the line
 * ({@link TrialScatter}); of masses and placing of the weights ({@link WeightErrors}), which hang together between runs.
 * As these depend on the fit, it is repeated until it stands (for readings without phase each round is also one step of
 * Gauss and Newton). One run without and one with a weight give α = (T − O)/W exactly.
 *
 * <p>When it is wrong: where the line doesn't grow with the weight (a loose part, a stop), or V₀ drifts between runs.
 */
final class InfluenceFit {
    /** Rounds in which the scatter settles; it moves by less than 1e-6 of itself after half of them. */
    private static final int SCATTER_ROUNDS = 40;

    private static final int FINAL_ROUNDS = 16; // ours: a bound, so that it always ends
    /** Share of a step that is taken where the model is bent, so that steps don't swing to and fro. */
    private static final double DAMPING = 0.7;
    /**
     * A line that a weight has nearly stilled still scatters like one of this share of V₀: gusts don't shrink with the
     * unbalance. Set by this project.
     */
    static final double STILL_SHARE = 0.25;
    /** Share of the longest line that counts as its error where a reading names none and its line vanishes. */
    static final double LEAST_ERROR = 1e-6;

    private final LineModel model;
    private final List<WeightedReading> runs;
    private final List<List<Phasor>> weightErrors;
    private final double leastVariance;
    private double[] point;
    /** Variance across the line of each run, from errors of the weights. */
    private double[] across;
    /** Covariance of the unknowns in the last round. */
    private double[][] unsure;

    private InfluenceFit(LineModel model, List<WeightedReading> runs, double[] start) {
        this.model = model;
        this.runs = runs;
        this.weightErrors = WeightErrors.of(runs);
        double longest =
                runs.stream().mapToDouble(WeightedReading::amplitude).max().orElseThrow();
        this.leastVariance = Math.pow(LEAST_ERROR * longest, 2);
        this.point = start;
        this.unsure = new double[model.unknowns][model.unknowns];
        this.across = across();
    }

    /**
     * Fits runs that all have a phase.
     *
     * @return nothing where there is no run with another weight than the rest
     */
    static Optional<Influence> withPhase(List<WeightedReading> runs) {
        return start(runs).flatMap(start -> new InfluenceFit(LineModel.WITH_PHASE, runs, start).settle());
    }

    /** Fits with a scatter that is given. */
    static Optional<Influence> withPhase(List<WeightedReading> runs, TrialScatter scatter) {
        return start(runs).flatMap(start -> new InfluenceFit(LineModel.WITH_PHASE, runs, start).settle(scatter));
    }

    /**
     * Fits amplitudes.
     *
     * @param start V₀ along 0°, then the parts of α
     */
    static Optional<Influence> withoutPhase(List<WeightedReading> runs, double[] start) {
        return new InfluenceFit(LineModel.WITHOUT_PHASE, runs, start).settle();
    }

    private static Optional<double[]> start(List<WeightedReading> runs) {
        LineModel model = LineModel.WITH_PHASE;
        double[] nothing = new double[model.unknowns];
        double[] across = new double[runs.size()];
        double[] observed = model.rest(nothing, runs, across);
        double[][] alike = new double[observed.length][observed.length];
        for (int i = 0; i < observed.length; i++) {
            alike[i][i] = 1;
        }
        return GeneralLeastSquares.fit(model.slopes(nothing, runs, across), observed, alike)
                .map(GeneralLeastSquares::parameters);
    }

    private Optional<Influence> settle() {
        int freedom = model.parts * runs.size() - model.unknowns;
        double share = TrialScatter.PRIOR_SHARE;
        for (int round = 0; freedom > 0 && round < SCATTER_ROUNDS; round++) {
            Optional<GeneralLeastSquares> fit = step(share);
            if (fit.isEmpty()) {
                return Optional.empty();
            }
            // Residuals weighted by their errors should come to the degrees of freedom: the scatter that makes it so.
            double excess = fit.get().sumOfSquares() / freedom;
            // At most twice or half as much in one round, so that a wild first round does not throw it off.
            share *= Math.sqrt(Math.min(4, Math.max(0.25, excess)));
        }
        return settle(freedom > 0 ? TrialScatter.measured(share, freedom, part(share)) : TrialScatter.PRIOR);
    }

    /** How much of the variance of all figures is scatter. */
    private double part(double share) {
        double scatter = trace(scatterErrors(share));
        double rest = trace(lineErrors()) + trace(weightErrorMatrix()) + leastVariance;
        return scatter / (scatter + rest);
    }

    private static double trace(double[][] square) {
        double sum = 0;
        for (int i = 0; i < square.length; i++) {
            sum += square[i][i];
        }
        return sum;
    }

    private Optional<Influence> settle(TrialScatter scatter) {
        Optional<GeneralLeastSquares> fit = Optional.empty();
        for (int round = 0; round < FINAL_ROUNDS; round++) {
            fit = step(scatter.share());
            if (fit.isEmpty()) {
                return Optional.empty();
            }
        }
        double[][] fromLines = lineErrors();
        double[][] fromScatter = scatterErrors(scatter.share());
        double[][] fromWeights = weightErrorMatrix();
        GeneralLeastSquares last = fit.orElseThrow();
        return Optional.of(new Influence(
                model.atRest(point),
                model.perGmm(point),
                widen(last.carried(fromLines)),
                widen(last.carried(fromScatter)),
                widen(last.carried(fromWeights)),
                scatter,
                last.sumOfSquares(),
                model.parts * runs.size() - model.unknowns));
    }

    private Optional<GeneralLeastSquares> step(double share) {
        across = across();
        double[][] errors = sum(sum(lineErrors(), scatterErrors(share)), weightErrorMatrix());
        for (int i = 0; i < errors.length; i++) {
            errors[i][i] += leastVariance;
        }
        Optional<GeneralLeastSquares> fit =
                GeneralLeastSquares.fit(model.slopes(point, runs, across), model.rest(point, runs, across), errors);
        double damping = model == LineModel.WITH_PHASE ? 1 : DAMPING;
        fit.ifPresent(f -> {
            double[] step = f.parameters();
            for (int k = 0; k < step.length; k++) {
                step[k] = point[k] + damping * step[k];
            }
            point = step;
            unsure = f.carried(errors);
        });
        return fit;
    }

    private double[][] lineErrors() {
        double[][] all = square();
        for (int i = 0; i < all.length; i++) {
            double error = runs.get(i / model.parts).standardError();
            all[i][i] = error * error;
        }
        return all;
    }

    private double[][] scatterErrors(double share) {
        double[][] all = square();
        double still = STILL_SHARE * model.atRest(point).magnitude();
        for (int i = 0; i < all.length; i++) {
            double error = share
                    * Math.hypot(model.line(point, runs.get(i / model.parts)).magnitude(), still);
            all[i][i] = error * error;
        }
        return all;
    }

    private double[][] weightErrorMatrix() {
        double[][] all = square();
        Phasor perGmm = model.perGmm(point);
        for (List<Phasor> source : weightErrors) {
            double[] figures = new double[all.length];
            for (int i = 0; i < runs.size(); i++) {
                double[] moved = model.figures(perGmm.times(source.get(i)), model.line(point, runs.get(i)), across[i]);
                System.arraycopy(moved, 0, figures, model.parts * i, model.parts);
            }
            for (int i = 0; i < all.length; i++) {
                for (int j = 0; j < all.length; j++) {
                    all[i][j] += figures[i] * figures[j];
                }
            }
        }
        for (int i = 0; model == LineModel.WITHOUT_PHASE && i < all.length; i++) {
            // What the bend of the length adds where the line is as short as the error across it.
            double size = model.line(point, runs.get(i)).magnitude();
            double aside = across[i] + unsureAcross(runs.get(i));
            all[i][i] += aside > 0 ? 0.5 * aside * aside / (size * size + aside) : 0;
        }
        return all;
    }

    /** Variance of a fitted line across itself. */
    private double unsureAcross(WeightedReading run) {
        Phasor line = model.line(point, run);
        List<Phasor> changes = model.changes(run);
        double sum = 0;
        for (int k = 0; k < model.unknowns; k++) {
            for (int l = 0; l < model.unknowns; l++) {
                sum += aside(changes.get(k), line) * unsure[k][l] * aside(changes.get(l), line);
            }
        }
        return Math.max(0, sum);
    }

    private static double aside(Phasor error, Phasor line) {
        double size = line.magnitude();
        return size > 0 ? (line.re() * error.im() - line.im() * error.re()) / size : error.magnitude();
    }

    private double[] across() {
        double[] all = new double[runs.size()];
        Phasor perGmm = model.perGmm(point);
        for (int i = 0; i < all.length; i++) {
            Phasor line = model.line(point, runs.get(i));
            for (List<Phasor> source : weightErrors) {
                double part = aside(perGmm.times(source.get(i)), line);
                all[i] += part * part;
            }
        }
        return all;
    }

    private double[][] square() {
        return new double[model.parts * runs.size()][model.parts * runs.size()];
    }

    /** Puts the missing angle of V₀ in, without error, where there is no phase. */
    private double[][] widen(double[][] covariance) {
        if (model == LineModel.WITH_PHASE) {
            return covariance;
        }
        int[] place = {0, 2, 3};
        double[][] all = new double[4][4];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                all[place[i]][place[j]] = covariance[i][j];
            }
        }
        return all;
    }

    private static double[][] sum(double[][] a, double[][] b) {
        double[][] all = new double[a.length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a.length; j++) {
                all[i][j] = a[i][j] + b[i][j];
            }
        }
        return all;
    }
}
