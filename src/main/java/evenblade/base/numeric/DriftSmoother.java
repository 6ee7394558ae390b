package evenblade.base.numeric;

/**
 * Smooths a quantity that moves at a nearly steady, slowly drifting rate, from readings of it with
 * known relative variances at uneven times.
 *
 * <p>The model is an integrated random walk: dx = v dt, dv = √q dW, reading y = x + e with var e =
 * s²·r. Its smoothed mean is a cubic smoothing spline; with q = 0 it is the weighted straight line.
 * The ratio q/s² is chosen by maximum likelihood, and a straight line is kept unless letting the rate
 * drift raises the log-likelihood by more than {@value #DRIFT_GAIN}. Kalman filter and
 * Rauch–Tung–Striebel smoother as in Durbin &amp; Koopman, Time Series Analysis by State Space
 * Methods, 2nd ed. 2012, chapters 4, 5 and 7, begun from the first two readings.
 */
public final class DriftSmoother {
    /** Gain in log-likelihood that a drifting rate has to bring. */
    private static final double DRIFT_GAIN = 2.0;

    /** Weight, in readings, of the stated variances when the scale s² is estimated. */
    private static final double PRIOR_READINGS = 6;

    /** Readings are taken for at most this much better or worse than the usual one, to keep the sums sound. */
    private static final double WORST = 1e4;

    private final double[] time;
    private final double[] reading;
    private final double[] variance;
    private final double usualVariance;
    private final double baseLevel;
    private final double baseRate;
    private final double start;

    private DriftSmoother(double[] time, double[] reading, double[] variance) {
        this.time = time;
        this.usualVariance = Selection.ofRank(variance.clone(), variance.length, variance.length / 2);
        this.variance = new double[variance.length];
        for (int i = 0; i < variance.length; i++) {
            this.variance[i] = Math.min(Math.max(variance[i], usualVariance / WORST), usualVariance * WORST);
        }
        this.start = time[0];
        double sw = 0;
        double st = 0;
        double sy = 0;
        for (int i = 0; i < time.length; i++) {
            double w = 1 / this.variance[i];
            sw += w;
            st += w * (time[i] - start);
            sy += w * reading[i];
        }
        double meanT = st / sw;
        double meanY = sy / sw;
        double stt = 0;
        double sty = 0;
        for (int i = 0; i < time.length; i++) {
            double w = 1 / this.variance[i];
            double dt = time[i] - start - meanT;
            stt += w * dt * dt;
            sty += w * dt * (reading[i] - meanY);
        }
        baseRate = sty / stt;
        baseLevel = meanY - baseRate * meanT;
        this.reading = new double[reading.length];
        for (int i = 0; i < reading.length; i++) {
            this.reading[i] = reading[i] - baseLevel - baseRate * (time[i] - start);
        }
    }

    /**
     * The smoothed quantity.
     *
     * @param level smoothed value at each reading
     * @param rate smoothed rate at each reading, per second
     * @param meanRate (x(to) − x(from)) / (to − from)
     * @param meanRateStandardError of that
     * @param drifts whether the rate was let drift
     */
    public record Smoothed(
            java.util.List<Double> level,
            java.util.List<Double> rate,
            double meanRate,
            double meanRateStandardError,
            boolean drifts) {}

    /**
     * Smooths readings and gives the mean rate over an interval.
     *
     * @param time seconds, rising, at least 3
     * @param reading one per time
     * @param variance of each reading, &gt; 0; taken as at most 10⁴ times larger or smaller than the usual one
     * @param from start of the interval for the mean rate, not after the first reading
     * @param to its end, not before the last reading
     */
    public static Smoothed smooth(double[] time, double[] reading, double[] variance, double from, double to) {
        if (time.length < 3) {
            throw new IllegalArgumentException("needs at least 3 readings, got " + time.length);
        }
        return new DriftSmoother(time, reading, variance).smoothed(from, to);
    }

