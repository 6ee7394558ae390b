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
    /** Steps to a cycle of the highest line over a part, or over the whole: the peak isn't missed. */
    private static final int STEPS_A_CYCLE = 6;
    /**
     * The whole range is tried on parts of so many turns, each with a phase of its own, and only what lies about the best
     * on the whole: tried on the whole, ten minutes took longer than all the rest of their analysis.
     */
    private static final double PART_TURNS = 400;

    private static final double ALL_STILL = 1 - 1e-9; // the logarithm of nothing left has no end

    private static final int MOST_PARTS =
            8; // ours: they say nearly as much as all, of which only the finer step matters
    private static final int REFINED = 40; // steps and halvings of one: to the last digit that matters

    /** Blocks of all lines, from and to. */
    private record Part(int from, int to) {
        int size() {
            return to - from;
        }
    }

    /** One line: order, angle of the track and amplitude by block, mean power, that less noise, and weight in a lock. */
    private record Line(double order, double[] turns, Blocks z, double power, double signal, double weight) {
        /** Share of its power that stands still at a drift, in a part. */
        double still(double drift, Part part) {
            double re = 0;
            double im = 0;
            for (int b = part.from(); b < part.to(); b++) {
                double phase = -2 * Math.PI * order * drift * turns[b];
                double c = Math.cos(phase);
                double d = Math.sin(phase);
                re += z.re(b) * c - z.im(b) * d;
                im += z.re(b) * d + z.im(b) * c;
            }
            return (re * re + im * im) / ((double) part.size() * part.size() * power);
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
        List<Part> whole = whole(lines);
        List<Part> parts = parts(whole.get(0).size(), turns);
        double coarse = 1 / (STEPS_A_CYCLE * highest * Math.min(turns, PART_TURNS));
        double fine = 1 / (STEPS_A_CYCLE * highest * turns);
        double about = best(lines, parts, 0, -MOST_RATIO_ERROR, MOST_RATIO_ERROR, coarse);
        double best = best(lines, whole, about, about - coarse, about + coarse, fine);
        best = refined(lines, whole, best, fine);
        double gain = likelihood(lines, whole, best) - likelihood(lines, whole, 0);
        boolean certain = gain > LEAST_GAIN && Math.abs(best) * turns * highest > LEAST_DRIFT_CYCLES;
        double share = certain ? best : 0;
        return new RatioDrift(share, coherence(lines, whole.get(0), share));
    }

    private static List<Part> whole(List<Line> lines) {
        return List.of(new Part(0, lines.get(0).z().size()));
    }

    /** Some parts, spread evenly over all blocks. */
    private static List<Part> parts(int blocks, double turns) {
        int size = (int) Math.ceil(blocks * Math.min(1, PART_TURNS / turns));
        int count = Math.min(MOST_PARTS, Math.max(1, blocks / size));
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int from = count == 1 ? 0 : (int) ((long) i * (blocks - size) / (count - 1));
            parts.add(new Part(from, from + size));
        }
        return parts;
    }

    /** The most likely drift of a range, or the one to start from where none is more likely. */
    private static double best(List<Line> lines, List<Part> parts, double start, double from, double to, double step) {
        double best = start;
        double most = likelihood(lines, parts, start);
        for (double drift = from; drift <= to; drift += step) {
            double here = likelihood(lines, parts, drift);
            if (here > most) {
                most = here;
                best = drift;
            }
        }
        return best;
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
        ToneTrust noise = new ToneTrust(slices);
        List<Line> lines = new ArrayList<>();
        for (int k = 0; k < slices.tones().size(); k++) {
            DemodulatedOrders.Tone tone = slices.tones().get(k);
            if (tone.clear() && shafts.contains(tone.shaft())) {
                lines.add(line(slices, turned, correction, k, noise.componentVariance(k, WIDTH)));
            }
        }
        if (lines.isEmpty()) {
            return new Standing(0, 0);
        }
        List<Part> whole = whole(lines);
        return new Standing(likelihood(lines, whole, 0), coherence(lines, whole.get(0), 0));
    }

    /**
     * Share of the signal of some lines, their power less noise, that stands still under a track, by the weight that they have in a
     * lock: near 1 under one that keeps step, also where noise is as strong as they are.
     *
     * @param ratioError share by which the crank turns faster against the propeller than entered
     * @param tones by their place in the slices
     * @param fromSlice the first that counts
     * @param toSlice the one after the last
     */
    static double followed(
            DemodulatedOrders slices,
            double[] correction,
            double ratioError,
            List<Integer> tones,
            int fromSlice,
            int toSlice) {
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        ToneTrust noise = new ToneTrust(slices);
        Part part = new Part(fromSlice, Math.min(toSlice, slices.slices()) - WIDTH + 1);
        double still = 0;
        double all = 0;
        for (int k : tones) {
            Line line = line(slices, turned, correction, k, noise.componentVariance(k, WIDTH));
            if (line.signal() > 0) {
                still += line.weight() * Math.min(1, line.still(0, part) * line.power() / line.signal());
                all += line.weight();
            }
        }
        return all > 0 ? still / all : 0;
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
        return new Line(order, turns, z, power, signal, power > 0 ? order * order * signal / variance : 0);
    }

    /** Of a drift, the noise of each line being what doesn't stand still; halved, as neighbouring blocks share slices. */
    private static double likelihood(List<Line> lines, List<Part> parts, double drift) {
        double sum = 0;
        for (Part part : parts) {
            for (Line line : lines) {
                sum -= part.size() / 2.0 * Math.log1p(-Math.min(line.still(drift, part), ALL_STILL));
            }
        }
        return sum;
    }

    private static double refined(List<Line> lines, List<Part> whole, double from, double step) {
        double at = from;
        double reach = step / 2;
        for (int i = 0; i < REFINED; i++) {
            double here = likelihood(lines, whole, at);
            double less = likelihood(lines, whole, at - reach);
            double more = likelihood(lines, whole, at + reach);
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

    private static double coherence(List<Line> lines, Part whole, double drift) {
        double still = 0;
        double all = 0;
        for (Line line : lines) {
            still += line.weight() * line.still(drift, whole);
            all += line.weight();
        }
        return all > 0 ? still / all : 0;
    }
}
