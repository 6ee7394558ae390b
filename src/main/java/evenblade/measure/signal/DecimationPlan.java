package evenblade.measure.signal;

import evenblade.input.recording.Recording;
import java.util.ArrayList;
import java.util.List;

/**
 * How a sample rate is brought down: the whole-number factors of the stages, first stage first.
 *
 * <p>Every stage keeps 0 to {@code keepUpToHz} within 0.005 dB and holds back by at least 80 dB
 * whatever its coarser sampling would fold into that band. Between {@code keepUpToHz} and half the
 * new rate the signal is neither kept true nor free of folding.
 *
 * @param fromHz rate before
 * @param keepUpToHz highest frequency to be kept true
 * @param factors one per stage, 2 or more each; empty where the rate is low enough already
 */
record DecimationPlan(double fromHz, double keepUpToHz, List<Integer> factors) {
    private static final int LARGEST_STAGE = 16; // ours: a larger stage needs a longer filter
    private static final int MOST_STAGES = 3; // ours
    /** A total factor down to this share of the largest allowed one is taken where it is cheaper. */
    private static final double LEAST_SHARE_OF_LARGEST = 0.8;
    /** What later work on one kept sample costs, in multiply-and-add steps of this stage. */
    private static final double COST_OF_A_KEPT_SAMPLE = 60;

    DecimationPlan {
        factors = List.copyOf(factors);
    }

    /**
     * The cheapest plan whose new rate is at least {@code keepUpToHz} / {@value
     * Recording#USABLE_SHARE_OF_RATE}.
     */
    static DecimationPlan cheapest(double fromHz, double keepUpToHz) {
        if (!(fromHz > 0) || !(keepUpToHz > 0) || Double.isInfinite(fromHz)) {
            throw new IllegalArgumentException("can't plan a decimation from " + fromHz + " Hz that keeps " + keepUpToHz
                    + " Hz: both must be above 0");
        }
        // A hair for the rounding of doubles.
        int largest = (int) (fromHz * Recording.USABLE_SHARE_OF_RATE / keepUpToHz * (1 + 1e-12));
        DecimationPlan best = new DecimationPlan(fromHz, keepUpToHz, halvings(largest));
        int least = Math.max(1, (int) Math.ceil(largest * LEAST_SHARE_OF_LARGEST));
        for (int total = least; total <= largest; total++) {
            List<List<Integer>> choices = new ArrayList<>();
            collect(total, MOST_STAGES, List.of(), choices);
            for (List<Integer> factors : choices) {
                DecimationPlan plan = new DecimationPlan(fromHz, keepUpToHz, factors);
                if (plan.costPerSecond() < best.costPerSecond()) {
                    best = plan;
                }
            }
        }
        return best;
    }

    private static void collect(int total, int stages, List<Integer> before, List<List<Integer>> choices) {
        if (total == 1) {
            choices.add(before);
        } else if (stages > 0) {
            for (int factor = 2; factor <= Math.min(total, LARGEST_STAGE); factor++) {
                if (total % factor == 0) {
                    List<Integer> with = new ArrayList<>(before);
                    with.add(factor);
                    collect(total / factor, stages - 1, with, choices);
                }
            }
        }
    }

    /** Stages of 2, always possible, also where no three stages make the factor. */
    private static List<Integer> halvings(int largest) {
        List<Integer> factors = new ArrayList<>();
        for (int left = largest; left >= 2; left /= 2) {
            factors.add(2);
        }
        return factors;
    }

    /** The product of the stages' factors. */
    int factor() {
        int product = 1;
        for (int factor : factors) {
            product = Math.multiplyExact(product, factor);
        }
        return product;
    }

    /** Rate after. */
    double toHz() {
        return fromHz / factor();
    }

    /** The taps of stage {@code index}. */
    double[] taps(int index) {
        return LowPass.taps(factors.get(index), half(index));
    }

    private int half(int index) {
        double inHz = rateInto(index);
        double outHz = inHz / factors.get(index);
        return LowPass.halfLength((outHz - 2 * keepUpToHz) / inHz);
    }

    private double rateInto(int index) {
        double rate = fromHz;
        for (int i = 0; i < index; i++) {
            rate /= factors.get(i);
        }
        return rate;
    }

    private double costPerSecond() {
        double cost = 0;
        for (int i = 0; i < factors.size(); i++) {
            int factor = factors.get(i);
            double taps = 2.0 * half(i) * (factor - 1) / factor + 1;
            cost += rateInto(i) / factor * taps + 2 * rateInto(i);
        }
        return cost + toHz() * COST_OF_A_KEPT_SAMPLE;
    }

    /** The filters one after the other, the last of which gives to {@code end}. */
    List<DecimationStage> stages(FloatSink end) {
        List<DecimationStage> chain = new ArrayList<>();
        FloatSink next = end;
        for (int i = factors.size() - 1; i >= 0; i--) {
            DecimationStage stage = new DecimationStage(factors.get(i), taps(i), next);
            chain.add(0, stage);
            next = stage;
        }
        return chain;
    }
}
