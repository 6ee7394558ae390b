package evenblade.measure.orders;

import evenblade.base.numeric.DriftSmoother;
import evenblade.measure.speed.SpeedTrack;
import java.util.Arrays;
import java.util.List;

/**
 * A track with a small, slowly changing correction of its angle.
 *
 * <p>The correction is what the residual of a fit asks for: with x̂ the fitted lines and J = ∂x̂/∂φ, a
 * slice of residual r wants the angle moved by Σ J·r / Σ J², known to a variance of σ² / Σ J² (one
 * step of Gauss and Newton towards the track of maximum likelihood). All lines speak together, each
 * with the weight that its order and its amplitude give it.
 */
final class SharpenedTrack implements SpeedTrack {
    private final SpeedTrack base;
    private final double[] time;
    private final double[] correction;
    private final double[] rate;

    private SharpenedTrack(SpeedTrack base, double[] time, double[] correction, double[] rate) {
        this.base = base;
        this.time = time;
        this.correction = correction;
        this.rate = rate;
    }

    /**
     * What one slice of a dwell asks for.
     *
     * @param timeS middle of the slice
     * @param revolutions correction of the propeller's angle
     * @param variance of it
     */
    record TrackCorrection(double timeS, double revolutions, double variance) {}

    /** The base track moved by a smooth curve through the wishes; the base itself where there are too few. */
    static SpeedTrack of(SpeedTrack base, List<TrackCorrection> wishes) {
        if (wishes.size() < 4) {
            return base;
        }
        double[] time = wishes.stream().mapToDouble(TrackCorrection::timeS).toArray();
        double[] reading =
                wishes.stream().mapToDouble(TrackCorrection::revolutions).toArray();
        double[] variance =
                wishes.stream().mapToDouble(TrackCorrection::variance).toArray();
        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(time, reading, variance, time[0], time[time.length - 1]);
        return new SharpenedTrack(
                base,
                time,
                smooth.level().stream().mapToDouble(x -> x).toArray(),
                smooth.rate().stream().mapToDouble(x -> x).toArray());
    }

    /** Root mean square of the correction, revolutions. */
    static double size(SpeedTrack track) {
        if (!(track instanceof SharpenedTrack sharpened)) {
            return 0;
        }
        return Math.sqrt(
                Arrays.stream(sharpened.correction).map(x -> x * x).average().orElse(0));
    }

    @Override
    public double fromS() {
        return base.fromS();
    }

    @Override
    public double toS() {
        return base.toS();
    }

    @Override
    public double revolutionsAt(double timeS) {
        int i = segment(timeS);
        double h = time[i + 1] - time[i];
        double u = Math.max(0, Math.min(1, (timeS - time[i]) / h));
        double d = correction[i + 1] - correction[i];
        double a = h * rate[i] - d;
        double b = d - h * rate[i + 1];
        double moved = correction[i] + u * d + u * (1 - u) * (a * (1 - u) + b * u);
        double beyond = timeS - Math.max(time[0], Math.min(time[time.length - 1], timeS));
        return base.revolutionsAt(timeS) + moved + beyond * (beyond < 0 ? rate[0] : rate[rate.length - 1]);
    }

    @Override
    public double propellerHzAt(double timeS) {
        int i = segment(timeS);
        double h = time[i + 1] - time[i];
        double u = Math.max(0, Math.min(1, (timeS - time[i]) / h));
        return base.propellerHzAt(timeS) + rate[i] + u * (rate[i + 1] - rate[i]);
    }

    /** Sharpened is the propeller's angle alone: where the crank has its own, what its lines ask for isn't heard. */
    @Override
    public SpeedTrack ofCrank() {
        return base.ofCrank() == base ? this : base.ofCrank();
    }

    private int segment(double timeS) {
        int found = Arrays.binarySearch(time, timeS);
        int at = found >= 0 ? found : -found - 2;
        return Math.max(0, Math.min(time.length - 2, at));
    }
}
