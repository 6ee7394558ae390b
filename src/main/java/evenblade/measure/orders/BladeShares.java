package evenblade.measure.orders;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/**
 * How each blade differs in one mean turn: T is the part of the turn that comes back with every blade (its mean over the
 * blades); the turn is fitted with
 *
 * <p>x(θ) = Σ_b (1 + σ_b)·T_b(θ) − λ_b·T′_b(θ) + a·cos θ + b·sin θ + c, T_b being T while blade b goes by and 0 otherwise;
 *
 * <p>the once-a-turn part is left to a and b, for a mass out of balance makes it too. The dwell is cut into
 * blocks of turns, each fitted by itself: the scatter between them gives the errors, whatever the noise
 * is like. Pushes so broad that T has no shape of its own give wide errors.
 *
 * @param shares one for each blade, in the order in which they go by after the mark
 * @param quantile of Student's t that a deviation must pass, for one false name in twenty over all blades
 * @param blocks how many the errors rest on
 */
public record BladeShares(List<Share> shares, double quantile, int blocks) {
    /** Blocks at most: with more, Student's t hardly gets smaller. */
    private static final int MOST_BLOCKS = 24;
    /** Fewer blocks give no idea of the scatter. */
    private static final int LEAST_BLOCKS = 8;
    /** Turns in a block at least: above what a mean turn needs. */
    private static final int TURNS = 8;
    /** Angles per blade: 2 to 3 degrees for usual blade counts, finer than the narrowest push. */
    private static final int POINTS = 60;
    /** One false name in so many turns of a propeller whose blades are alike. */
    private static final double FALSE = 0.05;
    /** So many errors the common part must be above zero for a shape to exist. */
    private static final double SHAPED = 3;
    /** The blade named must lead the next one by so many standard errors of their difference; ours, see the figures. */
    private static final double CLEAR = 1;

    public BladeShares {
        shares = List.copyOf(shares);
    }

    /**
     * One blade.
     *
     * @param atTurns where it goes by, turns after the mark, −½ to ½
     * @param strength share by which its push is stronger than the mean of all, with its standard error
     * @param late degrees of the shaft by which it comes later than its place, with its standard error
     */
    public record Share(double atTurns, Deviation strength, Deviation late) {}

    /** A deviation from the mean of all blades with its standard error; both in the same unit. */
    public record Deviation(double value, double standardError) {
        double inErrors() {
            return standardError > 0 ? Math.abs(value) / standardError : 0;
        }
    }

    /**
     * Of one channel in one dwell, angles counted from the mark.
     *
     * @return empty where the dwell has too few turns, or the blades have no common push
     */
    public static Optional<BladeShares> of(TimeBase time, Series values, SpeedTrack track, Dwell dwell, int blades) {
        int points = POINTS * blades;
        List<double[]> turns = new ArrayList<>();
        int blocks = (int) Math.min(MOST_BLOCKS, dwell.durationS() * dwell.propellerHz() / TURNS);
        for (int block = 0; block < blocks; block++) {
            double from = dwell.fromS() + block * dwell.durationS() / blocks;
            AngleAverage.of(time, values, track, from, from + dwell.durationS() / blocks, points)
                    .ifPresent(average -> turns.add(average.mean().toArray()));
        }
        return turns.size() < LEAST_BLOCKS ? Optional.empty() : of(turns, blades);
    }

    private static Optional<BladeShares> of(List<double[]> turns, int blades) {
        double[][] common = turns.stream().map(turn -> common(turn, blades)).toArray(double[][]::new);
        double[] shape = new double[POINTS];
        double squares = 0;
        double noise = 0;
        for (int i = 0; i < POINTS; i++) {
            int at = i;
            Spread each = Spread.of(turns.size(), g -> common[g][at]);
            shape[i] = each.mean;
            squares += each.mean * each.mean;
            noise += each.error * each.error;
        }
        if (squares < SHAPED * SHAPED * noise) {
            return Optional.empty();
        }
        int centre = centre(shape);
        LinearDesign design = LinearDesign.of(rows(shape, centre, blades));
        if (design.rank() < design.parameters()) {
            return Optional.empty();
        }
        List<LinearFit> fits = turns.stream().map(design::fit).toList();
        List<Share> shares = new ArrayList<>();
        for (int b = 0; b < blades; b++) {
            double turnsAfter = ((double) centre / POINTS + b) / blades;
            shares.add(new Share(
                    turnsAfter - Math.rint(turnsAfter),
                    deviation(fits, b, blades, 0, 1),
                    deviation(fits, b, blades, blades, -360)));
        }
        shares.sort(Comparator.comparingDouble(s -> s.atTurns < 0 ? s.atTurns + 1 : s.atTurns));
        double quantile = Distributions.studentQuantile(1 - FALSE / (4 * blades), turns.size() - 1);
        return Optional.of(new BladeShares(shares, quantile, turns.size()));
    }

