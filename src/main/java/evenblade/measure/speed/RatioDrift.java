package evenblade.measure.speed;

import evenblade.machine.installation.Shaft;
import evenblade.measure.speed.DemodulatedOrders.Blocks;
import java.util.List;

/** How much faster the crank's lines run than the reduction ratio entered lets the propeller's expect. */
final class RatioDrift {
    /** Share of the ratio by which it may be corrected. */
    private static final double MOST_RATIO_ERROR = 0.01;
    /**
     * Cycles that the highest crank line must have run away by: a mount near its resonance turns phases
     * by up to half a cycle as the speed wanders, a wrong ratio goes on for ever.
     */
    private static final double LEAST_DRIFT_CYCLES = 0.6;

    private final DemodulatedOrders slices;
    private final ToneTrust trust;

    RatioDrift(DemodulatedOrders slices, ToneTrust trust) {
        this.slices = slices;
        this.trust = trust;
    }

    /**
     * Share by which the crank's lines run faster than entered against the propeller's, from the
     * slopes of their phases; 0 unless it is four standard errors from none and both shafts are heard.
     *
     * @param heard tones that take part
     */
    double share(double[] correction, List<Integer> heard) {
        int width = DemodulatedOrders.SLICES_PER_BLOCK;
        int hop = width / 2;
        double[] slope = new double[2];
        double[] information = new double[2];
        double highest = 0;
        DemodulatedOrders.Turned turned = slices.under(correction, 0);
        for (int k : heard) {
            DemodulatedOrders.Tone tone = slices.tones().get(k);
            Slope one = slope(tone.order(), trust.componentVariance(k, width), turned.blocks(k, width, hop), hop);
            boolean ofCrank = tone.shaft() == Shaft.CRANK;
            double weight = 1 / one.variance();
            slope[ofCrank ? 1 : 0] += weight * one.hz();
            information[ofCrank ? 1 : 0] += weight;
            highest = ofCrank ? Math.max(highest, tone.order()) : highest;
        }
        if (information[0] == 0 || information[1] == 0) {
            return 0;
        }
        double apart = slope[1] / information[1] - slope[0] / information[0];
        double error = Math.sqrt(1 / information[0] + 1 / information[1]);
        double share = apart / slices.meanHz();
        double seconds = slices.timeS(slices.slices() - 1) - slices.timeS(0);
        boolean certain = Math.abs(apart) > 4 * error && Math.abs(apart) * seconds * highest > LEAST_DRIFT_CYCLES;
        return certain && Math.abs(share) < MOST_RATIO_ERROR ? share : 0;
    }

    /** Mean error of speed that one tone sees, and the variance of it. */
    private record Slope(double hz, double variance) {}

    /** From products over a widening lag. */
    private Slope slope(double order, double noise, Blocks z, int hop) {
        int count = z.size();
        double rate = 0;
        double power = 0;
        for (int b = 0; b < count; b++) {
            power += z.power(b);
        }
        power = Math.max(power / count - 2 * noise, 0.1 * noise);
        double variance = Double.POSITIVE_INFINITY;
        for (int lag = 1; lag <= count / 2; lag *= 2) {
            double re = 0;
            double im = 0;
            double unturn = -2 * Math.PI * order * rate * lag * hop * slices.sliceS();
            double c = Math.cos(unturn);
            double d = Math.sin(unturn);
            for (int b = 0; b + lag < count; b++) {
                double pr = z.lagRe(b, lag);
                double pi = z.lagIm(b, lag);
                re += pr * c - pi * d;
                im += pr * d + pi * c;
            }
            double pairs = count - lag;
            double angle = Math.atan2(im, re);
            // The mean of lagged products telescopes: about lag independent phases at either end.
            double phaseVariance = 2 * noise / power * 2 * Math.min(lag, pairs) / (pairs * pairs);
            double coherence = Math.hypot(re, im) / (pairs * (power + 2 * noise / pairs));
            if (coherence < 0.5 && lag > 1) {
                break;
            }
            double scale = 2 * Math.PI * order * lag * hop * slices.sliceS();
            rate += angle / scale;
            variance = phaseVariance / (scale * scale);
            if (4 * Math.sqrt(variance) * 2 * scale > Math.PI) {
                break;
            }
        }
        return new Slope(rate, variance);
    }
}
