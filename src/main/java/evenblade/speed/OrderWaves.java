package evenblade.speed;

import evenblade.recording.TimeBase;

/**
 * Cosine and sine of an order's angle, 2π·order·revolutions(t), at the samples of a recording.
 *
 * <p>At stamps the angle is taken from the track one by one. On an even clock it is taken from the
 * track every few hundredths of a second and carried on between by turning a vector with steadily
 * changing steps, which is exact while the speed changes evenly.
 */
public final class OrderWaves {
    private static final int MOST_SAMPLES = 64;
    private static final double LONGEST_S = 0.04;

    private final SpeedTrack track;
    private final TimeBase time;
    private final int stride;

    public OrderWaves(SpeedTrack track, TimeBase time) {
        this.track = track;
        this.time = time;
        this.stride = time.even() ? Math.max(1, Math.min(MOST_SAMPLES, (int) (LONGEST_S * time.rateHz()))) : 1;
    }

    /**
     * Fills the start of {@code cos[k]} and {@code sin[k]} for {@code orders[k]}.
     *
     * @param orders multiples of propeller speed
     * @param first index of the first sample
     * @param count number of samples
     */
    public void fill(double[] orders, int first, int count, double[][] cos, double[][] sin) {
        if (stride == 1) {
            for (int i = 0; i < count; i++) {
                double revolutions = track.revolutionsAt(time.at(first + i));
                for (int k = 0; k < orders.length; k++) {
                    double angle = 2 * Math.PI * fraction(orders[k] * revolutions);
                    cos[k][i] = Math.cos(angle);
                    sin[k][i] = Math.sin(angle);
                }
            }
            return;
        }
        double step = 1 / time.rateHz();
        for (int from = 0; from < count; from += stride) {
            int to = Math.min(count, from + stride);
            int n = to - from;
            double t0 = time.at(first + from);
            double length = Math.max(1, n - 1) * step;
            double hz0 = track.propellerHzAt(t0);
            double hz1 = track.propellerHzAt(t0 + length);
            double slope = (hz1 - hz0) / length;
            double revolutions = track.revolutionsAt(t0);
            for (int k = 0; k < orders.length; k++) {
                double angle = 2 * Math.PI * fraction(orders[k] * revolutions);
                double advance = 2 * Math.PI * orders[k] * (hz0 + slope * step / 2) * step;
                double bend = 2 * Math.PI * orders[k] * slope * step * step;
                turn(angle, advance, bend, cos[k], sin[k], from, to);
            }
        }
    }

    private static void turn(double angle, double advance, double bend, double[] cos, double[] sin, int from, int to) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double rc = Math.cos(advance);
        double rs = Math.sin(advance);
        // The bend is far below a thousandth of a radian: its cosine and sine from their series.
        double bc = 1 - bend * bend / 2;
        double bs = bend - bend * bend * bend / 6;
        for (int i = from; i < to; i++) {
            cos[i] = c;
            sin[i] = s;
            double t = c * rc - s * rs;
            s = c * rs + s * rc;
            c = t;
            t = rc * bc - rs * bs;
            rs = rc * bs + rs * bc;
            rc = t;
        }
    }

    private static double fraction(double turns) {
        return turns - Math.rint(turns);
    }
}
