package evenblade.tie;

import evenblade.numeric.CurveFit;
import evenblade.numeric.FTest;
import evenblade.numeric.Phasor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/**
 * Tie from runs of which only amplitudes are known: least squares of A = |c + k·T| over c (taken along 0°, its phase
 * can't be known) and k. Which sense the hub is counted in doesn't matter here.
 *
 * <p>Intervals by parametric bootstrap: the fitted amplitudes are read again {@value #DRAWS} times with invented errors
 * of the stated size (larger, where the runs scatter more than stated), each set is fitted, and the middle 95 % is the
 * interval. The draws are seeded, so the same runs give the same interval.
 */
public final class AmplitudeTie implements TrackTie {
    private static final int DRAWS = 400;
    private static final long SEED = 20_260_301L;
    private static final int START_ANGLES = 12;
    private static final int UNKNOWNS = 3;
    private static final double CHANCE = 0.05;

    /** Degrees of freedom of an error that counts as known. */
    private static final double MANY = 1e5;

    private final List<TieRun> runs;
    private final double[] best;
    private final List<double[]> drawn;
    private final boolean trackMatters;
    private final boolean somethingLeft;

    private AmplitudeTie(
            List<TieRun> runs, double[] best, List<double[]> drawn, boolean trackMatters, boolean somethingLeft) {
        this.runs = List.copyOf(runs);
        this.best = best;
        this.drawn = drawn;
        this.trackMatters = trackMatters;
        this.somethingLeft = somethingLeft;
    }

    /** Fits, or nothing where no fit settles. At least four runs; {@link VibrationAndTrack} judges whether they do. */
    static Optional<AmplitudeTie> of(List<TieRun> runs) {
        double[] amplitudes = runs.stream().mapToDouble(TieRun::amplitude).toArray();
        Optional<CurveFit> fitted = search(runs, amplitudes);
        if (fitted.isEmpty()) {
            return Optional.empty();
        }
        double[] best = fitted.get().parameters();
        double spare = Math.max(1, runs.size() - UNKNOWNS);
        double inflation = Math.max(1, Math.sqrt(fitted.get().sumOfSquares() / spare));
        Random random = new Random(SEED);
        List<double[]> drawn = new ArrayList<>();
        for (int d = 0; d < DRAWS; d++) {
            double[] again = new double[amplitudes.length];
            for (int r = 0; r < again.length; r++) {
                TieRun run = runs.get(r);
                again[r] = Math.max(
                        0, model(best, run.trackMm()) + inflation * run.standardError() * random.nextGaussian());
            }
            fit(runs, again, best).ifPresent(fit -> drawn.add(fit.parameters()));
        }
        double misfit = fitted.get().sumOfSquares();
        boolean matters = betterThan(run -> 1, runs, misfit, spare);
        boolean leaves = betterThan(run -> run.trackMm().magnitude(), runs, misfit, spare);
        return drawn.size() < DRAWS / 2
                ? Optional.empty()
                : Optional.of(new AmplitudeTie(runs, best, drawn, matters, leaves));
    }

    private static double model(double[] p, Phasor track) {
        return new Phasor(p[1], p[2]).times(track).plus(new Phasor(p[0], 0)).magnitude();
    }

    /** From many starts, since |·| has more than one valley. */
    private static Optional<CurveFit> search(List<TieRun> runs, double[] amplitudes) {
        double mean = Arrays.stream(amplitudes).average().orElseThrow();
        double track =
                runs.stream().mapToDouble(r -> r.trackMm().magnitude()).max().orElseThrow();
        List<CurveFit> fits = new ArrayList<>();
        for (double share : new double[] {0.2, 0.5, 0.9}) {
            for (int a = 0; a < START_ANGLES; a++) {
                Phasor k = Phasor.ofDegrees((1 - share + 0.1) * mean / track, 360.0 * a / START_ANGLES);
                fit(runs, amplitudes, new double[] {share * mean, k.re(), k.im()})
                        .ifPresent(fits::add);
            }
        }
        return fits.stream().min(Comparator.comparingDouble(CurveFit::sumOfSquares));
    }

    private static Optional<CurveFit> fit(List<TieRun> runs, double[] amplitudes, double[] start) {
        double[] scaled = new double[amplitudes.length];
        for (int r = 0; r < scaled.length; r++) {
            scaled[r] = amplitudes[r] / runs.get(r).standardError();
        }
        return CurveFit.from(
                p -> runs.stream()
                        .mapToDouble(run -> model(p, run.trackMm()) / run.standardError())
                        .toArray(),
                scaled,
                start);
    }

    @Override
    public Size left() {
        return open(size(p -> Math.abs(p[0])), somethingLeft);
    }

    @Override
    public Size perMillimetre() {
        return open(size(p -> Math.hypot(p[1], p[2])), trackMatters);
    }

    @Override
    public Optional<Size> perDegree() {
        return Optional.empty();
    }

    @Override
    public List<Share> shares() {
        return runs.stream()
                .map(run -> new Share(
                        run.label(),
                        run.amplitude(),
                        open(size(p -> Math.hypot(p[1], p[2]) * run.trackMm().magnitude()), trackMatters)))
                .toList();
    }

    @Override
    public double expected(Phasor trackMm) {
        return model(best, trackMm);
    }

    @Override
    public Size predicted(Phasor trackMm, double trackErrorMm) {
        Random random = new Random(SEED + 1);
        double[] answers = drawn.stream()
                .mapToDouble(p -> model(
                        p, trackMm.plus(new Phasor(random.nextGaussian(), random.nextGaussian()).times(trackErrorMm))))
                .toArray();
        return middle(expected(trackMm), answers);
    }

    @Override
    public boolean trackMatters() {
        return trackMatters;
    }

    /**
     * F-test against a simpler tie of one number, A = a·shape: 'all runs alike' or 'nothing left at perfect track'. Uses the
     * stated errors or, where it is larger, the scatter of the fit.
     */
    private static boolean betterThan(
            ToDoubleFunction<TieRun> shape, List<TieRun> runs, double sumOfSquares, double spare) {
        double top = 0;
        double bottom = 0;
        for (TieRun run : runs) {
            double weight = 1 / (run.standardError() * run.standardError());
            double s = shape.applyAsDouble(run);
            top += weight * s * run.amplitude();
            bottom += weight * s * s;
        }
        double simple = 0;
        for (TieRun run : runs) {
            double off = (run.amplitude() - top / bottom * shape.applyAsDouble(run)) / run.standardError();
            simple += off * off;
        }
        double variance = Math.max(1, sumOfSquares / spare);
        return FTest.of(simple - sumOfSquares, UNKNOWNS - 1, variance, variance > 1 ? spare : MANY)
                        .pValue()
                < CHANCE;
    }

    /** Draws are never exactly nothing: where the simpler tie will do, the interval is opened down to zero. */
    private static Size open(Size size, boolean clearOfZero) {
        return clearOfZero ? size : new Size(size.value(), 0, size.high());
    }

    private Size size(ToDoubleFunction<double[]> question) {
        return middle(
                question.applyAsDouble(best),
                drawn.stream().mapToDouble(question).toArray());
    }

    private static Size middle(double value, double[] answers) {
        Arrays.sort(answers);
        return new Size(
                value,
                answers[(int) (0.025 * (answers.length - 1))],
                answers[(int) Math.ceil(0.975 * (answers.length - 1))]);
    }
}
