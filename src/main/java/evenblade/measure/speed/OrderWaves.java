package evenblade.measure.speed;

import evenblade.input.recording.TimeBase;

/**
 * Cosine and sine of orders' angles, 2π·order·revolutions(t), at the samples of a recording.
 *
 * <p>Orders that are sums of others get their waves as products ({@link OrderFamily}). The others, at
 * stamps, take the angle from the track one by one; on an even clock from the track every few
 * hundredths of a second, carried on between by turning a vector with steadily changing steps, which
 * is exact while the speed changes evenly.
 */
public final class OrderWaves {
    private static final int MOST_SAMPLES = 64; // ours: bounds the rounding of repeated turning
    private static final double LONGEST_S = 0.04; // ours: the speed counts as steady within

    private final SpeedTrack track;
    private final TimeBase time;
    private final OrderFamily family;
    private final int[] turned;
    private final int stride;

    /** @param orders multiples of propeller speed, above 0 */
    public OrderWaves(SpeedTrack track, TimeBase time, double[] orders) {
        this.track = track;
        this.time = time;
        this.family = new OrderFamily(orders);
        this.turned = family.byThemselves();
        this.stride = time.even() ? Math.max(1, Math.min(MOST_SAMPLES, (int) (LONGEST_S * time.rateHz()))) : 1;
    }

    /**
     * Fills the start of {@code cos[k]} and {@code sin[k]} for the k-th order.
     *
     * @param first index of the first sample
     * @param count number of samples
     */
    public void fill(int first, int count, double[][] cos, double[][] sin) {
        if (stride == 1) {
            atStamps(first, count, cos, sin);
        } else {
            double step = 1 / time.rateHz();
            for (int from = 0; from < count; from += stride) {
                int to = Math.min(count, from + stride);
                double t0 = time.at(first + from);
                double length = Math.max(1, to - from - 1) * step;
                double hz0 = track.propellerHzAt(t0);
                double hz1 = track.propellerHzAt(t0 + length);
                double slope = (hz1 - hz0) / length;
                double revolutions = track.revolutionsAt(t0);
                for (int k : turned) {
                    turn(family.order(k), revolutions, hz0 + slope * step / 2, slope, cos[k], sin[k], from, to);
                }
            }
        }
        family.multiplyOut(cos, sin, count);
    }

    private void atStamps(int first, int count, double[][] cos, double[][] sin) {
        for (int i = 0; i < count; i++) {
            double revolutions = track.revolutionsAt(time.at(first + i));
            for (int k : turned) {
                double angle = 2 * Math.PI * fraction(family.order(k) * revolutions);
                cos[k][i] = Math.cos(angle);
                sin[k][i] = Math.sin(angle);
            }
        }
    }

    /**
     * One stretch of steadily changing speed.
     *
     * @param revolutions angle at its start
     * @param firstHz speed over the first step
     * @param slope change of speed, Hz/s
     */
    private void turn(
            double order,
            double revolutions,
            double firstHz,
            double slope,
            double[] cos,
            double[] sin,
            int from,
            int to) {
        double step = 1 / time.rateHz();
        double angle = 2 * Math.PI * fraction(order * revolutions);
        double advance = 2 * Math.PI * order * firstHz * step;
        double bend = 2 * Math.PI * order * slope * step * step;
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double stepC = Math.cos(advance);
        double stepS = Math.sin(advance);
        // The bend is far below a thousandth of a radian: its cosine and sine come from their series.
        double bendC = 1 - bend * bend / 2;
        double bendS = bend - bend * bend * bend / 6;
        for (int i = from; i < to; i++) {
            cos[i] = c;
            sin[i] = s;
            double t = c * stepC - s * stepS;
            s = c * stepS + s * stepC;
            c = t;
            t = stepC * bendC - stepS * bendS;
            stepS = stepC * bendS + stepS * bendC;
            stepC = t;
        }
    }

    private static double fraction(double turns) {
        return turns - Math.rint(turns);
    }
}
