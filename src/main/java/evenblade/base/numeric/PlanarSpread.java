package evenblade.base.numeric;

/**
 * A vector in the plane with normal errors: its middle and the covariance of its two parts.
 *
 * @param middle where it most likely is
 * @param xx variance of the part along 0°
 * @param xy covariance of the parts
 * @param yy variance of the part along 90°
 */
public record PlanarSpread(Phasor middle, double xx, double xy, double yy) {
    /** Steps of the integral: four or more to a standard deviation, where the midpoint rule is exact to many digits. */
    private static final int STEPS = 64;
    /** Standard deviations beyond which the normal density counts for nothing. */
    private static final double REACH = 8;

    private static final int HALVINGS = 30; // to 2⁻³⁰ of the bracket, far finer than any figure shown

    /** Adds errors that are alike in all directions. */
    public PlanarSpread plusVariance(double variance) {
        return new PlanarSpread(middle, xx + variance, xy, yy + variance);
    }

    /** Adds an error along one vector, as long as its standard deviation. */
    public PlanarSpread plusError(Phasor error) {
        return new PlanarSpread(
                middle, xx + error.re() * error.re(), xy + error.re() * error.im(), yy + error.im() * error.im());
    }

    /** Multiplies all standard deviations. */
    public PlanarSpread widened(double factor) {
        double squared = factor * factor;
        return new PlanarSpread(middle, xx * squared, xy * squared, yy * squared);
    }

    /** Sum of the variances of both parts. */
    public double variance() {
        return xx + yy;
    }

    /** Mean square of the vector's length. */
    public double meanSquare() {
        return middle.re() * middle.re() + middle.im() * middle.im() + xx + yy;
    }

    /** (p − middle)ᵀ·covariance⁻¹·(p − middle): on average 2 for vectors of this spread. */
    public double distanceSquared(Phasor p) {
        double x = p.re() - middle.re();
        double y = p.im() - middle.im();
        double determinant = xx * yy - xy * xy;
        if (!(determinant > 0)) {
            return x == 0 && y == 0 ? 0 : Double.MAX_VALUE;
        }
        return (yy * x * x - 2 * xy * x * y + xx * y * y) / determinant;
    }

    /** Standard deviation of the part along a direction. */
    public double sigmaAlong(Phasor direction) {
        double size = direction.magnitude();
        double c = size > 0 ? direction.re() / size : 1;
        double s = size > 0 ? direction.im() / size : 0;
        return Math.sqrt(Math.max(0, c * c * xx + 2 * c * s * xy + s * s * yy));
    }

    /** Length that the vector stays below with this probability (0 to 1, ends excluded). */
    public double lengthQuantile(double probability) {
        double spread = Math.sqrt(Math.max(0, xx + yy));
        // Narrower than a double resolves beside the vector.
        if (spread <= 1e-12 * middle.magnitude() || spread == 0) {
            return middle.magnitude();
        }
        double farthest = middle.magnitude() + REACH * spread;
        return Crossing.between(length -> lengthBelow(length) < probability, 0, farthest, HALVINGS);
    }

    /** Probability that the vector is no longer than a length; by integration along its longest axis. */
    public double lengthBelow(double length) {
        double half = 0.5 * (xx + yy);
        double root = Math.hypot(0.5 * (xx - yy), xy);
        double longSigma = Math.sqrt(half + root);
        // Never quite flat, so that the density across has a width.
        double shortSigma = Math.max(Math.sqrt(Math.max(0, half - root)), 1e-9 * longSigma);
        double turn = 0.5 * Math.atan2(2 * xy, xx - yy);
        double along = middle.re() * Math.cos(turn) + middle.im() * Math.sin(turn);
        double across = -middle.re() * Math.sin(turn) + middle.im() * Math.cos(turn);
        double from = Math.max(-length, along - REACH * longSigma);
        double to = Math.min(length, along + REACH * longSigma);
        if (to <= from) {
            return 0;
        }
        // x = middle + half width · sin t: the square root at the ends of the circle becomes smooth.
        double centre = 0.5 * (from + to);
        double width = 0.5 * (to - from);
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            double t = Math.PI * ((i + 0.5) / STEPS - 0.5);
            double x = centre + width * Math.sin(t);
            double z = (x - along) / longSigma;
            double y = Math.sqrt(Math.max(0, length * length - x * x));
            double inside = Distributions.normalBelow((y - across) / shortSigma)
                    - Distributions.normalBelow((-y - across) / shortSigma);
            sum += Math.exp(-0.5 * z * z) * inside * width * Math.cos(t);
        }
        return sum * Math.PI / STEPS / (longSigma * Math.sqrt(2 * Math.PI));
    }
}
