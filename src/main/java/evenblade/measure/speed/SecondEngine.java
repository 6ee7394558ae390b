package evenblade.measure.speed;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * Another engine of the same kind that runs beside this one at nearly the same speed. All its lines lie away from ours by
 * the same share of the speed, so all lines beat, each at a rate in proportion to its order.
 *
 * <p>The share at which most of the swelling of all lines is explained may wander a little from part to part, as both
 * speeds do. What it explains is held against the same with the orders moved each by itself, in the same recording: by
 * chance they hardly do as well. Where the beat is too slow, or wanders too much, to be told so, the lines swell and fade
 * all the same, by more than a machine's do by themselves.
 *
 * @param share of the speed by which the other runs faster or slower; 0 where it can't be told
 * @param direction whether it is faster or slower, where that can be told
 * @param depth by how much the lines' power swells: median over the lines of its standard deviation, as a share
 * @param followsOne whether the track keeps step with one engine's lines
 */
record SecondEngine(double share, SpeedFact direction, double depth, boolean followsOne) {
    /** Lines of runs of the rig swell by less in 9 of 10 dwells; beside another engine hardly any do. */
    private static final double LEAST_DEPTH = 0.1;
    /** Lines of runs of the rig swell by less in 97 of 100 dwells, beside another engine by more in as many. */
    private static final double USUAL_DEPTH = 0.15;
    /** Lines that swell by so much beat with something, whether it is told or not. */
    private static final double SURELY_BEATS = 0.27;
    /**
     * By how many standard deviations the orders as they are must do better than moved ones. Without another engine they did
     * in 2 of 500 dwells, in none whose lines swelled so.
     */
    private static final double LEAST_SIGMAS = 2.4;
    /** ... or, where lines swell less than {@link #USUAL_DEPTH}, in one whose lines swelled by 0.07. */
    private static final double SURE_SIGMAS = 4;
    /** Share of the lines' power that stands still under a track on one engine, another half as strong beside it. */
    private static final double STANDS_STILL = 0.8;
    /** Fewer lines don't show that the rate goes with the order. */
    private static final int LEAST_LINES = 3;

    private static final double SHARE_FROM = 0.0004; // ours: below it no line beats once in a part
    private static final double SHARE_STEP = 0.0002;
    private static final int SHARES = 149; // up to 3 %
    /** A share may wander so many steps from part to part. */
    private static final int WANDERS = 3;

    private static final double WANDER_COSTS = 1.0 / 8; // ours, a step squared; in logarithm of likelihood
    private static final double LEAST_TURNS = 1.2; // ours: in a part; less is a slope
    private static final int MOVED = 60; // sets of orders by chance: their mean and scatter are good to a tenth
    private static final double MOVED_BY = 0.5; // in logarithm: further than a line's beat is wide
    /** Where the lock or another line of the machine disturbs, up to half stands on the wrong side; else 0.8 and more on the right one. */
    private static final double CLEARLY = 0.7;

    /** A share of the speed within which an engine lies that isn't told apart: twice this; nearer ones are. */
    static final double UNTOLD = 0.0013;

    /** Whether the other is told apart, with its distance. */
    boolean apart() {
        return share > 0;
    }

    /** Whether nothing can be measured: both are heard, and the track follows neither. */
    boolean inTheWay() {
        return apart() && !followsOne;
    }

    /** The other's lines as a share of ours: power that swells by √2·b/(1 + b²) does so for lines of 1 and b. */
    double strength() {
        double most = Math.min(depth, Math.sqrt(0.5));
        return most == 0 ? 0 : (1 - Math.sqrt(Math.max(0, 1 - 2 * most * most))) / (Math.sqrt(2) * most);
    }

