package evenblade.measure.speed;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

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
 * @param depth by how much the lines' power swells: median over the lines of its standard deviation, as a share
 */
record SecondEngine(double share, double depth) {
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
    /** ... and where they swell so much that something beats: in 24 dwells in loud rooms 1.3 at most. */
    private static final double BEATING_SIGMAS = 1.6;
    /** Fewer lines don't show that the rate goes with the order. */
    private static final int LEAST_LINES = 3;

    /** A second engine is looked for in so much of a stretch, seconds: enough beats to tell, and no more work. */
    private static final double LISTENED_S = 120;
    /** Share of the speed by which an engine that isn't told apart draws ours: 28 of 31 lay within twice this. */
    private static final double UNTOLD = 0.0013;

    private static final double SHARE_FROM = 0.0004; // ours: below it no line beats once in a part
    private static final double SHARE_STEP = 0.0002; // ours: at 300 Hz a third of what a part resolves
    private static final int SHARES = 149; // up to 3 %
    /** A share may wander so many steps from part to part. */
    private static final int WANDERS = 3;

    private static final double WANDER_COSTS = 1.0 / 8; // ours, a step squared; in logarithm of likelihood
    private static final double LEAST_TURNS = 1.2; // ours: in a part; less is a slope
    private static final int MOVED = 60; // sets of orders by chance: their mean and scatter are good to a tenth
    private static final double MOVED_BY = 0.5; // in logarithm: further than a line's beat is wide

    /** Whether the other is told apart, with its distance. */
    boolean apart() {
        return share > 0;
    }

    /**
     * Looks for one in a stretch, in its middle where it is long.
     *
     * @param channels those the tones point to
     * @param tones lines of the machine that stand out
     * @param locked the track that they keep step with
     * @param ratio crank turns for one of the propeller, as entered
     * @param humHz frequencies of mains hum
     */
    static Optional<SecondEngine> beside(
            Recording recording,
            List<Channel> channels,
            List<DemodulatedOrders.Tone> tones,
            PhaseLock.Locked locked,
            double ratio,
            double[] humHz) {
        if (!locked.sound()) {
            return Optional.empty();
        }
        DwellFinder.Stretch held = locked.held();
        double beyond = Math.max(0, held.lengthS() - LISTENED_S) / 2;
        DwellFinder.Stretch middle = new DwellFinder.Stretch(held.fromS() + beyond, held.toS() - beyond);
        DemodulatedOrders slices = DemodulatedOrders.of(recording, channels, tones, locked.track(), middle);
        double crank = ratio * (1 + locked.ratioCorrection());
        double[] orders =
                tones.stream().mapToDouble(DemodulatedOrders.Tone::order).toArray();
        double highest = Arrays.stream(orders).max().orElse(0);
        DoubleStream own = DoubleStream.concat(
                IntStream.rangeClosed(1, (int) highest + 1).asDoubleStream(),
                IntStream.rangeClosed(1, (int) (2 * highest / crank) + 1).mapToDouble(half -> crank * half / 2));
        double[] places = DoubleStream.concat(own.map(order -> order * slices.meanHz()), Arrays.stream(humHz))
                .toArray();
        LineEnvelopes envelopes = new LineEnvelopes(slices, places, locked.ratioCorrection());
        double depth = envelopes.depth();
        if (envelopes.strong().length < LEAST_LINES || depth < LEAST_DEPTH) {
            return Optional.empty();
        }
        Beats beats = new Beats(envelopes.explained(), slices.meanHz(), LEAST_TURNS / envelopes.partS());
        double least = depth < USUAL_DEPTH ? SURE_SIGMAS : depth < SURELY_BEATS ? LEAST_SIGMAS : BEATING_SIGMAS;
        boolean apart = beats.sigmas(orders) > least;
        if (!apart && depth < SURELY_BEATS) {
            return Optional.empty();
        }
        return Optional.of(new SecondEngine(apart ? beats.share(orders) : 0, depth));
    }

    /** What to say of it in a stretch. */
    Warning told(DwellFinder.Stretch stretch, double engineRpm) {
        Value from = Measure.TIME.of(stretch.fromS());
        Value to = Measure.TIME.of(stretch.toS());
        return apart()
                ? Warning.of(
                        WarningCode.SECOND_ENGINE,
                        Subject.Whole.RECORDING,
                        from,
                        to,
                        Measure.ENGINE_RPM.of(engineRpm * share))
                : Warning.of(WarningCode.LINES_BEAT, Subject.Whole.RECORDING, from, to, Measure.SHARE.of(depth));
    }

    /** A dwell whose speed may be drawn towards the other's. */
    Dwell unsure(Dwell dwell) {
        return dwell.withStandardErrorHz(Math.hypot(dwell.standardErrorHz(), UNTOLD * dwell.propellerHz()));
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
