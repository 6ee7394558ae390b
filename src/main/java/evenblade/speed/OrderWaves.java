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
            Turn turn = new Turn(revolutions, hz0 + slope * step / 2, slope, step);
            int k = 0;
            for (; k + 1 < orders.length; k += 2) {
                turn.two(orders[k], orders[k + 1], cos, sin, k, from, to);
            }
            if (k < orders.length) {
                turn.one(orders[k], cos[k], sin[k], from, to);
            }
        }
    }

    /** One stretch of steadily changing speed: angle at its start, speed over the first step, change of speed. */
    private record Turn(double revolutions, double firstHz, double slope, double step) {
        double angle(double order) {
            return 2 * Math.PI * fraction(order * revolutions);
        }

        double advance(double order) {
            return 2 * Math.PI * order * firstHz * step;
        }

        double bend(double order) {
            return 2 * Math.PI * order * slope * step * step;
        }

        void one(double order, double[] cos, double[] sin, int from, int to) {
            double c = Math.cos(angle(order));
            double s = Math.sin(angle(order));
            double rc = Math.cos(advance(order));
            double rs = Math.sin(advance(order));
            double bc = cosOfSmall(bend(order));
            double bs = sinOfSmall(bend(order));
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

        /** Two orders side by side: their chains of products don't wait for each other. */
        void two(double order, double other, double[][] cos, double[][] sin, int k, int from, int to) {
            double c = Math.cos(angle(order));
            double s = Math.sin(angle(order));
            double rc = Math.cos(advance(order));
            double rs = Math.sin(advance(order));
            double bc = cosOfSmall(bend(order));
            double bs = sinOfSmall(bend(order));
            double d = Math.cos(angle(other));
            double u = Math.sin(angle(other));
            double qc = Math.cos(advance(other));
            double qs = Math.sin(advance(other));
            double ec = cosOfSmall(bend(other));
            double es = sinOfSmall(bend(other));
            double[] cosOne = cos[k];
            double[] sinOne = sin[k];
            double[] cosOther = cos[k + 1];
            double[] sinOther = sin[k + 1];
            for (int i = from; i < to; i++) {
                cosOne[i] = c;
                sinOne[i] = s;
                cosOther[i] = d;
                sinOther[i] = u;
                double t = c * rc - s * rs;
                s = c * rs + s * rc;
                c = t;
                double v = d * qc - u * qs;
                u = d * qs + u * qc;
                d = v;
                t = rc * bc - rs * bs;
                rs = rc * bs + rs * bc;
                rc = t;
                v = qc * ec - qs * es;
                qs = qc * es + qs * ec;
                qc = v;
            }
        }

        /** The bend is far below a thousandth of a radian: its cosine and sine come from their series. */
        private static double cosOfSmall(double angle) {
            return 1 - angle * angle / 2;
        }

        private static double sinOfSmall(double angle) {
            return angle - angle * angle * angle / 6;
        }
    }

    private static double fraction(double turns) {
        return turns - Math.rint(turns);
    }
}