    /**
     * Looks for one.
     *
     * @param slices along the track locked on
     * @param places frequencies of all lines that may stand there, hertz
     * @param ratioError share by which the crank turns faster against the propeller than entered
     */
    static Optional<SecondEngine> beside(DemodulatedOrders slices, double[] places, double ratioError) {
        LineEnvelopes envelopes = new LineEnvelopes(slices, places, ratioError);
        double depth = envelopes.depth();
        if (envelopes.strong().length < LEAST_LINES || depth < LEAST_DEPTH) {
            return Optional.empty();
        }
        double[] orders = slices.tones().stream()
                .mapToDouble(DemodulatedOrders.Tone::order)
                .toArray();
        Beats beats = new Beats(envelopes.explained(), slices.meanHz(), LEAST_TURNS / envelopes.partS());
        boolean apart = beats.sigmas(orders) > (depth < USUAL_DEPTH ? SURE_SIGMAS : LEAST_SIGMAS);
        if (!apart && depth < SURELY_BEATS) {
            return Optional.empty();
        }
        double share = apart ? beats.share(orders) : 0;
        boolean followsOne = envelopes.coherence() > STANDS_STILL;
        double above = apart && followsOne ? envelopes.above(share) : 0;
        SpeedFact direction =
                above > CLEARLY ? SpeedFact.FASTER : above < -CLEARLY ? SpeedFact.SLOWER : SpeedFact.FASTER_OR_SLOWER;
        return Optional.of(new SecondEngine(share, direction, depth, followsOne));
    }

    /** What beats in proportion to the orders explain: by tone, part and rate. */
    private record Beats(double[][][] explained, double speedHz, double slowestHz) {
        /** How far the orders do better than moved ones, in standard deviations of those. */
        double sigmas(double[] orders) {
            Random random = new Random(MOVED);
            double sum = 0;
            double squares = 0;
            for (int m = 0; m < MOVED; m++) {
                Map<Double, Double> moved = new HashMap<>();
                double[] by = Arrays.stream(orders)
                        .map(order -> moved.computeIfAbsent(
                                order, o -> o * Math.exp(MOVED_BY * (2 * random.nextDouble() - 1))))
                        .toArray();
                double most = most(by);
                sum += most / MOVED;
                squares += most * most / MOVED;
            }
            double scatter = Math.sqrt(Math.max(0, squares - sum * sum));
            return scatter > 0 ? (most(orders) - sum) / scatter : 0;
        }

        /** By share and part, all tones together. */
        private double[][] byShare(double[] orders) {
            int parts = explained[0].length;
            double[][] sum = new double[SHARES][parts];
            for (int s = 0; s < SHARES; s++) {
                for (int k = 0; k < orders.length; k++) {
                    double hz = orders[k] * speedHz * (SHARE_FROM + s * SHARE_STEP);
                    if (hz > slowestHz && hz < LineEnvelopes.FASTEST_HZ) {
                        int rate = LineEnvelopes.index(hz);
                        for (int p = 0; p < parts; p++) {
                            sum[s][p] += explained[k][p][rate];
                        }
                    }
                }
            }
            return sum;
        }

        /** The most that a share explains which wanders little from part to part. */
        private double most(double[] orders) {
            double[][] here = byShare(orders);
            double[] best = new double[SHARES];
            for (int p = 0; p < here[0].length; p++) {
                double[] next = new double[SHARES];
                for (int s = 0; s < SHARES; s++) {
                    double from = p == 0 ? 0 : best[s];
                    for (int d = -WANDERS; p > 0 && d <= WANDERS; d++) {
                        if (s + d >= 0 && s + d < SHARES) {
                            from = Math.max(from, best[s + d] - WANDER_COSTS * d * d);
                        }
                    }
                    next[s] = from + here[s][p];
                }
                best = next;
            }
            return Arrays.stream(best).max().orElse(0);
        }

        /** The share that explains most over all parts. */
        double share(double[] orders) {
            double[][] here = byShare(orders);
            int at = 0;
            double most = 0;
            for (int s = 0; s < SHARES; s++) {
                double all = Arrays.stream(here[s]).sum();
                if (all > most) {
                    most = all;
                    at = s;
                }
            }
            return SHARE_FROM + at * SHARE_STEP;
        }
    }
}