    /** One blade's coefficient less the mean over the blades, times a factor. */
    private static Deviation deviation(List<LinearFit> fits, int blade, int blades, int first, double factor) {
        Spread each = Spread.of(fits.size(), g -> {
            double mean = 0;
            for (int b = 0; b < blades; b++) {
                mean += fits.get(g).parameter(first + b) / blades;
            }
            return factor * (fits.get(g).parameter(first + blade) - mean);
        });
        return new Deviation(each.mean, each.error);
    }

    private static double[] common(double[] turn, int blades) {
        double[] common = new double[POINTS];
        for (int k = 0; k < turn.length; k++) {
            common[k % POINTS] += turn[k] / blades;
        }
        return common;
    }

    /** Where in the span of a blade its push lies: the middle of its energy, taken round the circle. */
    private static int centre(double[] shape) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < POINTS; i++) {
            double angle = 2 * Math.PI * i / POINTS;
            re += shape[i] * shape[i] * Math.cos(angle);
            im += shape[i] * shape[i] * Math.sin(angle);
        }
        return (int) Math.round(Math.atan2(im, re) / (2 * Math.PI) * POINTS);
    }

    /** Columns: T of each blade, T′ of each blade per turn, cos θ, sin θ, 1. */
    private static double[][] rows(double[] shape, int centre, int blades) {
        int points = POINTS * blades;
        double[][] rows = new double[points][2 * blades + 3];
        for (int k = 0; k < points; k++) {
            int blade = Math.floorMod(Math.floorDiv(k - centre + POINTS / 2, POINTS), blades);
            rows[k][blade] = shape[k % POINTS];
            rows[k][blades + blade] = (shape[(k + 1) % POINTS] - shape[(k + POINTS - 1) % POINTS]) / 2 * points;
            double angle = 2 * Math.PI * k / points;
            rows[k][2 * blades] = Math.cos(angle);
            rows[k][2 * blades + 1] = Math.sin(angle);
            rows[k][2 * blades + 2] = 1;
        }
        return rows;
    }

    /** Standard errors to either end of a 95 % interval: Student's t over the blocks. */
    public double interval95() {
        return Distributions.reach95(blocks - 1);
    }

    /** Which blade stands out by strength, or by angle, from 0; empty where none does or two are as far off. */
    public Optional<Integer> standsOut(boolean byStrength) {
        List<Deviation> all =
                shares.stream().map(s -> byStrength ? s.strength() : s.late()).toList();
        int most = 0;
        for (int b = 1; b < all.size(); b++) {
            most = Math.abs(all.get(b).value()) > Math.abs(all.get(most).value()) ? b : most;
        }
        Deviation first = all.get(most);
        double next = 0;
        for (int b = 0; b < all.size(); b++) {
            next = b == most ? next : Math.max(next, Math.abs(all.get(b).value()));
        }
        boolean clear = Math.abs(first.value()) - next > CLEAR * Math.sqrt(2) * first.standardError();
        return first.inErrors() > quantile && clear ? Optional.of(most) : Optional.empty();
    }

    private record Spread(double mean, double error) {
        static Spread of(int count, IntToDoubleFunction values) {
            double mean = 0;
            for (int g = 0; g < count; g++) {
                mean += values.applyAsDouble(g) / count;
            }
            double squares = 0;
            for (int g = 0; g < count; g++) {
                squares += Math.pow(values.applyAsDouble(g) - mean, 2);
            }
            return new Spread(mean, Math.sqrt(squares / (count - 1) / count));
        }
    }
}
