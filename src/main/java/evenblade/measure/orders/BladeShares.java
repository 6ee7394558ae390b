package evenblade.measure.orders;

import evenblade.base.numeric.Distributions;
import evenblade.base.numeric.LinearDesign;
import evenblade.base.numeric.LinearFit;
import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.machine.installation.OrderLine;
import evenblade.machine.installation.OrderTable;
import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Arrays;
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
 * <p>the once-a-turn part is left to a and b, for a mass out of balance makes it too; so is every whole propeller order on
 * which a crank's line lies (firing of a 5 to 2 gear lies on the fifth). The dwell is cut into
 * blocks of turns, each fitted by itself: the scatter between them gives the errors, whatever the noise
 * is like. It is taken together over the blades, which go by in the same noise. Pushes so broad that T has no shape of
 * its own give wide errors.
 *
 * @param shares one for each blade, in the order in which they go by after the mark
 * @param blocks how many the errors rest on
 */
public record BladeShares(List<Share> shares, int blocks) {
    /** Blocks at most: with more, Student's t hardly gets smaller. */
    private static final int MOST_BLOCKS = 24;
    /** Fewer blocks give no idea of the scatter. */
    private static final int LEAST_BLOCKS = 8;
    /** Turns in a block at least: above what a mean turn needs. */
    private static final int TURNS = 8;
    /** Angles per blade: 2 to 3 degrees for usual blade counts, finer than the narrowest push. */
    private static final int POINTS = 60;
    /**
     * False names of a propeller whose blades are alike, by strength and by angle: one in twenty together. Strength has the
     * larger part since what a blade does wrong changes its push; that it comes late beside that is rarer.
     */
    private static final double FALSE_BY_STRENGTH = 0.045;

    private static final double FALSE_BY_ANGLE = 0.005; // what strength leaves of one in twenty

    /**
     * The blades' deviations sum to nothing and the largest must lead, so each may have 1 + {@value}/B² of its B-th part of
     * the chance: read from a million draws for 3 to 8 blades and 8 or 24 blocks, a little below what they gave.
     */
    private static final double HANG_TOGETHER = 2.5;

    /** Lines further apart than this, times the turns of the dwell, average out: 1.5 periods of their beat, as elsewhere. */
    private static final double APART_TURNS = 1.5;

    /** A ratio entered with two decimals may be wrong by half of the last. */
    private static final double ROUNDED = 0.005;

    private static final double CHANCE = 0.05; // the usual 5 %
    /** So many errors the common part must be above zero for a shape to exist. */
    private static final double SHAPED = 3;
    /**
     * The blade named must lead the next one by so many standard errors of their difference: with it the wrong one of three
     * blades is named in 5 % at 3 standard errors, without in 7 %; ours, see the figures.
     */
    private static final double CLEAR = 0.2;

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
    public static Optional<BladeShares> of(
            TimeBase time, Series values, SpeedTrack track, Dwell dwell, OrderTable table) {
        int blades = table.blades();
        int points = POINTS * blades;
        List<double[]> turns = new ArrayList<>();
        int blocks = (int) Math.min(MOST_BLOCKS, dwell.durationS() * dwell.propellerHz() / TURNS);
        for (int block = 0; block < blocks; block++) {
            double from = dwell.fromS() + block * dwell.durationS() / blocks;
            AngleAverage.of(time, values, track, from, from + dwell.durationS() / blocks, points)
                    .ifPresent(average -> turns.add(average.mean().toArray()));
        }
        return turns.size() < LEAST_BLOCKS
                ? Optional.empty()
                : of(turns, blades, shared(table, dwell.durationS() * dwell.propellerHz()));
    }

    /** Whole propeller orders, no multiples of the blade count, that a line of the crank comes too near to for so many turns. */
    static List<Integer> shared(OrderTable table, double turns) {
        List<Integer> orders = new ArrayList<>(List.of(1));
        for (OrderLine line : table.lines()) {
            if (line.of() != Shaft.CRANK || line.role() == OrderLine.Role.MESH) {
                continue;
            }
            int whole = (int) Math.rint(line.propellerOrder());
            double unsure = table.exactness() == OrderTable.Exactness.EXACT ? 0 : ROUNDED * line.order();
            boolean near = Math.abs(line.propellerOrder() - whole) <= Math.max(APART_TURNS / turns, unsure);
            if (near && whole > 0 && whole % table.blades() != 0 && !orders.contains(whole)) {
                orders.add(whole);
            }
        }
        return orders;
    }