    private Smoothed smoothed(double from, double to) {
        double meanStep = (time[time.length - 1] - time[0]) / (time.length - 1);
        double unit = usualVariance / (meanStep * meanStep * meanStep);
        double bestQ = 0;
        double straight = likelihood(0).logLikelihood;
        double best = straight;
        for (double exponent = -9; exponent <= 5; exponent += 0.5) {
            double q = unit * Math.pow(10, exponent);
            double value = likelihood(q).logLikelihood;
            if (value > best) {
                best = value;
                bestQ = q;
            }
        }
        if (best - straight < DRIFT_GAIN) {
            bestQ = 0;
        } else {
            bestQ = refine(bestQ);
        }
        double scale = likelihood(bestQ).scale;
        double[][] path = smoothPath(bestQ);
        double[] mean = meanRate(bestQ, from, to);
        java.util.List<Double> level = new java.util.ArrayList<>(time.length);
        java.util.List<Double> rate = new java.util.ArrayList<>(time.length);
        for (int i = 0; i < time.length; i++) {
            level.add(path[0][i] + baseLevel + baseRate * (time[i] - start));
            rate.add(path[1][i] + baseRate);
        }
        return new Smoothed(level, rate, mean[0] + baseRate, Math.sqrt(mean[1] * scale), bestQ > 0);
    }

    private double refine(double q) {
        double low = Math.log(q) - 1.2;
        double high = Math.log(q) + 1.2;
        double golden = (Math.sqrt(5) - 1) / 2;
        double a = high - golden * (high - low);
        double b = low + golden * (high - low);
        double fa = likelihood(Math.exp(a)).logLikelihood;
        double fb = likelihood(Math.exp(b)).logLikelihood;
        for (int i = 0; i < 12; i++) {
            if (fa > fb) {
                high = b;
                b = a;
                fb = fa;
                a = high - golden * (high - low);
                fa = likelihood(Math.exp(a)).logLikelihood;
            } else {
                low = a;
                a = b;
                fa = fb;
                b = low + golden * (high - low);
                fb = likelihood(Math.exp(b)).logLikelihood;
            }
        }
        return Math.exp(0.5 * (low + high));
    }

    private record Fit(double logLikelihood, double scale) {}

    /**
     * State and its covariance (in units of s²) once the first two readings are in and nothing else is
     * known: x = y₁, v = (y₁ − y₀)/dt, with what the rate may have drifted in between.
     */
    private double[] begun(double q) {
        double dt = time[1] - time[0];
        return new double[] {
            reading[1],
            (reading[1] - reading[0]) / dt,
            variance[1],
            variance[1] / dt,
            (variance[0] + variance[1]) / (dt * dt) + q * dt / 3
        };
    }

    /** Log-likelihood with the scale s² taken at its estimate. */
    private Fit likelihood(double q) {
        double[] begun = begun(q);
        double x = begun[0];
        double v = begun[1];
        double p00 = begun[2];
        double p01 = begun[3];
        double p11 = begun[4];
        double sumLog = 0;
        double sumSquares = 0;
        for (int i = 2; i < time.length; i++) {
            double dt = time[i] - time[i - 1];
            x += v * dt;
            p00 += dt * (2 * p01 + dt * p11) + q * dt * dt * dt / 3;
            p01 += dt * p11 + q * dt * dt / 2;
            p11 += q * dt;
            double s = p00 + variance[i];
            double innovation = reading[i] - x;
            sumLog += Math.log(s);
            sumSquares += innovation * innovation / s;
            double k0 = p00 / s;
            double k1 = p01 / s;
            x += k0 * innovation;
            v += k1 * innovation;
            p11 -= k1 * p01;
            p00 *= variance[i] / s;
            p01 *= variance[i] / s;
        }
        int counted = time.length - 2;
        double scale = (PRIOR_READINGS + sumSquares) / (PRIOR_READINGS + counted);
        double logLikelihood = -0.5 * (sumLog + (counted + PRIOR_READINGS) * Math.log(scale));
        return new Fit(logLikelihood, scale);
    }

