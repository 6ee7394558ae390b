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

    /** The best ratio is sought anew so far to either side of the best of the half decades tried: just over one of them. */
    private static final double REFINED_LOG = 1.2;

    /** Nearer the ratio need not be: the log-likelihood is flat there. */
    private static final double ENOUGH_LOG = 0.01;

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
        // From a drift that no reading shows to one that hides all else, in steps of half a decade.
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
        double around = Math.log(q);
        return Math.exp(Minimum.between(
                        exponent -> -likelihood(Math.exp(exponent)).logLikelihood,
                        around - REFINED_LOG,
                        around + REFINED_LOG,
                        ENOUGH_LOG)
                .at());
    }

    private record Fit(double logLikelihood, double scale) {}

    /**
     * The Kalman filter: level and rate with their covariance in units of s². Begun once the first two readings are in
     * and nothing else is known: x = y₁, v = (y₁ − y₀)/dt, with what the rate may have drifted in between.
     */
    private final class Filter {
        private final double q;
        private double x;
        private double v;
        private double p00;
        private double p01;
        private double p11;
        private double innovation;
        private double innovationVariance;

        Filter(double q) {
            double dt = time[1] - time[0];
            this.q = q;
            x = reading[1];
            v = (reading[1] - reading[0]) / dt;
            p00 = variance[1];
            p01 = variance[1] / dt;
            p11 = (variance[0] + variance[1]) / (dt * dt) + q * dt / 3;
        }

        void predict(double dt) {
            x += v * dt;
            p00 += dt * (2 * p01 + dt * p11) + q * dt * dt * dt / 3;
            p01 += dt * p11 + q * dt * dt / 2;
            p11 += q * dt;
        }

        void update(int i) {
            innovationVariance = p00 + variance[i];
            innovation = reading[i] - x;
            double k0 = p00 / innovationVariance;
            double k1 = p01 / innovationVariance;
            x += k0 * innovation;
            v += k1 * innovation;
            p11 -= k1 * p01;
            p00 *= variance[i] / innovationVariance;
            p01 *= variance[i] / innovationVariance;
        }

        double[] covariance() {
            return new double[] {p00, p01, p11};
        }
    }

    /** Log-likelihood with the scale s² taken at its estimate. */
    private Fit likelihood(double q) {
        Filter filter = new Filter(q);
        double sumLog = 0;
        double sumSquares = 0;
        for (int i = 2; i < time.length; i++) {
            filter.predict(time[i] - time[i - 1]);
            filter.update(i);
            sumLog += Math.log(filter.innovationVariance);
            sumSquares += filter.innovation * filter.innovation / filter.innovationVariance;
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
        Filter filter = new Filter(q);
        for (int i = 1; i < n; i++) {
            if (i > 1) {
                filter.predict(time[i] - time[i - 1]);
                xp[i] = filter.x;
                vp[i] = filter.v;
                pp[i] = filter.covariance();
                filter.update(i);
            }
            xf[i] = filter.x;
            vf[i] = filter.v;
            pf[i] = filter.covariance();
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
     * Mean of the drifting part of the rate over the interval and its variance in units of s²: the filter's last level
     * less the value at {@code from}, which is remembered beside it with its covariances.
     */
    private double[] meanRate(double q, double from, double to) {
        double lead = time[0] - from;
        double dt = time[1] - time[0];
        Filter filter = new Filter(q);
        double begun = reading[0] - lead * filter.v;
        // The starting value's error as a combination of the two readings' errors and, over the lead, of how far their
        // mean
        // rate drifted off the first one: q·dt/3, and q·dt/6 together with how far it is off the second.
        double ofFirst = 1 + lead / dt;
        double ofSecond = -lead / dt;
        double withLevel = variance[1] * ofSecond;
        double withRate = (variance[1] * ofSecond - variance[0] * ofFirst) / dt + q * dt / 6 * lead;
        double own = variance[0] * ofFirst * ofFirst + variance[1] * ofSecond * ofSecond + q * dt / 3 * lead * lead;
        for (int i = 2; i < time.length; i++) {
            double step = time[i] - time[i - 1];
            filter.predict(step);
            withLevel += withRate * step;
            double rateGain = filter.p01;
            filter.update(i);
            begun += withLevel / filter.innovationVariance * filter.innovation;
            own -= withLevel * withLevel / filter.innovationVariance;
            withRate -= rateGain * withLevel / filter.innovationVariance;
            withLevel *= variance[i] / filter.innovationVariance;
        }
        double last = to - time[time.length - 1];
        filter.predict(last);
        withLevel += withRate * last;
        double length = to - from;
        return new double[] {
            (filter.x - begun) / length, Math.max(0, filter.p00 + own - 2 * withLevel) / (length * length)
        };
    }
}