    private static Optional<BladeShares> of(List<double[]> turns, int blades, List<Integer> shared) {
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
        LinearDesign design = LinearDesign.of(rows(shape, centre, blades, shared));
        if (design.rank() < design.parameters()) {
            return Optional.empty();
        }
        List<LinearFit> fits = turns.stream().map(design::fit).toList();
        List<Deviation> strength = deviations(fits, blades, 0, 1);
        List<Deviation> late = deviations(fits, blades, blades, -360);
        List<Share> shares = new ArrayList<>();
        for (int b = 0; b < blades; b++) {
            double turnsAfter = ((double) centre / POINTS + b) / blades;
            shares.add(new Share(turnsAfter - Math.rint(turnsAfter), strength.get(b), late.get(b)));
        }
        shares.sort(Comparator.comparingDouble(s -> s.atTurns < 0 ? s.atTurns + 1 : s.atTurns));
        return Optional.of(new BladeShares(shares, turns.size()));
    }

    /** Each blade's coefficient less the mean over the blades, times a factor. */
    private static List<Deviation> deviations(List<LinearFit> fits, int blades, int first, double factor) {
        double[][] off = new double[blades][fits.size()];
        for (int g = 0; g < fits.size(); g++) {
            double mean = 0;
            for (int b = 0; b < blades; b++) {
                mean += fits.get(g).parameter(first + b) / blades;
            }
            for (int b = 0; b < blades; b++) {
                off[b][g] = factor * (fits.get(g).parameter(first + b) - mean);
            }
        }
        return deviations(off);
    }

    /**
     * Means over the blocks with the error of all blades together. Where one blade's blocks scatter more than chance lets
     * them (a bang while it went by), it keeps its own error; where neighbouring blocks hang together (a tone near a line
     * of the shaft), the scatter of triples of blocks counts for all.
     *
     * @param off deviations by blade and block
     */
    static List<Deviation> deviations(double[][] off) {
        int blades = off.length;
        int blocks = off[0].length;
        List<Spread> own = Arrays.stream(off).map(BladeShares::spread).toList();
        double all = own.stream().mapToDouble(s -> s.error * s.error).sum() / blades;
        double triples = Arrays.stream(off)
                        .map(BladeShares::inTriples)
                        .mapToDouble(values -> Math.pow(spread(values).error, 2))
                        .sum()
                / blades;
        double freedom = (blocks - 1.0) * (blades - 1);
        double coarse = (blocks / 3 - 1.0) * (blades - 1);
        double longer = coarse > 0 && Distributions.fTail(triples / all, coarse, freedom) < CHANCE ? triples / all : 1;
        return own.stream()
                .map(s -> {
                    boolean unlike = Distributions.fTail(s.error * s.error / all, blocks - 1, freedom) < CHANCE;
                    return new Deviation(s.mean, Math.sqrt(longer) * (unlike ? s.error : Math.sqrt(all)));
                })
                .toList();
    }

    private static Spread spread(double[] values) {
        return Spread.of(values.length, i -> values[i]);
    }

    /** Means of three blocks after one another. */
    private static double[] inTriples(double[] values) {
        double[] means = new double[values.length / 3];
        for (int i = 0; i < 3 * means.length; i++) {
            means[i / 3] += values[i] / 3;
        }
        return means;
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

    /** Columns: T of each blade, T′ of each blade per turn, 1, cos kθ and sin kθ of each order shared. */
    private static double[][] rows(double[] shape, int centre, int blades, List<Integer> shared) {
        int points = POINTS * blades;
        double[][] rows = new double[points][2 * blades + 1 + 2 * shared.size()];
        for (int k = 0; k < points; k++) {
            int blade = Math.floorMod(Math.floorDiv(k - centre + POINTS / 2, POINTS), blades);
            rows[k][blade] = shape[k % POINTS];
            rows[k][blades + blade] = (shape[(k + 1) % POINTS] - shape[(k + POINTS - 1) % POINTS]) / 2 * points;
            double angle = 2 * Math.PI * k / points;
            rows[k][2 * blades] = 1;
            for (int s = 0; s < shared.size(); s++) {
                rows[k][2 * blades + 1 + 2 * s] = Math.cos(shared.get(s) * angle);
                rows[k][2 * blades + 2 + 2 * s] = Math.sin(shared.get(s) * angle);
            }
        }
        return rows;
    }

    /** Standard errors to either end of a 95 % interval: Student's t over the blocks. */
    public double interval95() {
        return Distributions.reach95(freedom());
    }

    /** Of errors taken together over the blades, whose deviations sum to nothing. */
    private int freedom() {
        return (blocks - 1) * (shares.size() - 1);
    }

    /** Standard errors that a deviation must pass to be named. */
    public double quantile(boolean byStrength) {
        int blades = shares.size();
        double more = byStrength ? 1 + HANG_TOGETHER / (blades * blades) : 1;
        double chance = (byStrength ? FALSE_BY_STRENGTH : FALSE_BY_ANGLE) * more / blades;
        return Distributions.studentQuantile(1 - chance / 2, freedom());
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
        return first.inErrors() > quantile(byStrength) && clear ? Optional.of(most) : Optional.empty();
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