    private double[][] smoothPath(double q) {
        int n = time.length;
        double[] xf = new double[n];
        double[] vf = new double[n];
        double[][] pf = new double[n][];
        double[] xp = new double[n];
        double[] vp = new double[n];
        double[][] pp = new double[n][];
        double[] begun = begun(q);
        double x = begun[0];
        double v = begun[1];
        double p00 = begun[2];
        double p01 = begun[3];
        double p11 = begun[4];
        xf[1] = x;
        vf[1] = v;
        pf[1] = new double[] {p00, p01, p11};
        for (int i = 2; i < n; i++) {
            double dt = time[i] - time[i - 1];
            x += v * dt;
            p00 += dt * (2 * p01 + dt * p11) + q * dt * dt * dt / 3;
            p01 += dt * p11 + q * dt * dt / 2;
            p11 += q * dt;
            xp[i] = x;
            vp[i] = v;
            pp[i] = new double[] {p00, p01, p11};
            double s = p00 + variance[i];
            double innovation = reading[i] - x;
            double k0 = p00 / s;
            double k1 = p01 / s;
            x += k0 * innovation;
            v += k1 * innovation;
            p11 -= k1 * p01;
            p00 *= variance[i] / s;
            p01 *= variance[i] / s;
            xf[i] = x;
            vf[i] = v;
            pf[i] = new double[] {p00, p01, p11};
        }
        double[] xs = xf.clone();
        double[] vs = vf.clone();
        for (int i = n - 2; i >= 1; i--) {
            double dt = time[i + 1] - time[i];
            double[] f = pf[i];
            double[] p = pp[i + 1];
            double determinant = p[0] * p[2] - p[1] * p[1];
            double dx = xs[i + 1] - xp[i + 1];
            double dv = vs[i + 1] - vp[i + 1];
            double a = (p[2] * dx - p[1] * dv) / determinant;
            double b = (p[0] * dv - p[1] * dx) / determinant;
            xs[i] = xf[i] + (f[0] + dt * f[1]) * a + f[1] * b;
            vs[i] = vf[i] + (f[1] + dt * f[2]) * a + f[2] * b;
        }
        double dt = time[1] - time[0];
        double drift = q * dt * dt * dt / 3;
        double back = xs[1] - vs[1] * dt;
        xs[0] = back + drift / (drift + variance[0]) * (reading[0] - back);
        vs[0] = vs[1];
        return new double[][] {xs, vs};
    }

    /**
     * Mean of the drifting part of the rate over the interval and its variance in units of s², by a
     * filter whose state carries the way gone since {@code from}, the rate and the value at {@code from}.
     */
    private double[] meanRate(double q, double from, double to) {
        double lead = time[0] - from;
        double dt = time[1] - time[0];
        double rate = (reading[1] - reading[0]) / dt;
        double[] state = {reading[1] - reading[0] + lead * rate, rate, reading[0] - lead * rate};
        // Errors of way gone, rate and starting value as combinations of the two readings' errors and of what the rate
        // drifted in between: its mean off the first rate, and off the second; each q·dt/3, together q·dt/6.
        double[] ofFirst = {-1 - lead / dt, -1 / dt, 1 + lead / dt};
        double[] ofSecond = {1 + lead / dt, 1 / dt, -lead / dt};
        double[] offFirst = {-lead, 0, lead};
        double[] offSecond = {0, 1, 0};
        double[][] p = new double[3][3];
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                p[r][c] = variance[0] * ofFirst[r] * ofFirst[c]
                        + variance[1] * ofSecond[r] * ofSecond[c]
                        + q * dt / 3 * (offFirst[r] * offFirst[c] + offSecond[r] * offSecond[c])
                        + q * dt / 6 * (offFirst[r] * offSecond[c] + offSecond[r] * offFirst[c]);
            }
        }
        double now = time[1];
        for (int i = 2; i <= time.length; i++) {
            double next = i < time.length ? time[i] : to;
            double step = next - now;
            now = next;
            state[0] += state[1] * step;
            double p00 = p[0][0] + step * (2 * p[0][1] + step * p[1][1]) + q * step * step * step / 3;
            double p01 = p[0][1] + step * p[1][1] + q * step * step / 2;
            double p02 = p[0][2] + step * p[1][2];
            double p11 = p[1][1] + q * step;
            set(p, p00, p01, p02, p11, p[1][2], p[2][2]);
            if (i == time.length) {
                break;
            }
            double h0 = p[0][0] + p[0][2];
            double h1 = p[0][1] + p[1][2];
            double h2 = p[0][2] + p[2][2];
            double s = h0 + h2 + variance[i];
            double innovation = reading[i] - state[0] - state[2];
            state[0] += h0 / s * innovation;
            state[1] += h1 / s * innovation;
            state[2] += h2 / s * innovation;
            set(
                    p,
                    p[0][0] - h0 * h0 / s,
                    p[0][1] - h0 * h1 / s,
                    p[0][2] - h0 * h2 / s,
                    p[1][1] - h1 * h1 / s,
                    p[1][2] - h1 * h2 / s,
                    p[2][2] - h2 * h2 / s);
        }
        double length = to - from;
        return new double[] {state[0] / length, Math.max(0, p[0][0]) / (length * length)};
    }

    private static void set(double[][] p, double p00, double p01, double p02, double p11, double p12, double p22) {
        p[0][0] = p00;
        p[0][1] = p01;
        p[1][0] = p01;
        p[0][2] = p02;
        p[2][0] = p02;
        p[1][1] = p11;
        p[1][2] = p12;
        p[2][1] = p12;
        p[2][2] = p22;
    }
}
