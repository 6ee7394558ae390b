package evenblade.measure.speed;

import evenblade.machine.installation.Shaft;
import java.util.List;

/**
 * What a ratio that isn't known exactly adds to the error of the propeller's mean speed.
 *
 * <p>Where it is free, only the propeller's own lines tell that speed; where it is known, the crank's do too. With I and J what
 * the lines of either shaft tell of a slope of the angle (sums of weight × time²), the variances are 1/I and 1/(I + J), and the
 * error of a track on both grows by their difference, J/(I (I + J)). By as much as the propeller's lines still run away from
 * that track the speed may be off as well.
 */
final class RatioLeeway {
    private RatioLeeway() {}

    /**
     * @param correction of the track's angle, by slice
     * @param ratioError share by which the crank turns faster against the propeller than entered
     * @param tones those that the track was locked on
     */
    static double standardErrorHz(
            DemodulatedOrders slices, ToneTrust trust, double[] correction, double ratioError, List<Integer> tones) {
        int width = DemodulatedOrders.SLICES_PER_BLOCK;
        int hop = width / 2;
        DemodulatedOrders.Turned turned = slices.under(correction, ratioError);
        int count = slices.blocks(width, hop);
        double own = 0;
        double others = 0;
        double moment = 0;
        for (int k : tones) {
            DemodulatedOrders.Tone tone = slices.tones().get(k);
            double[] residual = new double[count];
            double[] weight = new double[count];
            PhaseLock.readPhases(
                    turned.blocks(k, width, hop),
                    trust.componentVariance(k, width),
                    2 * Math.PI * tone.order(),
                    residual,
                    weight);
            for (int b = 0; b < count; b++) {
                double t = (b - (count - 1) / 2.0) * hop * slices.sliceS();
                if (tone.shaft() == Shaft.PROPELLER) {
                    own += weight[b] * t * t;
                    moment += weight[b] * t * residual[b];
                } else {
                    others += weight[b] * t * t;
                }
            }
        }
        if (own == 0 || others == 0) {
            return 0;
        }
        return Math.hypot(Math.sqrt(PhaseLock.OVERLAPPED * others / own / (own + others)), moment / own);
    }
}
