package evenblade.judge.tie;

import evenblade.base.numeric.CurveFit;
import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Tie from runs of which only amplitudes are known: least squares of A = |c + k·T (+ q·P)| over c (taken along 0°, its
 * phase can't be known), k and q. Which sense the hub is counted in doesn't matter here.
 *
 * <p>Intervals by parametric bootstrap: the fitted amplitudes are read again {@value #DRAWS} times with invented errors,
 * each set is fitted, and the middle 95 % is the interval. The errors are as large as stated, pooled with the scatter of the
 * markings about the fit. Runs after one marking share the pencil's error. The draws are seeded, so the same runs give the
 * same interval. How unsure the errors' size is isn't drawn: with it, the bent model's intervals reached too far (98 to 99 %).
 */
public final class AmplitudeTie implements TrackTie {
    private static final int DRAWS = 400; // ours: the ends of a 95 % interval within a few per cent of its width
    private static final long SEED = 20_260_301L; // any will do; the same data give the same interval
    /** Parts of the mean amplitude that c and the track may have, to start from. */
    private static final double[][] START_PARTS = {{0.2, 0.9}, {0.5, 0.6}, {0.9, 0.2}};
    /** Angles of k to start from: nearer to each other than the dips of the misfit lie; ours. */
    private static final double[] START_DEG = {0, 30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330};
    /** Angles of q to start from. */
    private static final double[] BETWEEN_DEG = {15, 45, 75, 105, 135, 165, 195, 225, 255, 285, 315, 345};

    private static final double CHANCE = 0.05; // the usual 5 %

    /** Places of the unknowns: c; k, two parts; q, two parts. */
    private static final int[] TRACK_ONLY = {0, 1, 2};

    private static final int[] WITH_PITCH = {0, 1, 2, 3, 4}; // places of the parameters fitted

    /** Readings that the stated errors are worth, as with phase; ours. */
    private static final double GUESSED = 5;

    /**
     * Draws take no account of how unsure the errors' size is and of tracks being read with errors: ours, so that the
     * intervals hold in 93 to 97 % (TieScatterTest: seeds 0 to 299 and 1000 to 1299 held 93 % per mm without it).
     */
    private static final double WIDER = 1.06;

    private final List<TieRun> runs;
    private final boolean pitch;
    private final double[] best;
    private final List<double[]> drawn;
    private final boolean trackMatters;
    private final boolean somethingLeft;

    private AmplitudeTie(
            List<TieRun> runs,
            boolean pitch,
            double[] best,
            List<double[]> drawn,
            boolean trackMatters,
            boolean somethingLeft) {
        this.runs = List.copyOf(runs);
        this.pitch = pitch;
        this.best = best;
        this.drawn = drawn;
        this.trackMatters = trackMatters;
        this.somethingLeft = somethingLeft;
    }

    /**
     * Fits, or nothing where no fit settles. {@link VibrationAndTrack} judges whether the runs suffice.
     *
     * @param pitch whether the blade angles, known in all runs, get a part of their own
     */
    static Optional<AmplitudeTie> of(List<TieRun> runs, boolean pitch) {
        int[] free = pitch ? WITH_PITCH : TRACK_ONLY;
        double[] amplitudes = runs.stream().mapToDouble(TieRun::amplitude).toArray();
        // Fitted twice: the first fit says how much vibration the pencil's error stands for.
        Optional<Fit> first = search(runs, amplitudes, free, new SharedPencil(runs, 0));
        SharedPencil errors = new SharedPencil(
                runs, first.map(fit -> perMillimetre(fit.parameters())).orElse(0.0));
        Optional<Fit> fitted = first.flatMap(fit -> search(runs, amplitudes, free, errors));
        if (fitted.isEmpty()) {
            return Optional.empty();
        }
        double[] best = fitted.get().parameters();
        double misfit = fitted.get().misfit();
        double freedom = GUESSED + Math.max(0, errors.markings().size() - free.length);
        double variance = (GUESSED + misfit) / freedom;
        double larger = WIDER * Math.sqrt(variance);
        Random random = new Random(SEED);
        List<double[]> drawn = new ArrayList<>();
        for (int d = 0; d < DRAWS; d++) {
            double[] again = new double[amplitudes.length];
            for (int[] marking : errors.markings()) {
                double pencil = errors.pencil(marking) * random.nextGaussian();
                for (int r : marking) {
                    TieRun run = runs.get(r);
                    double error = pencil + run.standardError() * random.nextGaussian();
                    again[r] = Math.max(0, model(best, run) + larger * error);
                }
            }
            fit(runs, again, free, best, errors).ifPresent(fit -> drawn.add(fit.parameters()));
        }
        if (drawn.size() < DRAWS / 2) {
            return Optional.empty();
        }
        // 'All runs alike' but for pitch, and 'nothing left at perfect track'; what remains has no phase to know.
        int[] withoutTrack = pitch ? new int[] {0, 3, 4} : new int[] {0};
        int[] nothingLeft = pitch ? new int[] {1, 3, 4} : new int[] {1};
        return Optional.of(new AmplitudeTie(
                runs,
                pitch,
                best,
                drawn,
                clearlyBetter(misfit, search(runs, amplitudes, withoutTrack, errors), free, variance, freedom),
                clearlyBetter(misfit, search(runs, amplitudes, nothingLeft, errors), free, variance, freedom)));
    }

    /**
     * @param misfit between markings, in squares of the errors
     */
    private record Fit(double[] parameters, double misfit, int unknowns) {}

    private static double perMillimetre(double[] p) {
        return Math.hypot(p[1], p[2]);
    }

    private static double model(double[] p, TieRun run) {
        return model(p, run.trackMm(), p[3] == 0 && p[4] == 0 ? Phasor.ZERO : angles(run));
    }

    private static double model(double[] p, Phasor track, Phasor angles) {
        return new Phasor(p[0], 0)
                .plus(new Phasor(p[1], p[2]).times(track))
                .plus(new Phasor(p[3], p[4]).times(angles))
                .magnitude();
    }

    private static Phasor angles(TieRun run) {
        return run.pitchDeg().orElse(Phasor.ZERO);
    }

    /** From many starts, since |·| has more than one valley. */
    private static Optional<Fit> search(List<TieRun> runs, double[] amplitudes, int[] free, SharedPencil errors) {
        double mean = Arrays.stream(amplitudes).average().orElseThrow();
        double track = largest(runs, TieRun::trackMm);
        double angles = largest(runs, AmplitudeTie::angles);
        List<Fit> fits = new ArrayList<>();
        boolean both = free.length > TRACK_ONLY.length;
        for (double[] part : START_PARTS) {
            for (double start : START_DEG) {
                for (double other : both ? BETWEEN_DEG : new double[] {start}) {
                    Phasor k = Phasor.ofDegrees(part[1] * mean / track, start);
                    Phasor q = angles == 0 ? Phasor.ZERO : Phasor.ofDegrees(part[1] * mean / angles, other);
                    fit(runs, amplitudes, free, new double[] {part[0] * mean, k.re(), k.im(), q.re(), q.im()}, errors)
                            .ifPresent(fits::add);
                }
            }
        }
        return fits.stream().min(Comparator.comparingDouble(Fit::misfit));
    }

    private static double largest(List<TieRun> runs, Function<TieRun, Phasor> part) {
        return runs.stream().mapToDouble(r -> part.apply(r).magnitude()).max().orElseThrow();
    }

    /** Fits the free unknowns; the others are nothing. */
    private static Optional<Fit> fit(
            List<TieRun> runs, double[] amplitudes, int[] free, double[] start, SharedPencil errors) {
        double[] seen = errors.whitened(amplitudes);
        return CurveFit.from(
                        p -> errors.whitened(models(spread(p, free), runs)),
                        seen,
                        IntStream.of(free).mapToDouble(i -> start[i]).toArray())
                .map(fit -> {
                    double[] off = errors.whitened(models(spread(fit.parameters(), free), runs));
                    for (int r = 0; r < off.length; r++) {
                        off[r] = seen[r] - off[r];
                    }
                    return new Fit(spread(fit.parameters(), free), errors.between(off), free.length);
                });
    }

    private static double[] models(double[] p, List<TieRun> runs) {
        return runs.stream().mapToDouble(run -> model(p, run)).toArray();
    }

    private static double[] spread(double[] values, int[] free) {
        double[] all = new double[WITH_PITCH.length];
        for (int i = 0; i < free.length; i++) {
            all[free[i]] = values[i];
        }
        return all;
    }

    /**
     * F-test against a simpler tie.
     *
     * @param simpler its fit; where none settles, the full tie counts as better
     */
    private static boolean clearlyBetter(
            double misfit, Optional<Fit> simpler, int[] free, double variance, double freedom) {
        return simpler.map(fit -> Distributions.fTest(
                                Math.max(0, fit.misfit() - misfit), free.length - fit.unknowns(), variance, freedom)
                        < CHANCE)
                .orElse(true);
    }

    @Override
    public Size left() {
        return open(size(p -> Math.abs(p[0])), somethingLeft);
    }

    @Override
    public Size perMillimetre() {
        return open(size(AmplitudeTie::perMillimetre), trackMatters);
    }

    @Override
    public Optional<Size> perDegree() {
        return pitch ? Optional.of(size(p -> Math.hypot(p[3], p[4]))) : Optional.empty();
    }

    @Override
    public List<Share> shares() {
        return runs.stream()
                .map(run -> new Share(
                        run.label(),
                        run.amplitude(),
                        open(size(p -> perMillimetre(p) * run.trackMm().magnitude()), trackMatters)))
                .toList();
    }

    @Override
    public double expected(Phasor trackMm) {
        return model(best, trackMm, latestAngles());
    }

    @Override
    public Size predicted(Phasor trackMm, double trackErrorMm) {
        Random random = new Random(SEED + 1);
        double[] answers = drawn.stream()
                .mapToDouble(p -> model(
                        p,
                        trackMm.plus(new Phasor(random.nextGaussian(), random.nextGaussian()).times(trackErrorMm)),
                        latestAngles()))
                .toArray();
        return middle(expected(trackMm), answers);
    }

    /** Blade angles of the last run; not looked at where they have no part. */
    private Phasor latestAngles() {
        return angles(runs.get(runs.size() - 1));
    }

    @Override
    public boolean trackMatters() {
        return trackMatters;
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
                answers[(int) (0.025 * (answers.length - 1))], // the middle 95 of 100 draws
                answers[(int) Math.ceil(0.975 * (answers.length - 1))]); // as above
    }
}
