package evenblade.measure.speed;

import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Blocks;
import java.util.ArrayList;
import java.util.List;

/**
 * How much faster one shaft's lines run than the reduction ratio entered lets them expect from the other shaft, whose
 * track is known. All lines of the shaft are tried at one drift after the other: the right one brings each to a halt.
 *
 * @param share of the speed by which they run faster; 0 where it can't be told from none
 * @param coherence share of the lines' power that stands still then, by the weight that they have in a lock: near 1 for
 *     a ratio that stays, less where it wanders
 */
record RatioDrift(double share, double coherence) {
    /** Nothing to say. */
    static final RatioDrift NONE = new RatioDrift(0, 1);

    /** Share of the ratio by which it may be corrected. */
    private static final double MOST_RATIO_ERROR = 0.01;
    /**
     * Cycles that the highest line must have run away by: a mount near its resonance turns phases
     * by up to half a cycle as the speed wanders, a wrong ratio goes on for ever.
     */
    private static final double LEAST_DRIFT_CYCLES = 0.6;
    /** Gain of the logarithm of likelihood at four standard errors from none. */
    static final double LEAST_GAIN = 8;
    /** Slices in a block: so short that a line a hundredth off still stands in one. */
    private static final int WIDTH = 2;
    /** Steps to a cycle of the highest line over the whole stretch: the peak isn't missed. */
    private static final int STEPS_A_CYCLE = 6;

    private static final int REFINED = 40; // halvings of a step: to the last digit that matters

    /** One line of the other shaft: order, angle of the track and amplitude by block, mean power, and weight in a lock. */
    private record Line(double order, double[] turns, Blocks z, double power, double weight) {
        /** Share of its power that stands still at a drift. */
        double still(double drift) {
            double re = 0;
            double im = 0;
            for (int b = 0; b < z.size(); b++) {
                double phase = -2 * Math.PI * order * drift * turns[b];
                double c = Math.cos(phase);
                double d = Math.sin(phase);
                re += z.re(b) * c - z.im(b) * d;
                im += z.re(b) * d + z.im(b) * c;
            }
            return (re * re + im * im) / ((double) z.size() * z.size() * power);
        }
    }

    /**
     * Tries it.
     *
     * @param slices of all lines
     * @param trust in them
     * @param correction of the track's angle, by slice
     * @param tones of the shaft in question
     */
    static RatioDrift of(DemodulatedOrders slices, ToneTrust trust, double[] correction, List<Integer> tones) {
        DemodulatedOrders.Turned turned = slices.under(correction, 0);
        List<Line> lines = new ArrayList<>();
        double highest = 0;
        for (int k : tones) {
            Line line = line(slices, turned, correction, k, trust.componentVariance(k, WIDTH));
            if (line.weight() > 0) {
                lines.add(line);
                highest = Math.max(highest, line.order());
            }
        }
        int last = slices.slices() - 1;
        double turns = slices.revolutions(last) - slices.revolutions(0);
        if (lines.isEmpty() || turns <= 0) {
            return NONE;
        }
        double step = 1 / (STEPS_A_CYCLE * highest * turns);
        double best = 0;
        double most = likelihood(lines, 0);
        double none = most;
        for (double drift = -MOST_RATIO_ERROR; drift <= MOST_RATIO_ERROR; drift += step) {
            double here = likelihood(lines, drift);
            if (here > most) {
                most = here;
                best = drift;
            }
        }
        best = refined(lines, best, step);
        boolean certain =
                likelihood(lines, best) - none > LEAST_GAIN && Math.abs(best) * turns * highest > LEAST_DRIFT_CYCLES;
        return new RatioDrift(certain ? best : 0, coherence(lines, certain ? best : 0));
    }

    /**
     * How still lines stand under a track.
     *
     * @param likelihood logarithm of the track's
     * @param coherence share of their power that stands still, by the weight that they have in a lock
     */
    record Standing(double likelihood, double coherence) {}

    /**
     * Of the lines of some shafts that short spectra show clear of their neighbours.
     *
     * @param ratioError share by which the crank turns faster against the propeller than entered
     */
    static Standing standing(DemodulatedOrders slices, double[] correction, double ratioError, List<Shaft> shafts) {
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        List<Line> lines = new ArrayList<>();
        for (int k = 0; k < slices.tones().size(); k++) {
            DemodulatedOrders.Tone tone = slices.tones().get(k);
            if (tone.clear() && shafts.contains(tone.shaft())) {
                double variance = tone.density() * 1.5 / (WIDTH * slices.sliceS());
                lines.add(line(slices, turned, correction, k, variance));
            }
        }
        return new Standing(likelihood(lines, 0), lines.isEmpty() ? 0 : coherence(lines, 0));
    }

    private static Line line(
            DemodulatedOrders slices, DemodulatedOrders.Turned turned, double[] correction, int tone, double variance) {
        Blocks z = turned.blocks(tone, WIDTH, 1);
        double[] turns = new double[z.size()];
        double power = 0;
        for (int b = 0; b < turns.length; b++) {
            turns[b] = (slices.revolutions(b) + correction[b] + slices.revolutions(b + 1) + correction[b + 1]) / 2;
            power += z.power(b) / turns.length;
        }
        double order = slices.tones().get(tone).order();
        double signal = Math.max(0, power - 2 * variance);
        return new Line(order, turns, z, power, power > 0 ? order * order * signal / variance : 0);
    }

    /** Of a drift, the noise of each line being what doesn't stand still; halved, as neighbouring blocks share slices. */
    private static double likelihood(List<Line> lines, double drift) {
        double sum = 0;
        for (Line line : lines) {
            sum -= line.z().size() / 2.0 * Math.log1p(-Math.min(line.still(drift), 1 - 1e-9));
        }
        return sum;
    }

    private static double refined(List<Line> lines, double from, double step) {
        double at = from;
        double reach = step / 2;
        for (int i = 0; i < REFINED; i++) {
            double here = likelihood(lines, at);
            double less = likelihood(lines, at - reach);
            double more = likelihood(lines, at + reach);
            if (less > here && less >= more) {
                at -= reach;
            } else if (more > here) {
                at += reach;
            } else {
                reach /= 2;
            }
        }
        return at;
    }

    private static double coherence(List<Line> lines, double drift) {
        double still = 0;
        double all = 0;
        for (Line line : lines) {
            still += line.weight() * line.still(drift);
            all += line.weight();
        }
        return still / all;
    }
}
