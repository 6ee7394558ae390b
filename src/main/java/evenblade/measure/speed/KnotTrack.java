package evenblade.measure.speed;

import java.util.Arrays;

/** A track through knots of revolutions and speed, cubic in between and straight beyond. */
final class KnotTrack implements SpeedTrack {
    private final double[] time;
    private final double[] revolutions;
    private final double[] hz;
    private final double fromS;
    private final double toS;

    /**
     * @param time of the knots, rising, at least 2
     * @param revolutions turned at each knot
     * @param hz speed at each knot
     */
    KnotTrack(double[] time, double[] revolutions, double[] hz, double fromS, double toS) {
        this.time = time.clone();
        this.revolutions = revolutions.clone();
        this.hz = hz.clone();
        this.fromS = fromS;
        this.toS = toS;
    }

    /** A track at one speed. */
    static KnotTrack constant(double hz, double fromS, double toS) {
        return new KnotTrack(
                new double[] {fromS, toS}, new double[] {0, hz * (toS - fromS)}, new double[] {hz, hz}, fromS, toS);
    }

    /** A track whose speed runs straight between the knots. */
    static KnotTrack ofSpeeds(double[] time, double[] hz, double fromS, double toS) {
        double[] revolutions = new double[time.length];
        revolutions[0] = hz[0] * (time[0] - fromS);
        for (int i = 1; i < time.length; i++) {
            revolutions[i] = revolutions[i - 1] + 0.5 * (hz[i] + hz[i - 1]) * (time[i] - time[i - 1]);
        }
        return new KnotTrack(time, revolutions, hz, fromS, toS);
    }

    @Override
    public double fromS() {
        return fromS;
    }

    @Override
    public double toS() {
        return toS;
    }

    @Override
    public double revolutionsAt(double timeS) {
        int i = segment(timeS);
        if (i < 0) {
            return revolutions[0] + hz[0] * (timeS - time[0]);
        }
        if (i >= time.length - 1) {
            int last = time.length - 1;
            return revolutions[last] + hz[last] * (timeS - time[last]);
        }
        double h = time[i + 1] - time[i];
        double u = (timeS - time[i]) / h;
        double d = revolutions[i + 1] - revolutions[i];
        double a = h * hz[i] - d;
        double b = d - h * hz[i + 1];
        return revolutions[i] + u * d + u * (1 - u) * (a * (1 - u) + b * u);
    }

    @Override
    public double propellerHzAt(double timeS) {
        int i = segment(timeS);
        if (i < 0) {
            return hz[0];
        }
        if (i >= time.length - 1) {
            return hz[time.length - 1];
        }
        double h = time[i + 1] - time[i];
        double u = (timeS - time[i]) / h;
        double d = revolutions[i + 1] - revolutions[i];
        double a = h * hz[i] - d;
        double b = d - h * hz[i + 1];
        double slope = d + (1 - 2 * u) * (a * (1 - u) + b * u) + u * (1 - u) * (b - a);
        return slope / h;
    }

    private int segment(double timeS) {
        if (timeS < time[0]) {
            return -1;
        }
        int found = Arrays.binarySearch(time, timeS);
        return found >= 0 ? found : -found - 2;
    }
}
