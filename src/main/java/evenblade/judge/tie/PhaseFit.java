package evenblade.judge.tie;

import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.base.numeric.Phasor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Complex least squares of V = c + k·T (+ q·P) where T is read with errors too.
 *
 * @param rest which c counts for each run
 * @param track as read, turned as the sensor sees it
 */
record PhaseFit(List<TieRun> runs, int rests, List<Integer> rest, List<Phasor> track, List<Optional<Phasor>> angles) {
    private static final int MOST_STEPS = 100; // ours: a bound; ten are usual
    private static final double SETTLED = 1e-9; // share of a step that no longer counts

    /**
     * @param fit of whitened rows
     * @param misfit between markings, in squares of the stated errors
     */
    record Fitted(LinearFit fit, double misfit, int markings, Phasor perMillimetre) {}

    /**
     * Both the shaking and the track are read with errors, so the track of each marking is estimated along with c and k
     * (York 1968, for a line; from memory): with the residual r = V − c − k·T of the runs of a marking, its track is
     * T + k̄·τ²·Σ(r/σ²)/(1 + a·s), τ the error of its parts; see {@link SharedPencil}. Taken as read, the track's errors
     * would make k too small.
     */
    Optional<Fitted> fitted() {
        Optional<Fitted> plain = fit(track, Phasor.ZERO);
        Optional<Fitted> now = plain;
        List<Phasor> at = track;
        for (int step = 0; step < MOST_STEPS && now.isPresent(); step++) {
            Phasor k = now.get().perMillimetre();
            at = adjusted(now.get());
            Optional<Fitted> next = fit(at, k);
            if (next.isEmpty()) {
                break;
            }
            now = next;
            if (next.get().perMillimetre().minus(k).magnitude()
                    <= SETTLED * next.get().perMillimetre().magnitude()) {
                return now;
            }
        }
        // Where the tracks are too unsure to be adjusted, they stand as they were read.
        return plain.flatMap(p -> fit(track, p.perMillimetre()));
    }

    /** The likely track of each run's marking. */
    private List<Phasor> adjusted(Fitted now) {
        Phasor k = now.perMillimetre();
        SharedPencil errors = new SharedPencil(runs, k.magnitude());
        List<Phasor> likely = new ArrayList<>(track);
        for (int[] marking : errors.markings()) {
            Phasor pull = Phasor.ZERO;
            for (int r : marking) {
                double[][] rows = rows(rests, rest.get(r), 1, track.get(r), angles.get(r));
                Phasor off = runs.get(r)
                        .vibration()
                        .minus(new Phasor(now.fit().estimate(rows[0]), now.fit().estimate(rows[1])));
                double error = runs.get(r).standardError();
                pull = pull.plus(off.times(1 / (error * error)));
            }
            double variance = Math.pow(runs.get(marking[0]).trackErrorMm(), 2);
            Phasor shift = new Phasor(k.re(), -k.im()).times(pull).times(variance / errors.widening(marking));
            for (int r : marking) {
                likely.set(r, track.get(r).plus(shift));
            }
        }
        return likely;
    }

    /** With tracks taken for true, and k as it was for what the pencil's errors do. */
    private Optional<Fitted> fit(List<Phasor> at, Phasor k) {
        int n = runs.size();
        SharedPencil errors = new SharedPencil(runs, k.magnitude());
        double[][] rows = new double[2 * n][];
        double[] observed = new double[2 * n];
        for (int r = 0; r < n; r++) {
            double[][] pair = rows(rests, rest.get(r), 1, at.get(r), angles.get(r));
            rows[r] = pair[0];
            rows[n + r] = pair[1];
            Phasor moved = runs.get(r).vibration().plus(k.times(at.get(r).minus(track.get(r))));
            observed[r] = moved.re();
            observed[n + r] = moved.im();
        }
        double[][] white = transposed(Arrays.stream(transposed(rows))
                .map(column -> whitened(errors, column))
                .toArray(double[][]::new));
        LinearDesign design = LinearDesign.of(white);
        if (design.rank() < design.parameters()) {
            return Optional.empty();
        }
        double[] seen = whitened(errors, observed);
        LinearFit fit = design.fit(seen);
        double[] off = new double[2 * n];
        for (int i = 0; i < off.length; i++) {
            off[i] = seen[i] - fit.estimate(white[i]);
        }
        double misfit = errors.between(Arrays.copyOf(off, n)) + errors.between(Arrays.copyOfRange(off, n, 2 * n));
        return Optional.of(new Fitted(
                fit,
                misfit,
                errors.markings().size(),
                new Phasor(fit.parameter(2 * rests), fit.parameter(2 * rests + 1))));
    }

    /** Both parts, each for itself: their errors are independent. */
    private static double[] whitened(SharedPencil errors, double[] parts) {
        int n = parts.length / 2;
        double[] all = Arrays.copyOf(errors.whitened(Arrays.copyOf(parts, n)), 2 * n);
        System.arraycopy(errors.whitened(Arrays.copyOfRange(parts, n, 2 * n)), 0, all, n, n);
        return all;
    }

    private static double[][] transposed(double[][] a) {
        double[][] all = new double[a[0].length][a.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < a[0].length; j++) {
                all[j][i] = a[i][j];
            }
        }
        return all;
    }

    /** Real and imaginary row of one·c + T·k (+ P·q); each seating of the blades may have its own c. */
    static double[][] rows(int rests, int rest, double one, Phasor track, Optional<Phasor> angles) {
        double[][] rows = new double[2][2 * rests + (angles.isPresent() ? 4 : 2)];
        rows[0][2 * rest] = one;
        rows[1][2 * rest + 1] = one;
        place(rows, 2 * rests, track);
        angles.ifPresent(p -> place(rows, 2 * rests + 2, p));
        return rows;
    }

    private static void place(double[][] rows, int column, Phasor factor) {
        rows[0][column] = factor.re();
        rows[0][column + 1] = -factor.im();
        rows[1][column] = factor.im();
        rows[1][column + 1] = factor.re();
    }
}
