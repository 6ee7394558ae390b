package evenblade.measure.speed;

import java.util.Arrays;
import java.util.List;

/** How far each tone's phase is believed: as its noise says, or less where it strays from the others. */
final class ToneTrust {
    /** Straying up to this many times what noise explains is let pass. */
    private static final double LET_PASS = 2;

    private static final double LEAST = 1e-3; // never quite without weight
    private static final int LEAST_BLOCKS = 5; // fewer don't show how a tone scatters

    private final DemodulatedOrders slices;
    private final double[] trust;

    ToneTrust(DemodulatedOrders slices) {
        this.slices = slices;
        this.trust = new double[slices.tones().size()];
        Arrays.fill(trust, 1);
    }

    /**
     * Variance of one component of a tone's amplitude in a block of so many slices: one-sided density S
     * gives a Hann-weighted amplitude over w seconds S·1.5/w.
     */
    double componentVariance(int tone, int width) {
        return slices.tones().get(tone).density() * 1.5 / (width * slices.sliceS()) / (trust[tone] * trust[tone]);
    }

    /**
     * Judges the tones against each other, for the next round.
     *
     * @param heard which tones took part
     * @param residual of those by block, revolutions
     * @param weight of each residual
     * @param above sum of weight × residual over the tones, by block
     * @param below sum of weights
     */
    void judge(List<Integer> heard, double[][] residual, double[][] weight, double[] above, double[] below) {
        for (int k = 0; k < residual.length; k++) {
            double sum = 0;
            int n = 0;
            for (int b = 0; b < above.length; b++) {
                double others = below[b] - weight[k][b];
                if (others > 0) {
                    double rest = (above[b] - weight[k][b] * residual[k][b]) / others;
                    double off = residual[k][b] - rest;
                    sum += off * off / (1 / weight[k][b] + 1 / others);
                    n++;
                }
            }
            if (n >= LEAST_BLOCKS && sum > LET_PASS * n) {
                int tone = heard.get(k);
                trust[tone] = Math.max(LEAST, trust[tone] * Math.sqrt(n / sum));
            }
        }
    }
}
