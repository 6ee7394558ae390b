package evenblade.measure.speed;

import evenblade.base.numeric.DriftSmoother;
import java.util.Arrays;

/** Turns angle readings into the speeds of stretches, each smoothed by itself, and one track through all. */
final class DwellSpeeds {
    private final PhaseLock.Locked locked;
    private final double frameS;
    private final double[] time;
    private final double[] level;
    private final double[] rate;

    /**
     * @param locked angle readings, or a plain track where no line carried phase
     * @param frameS length of the short spectra that a plain track comes from
     */
    DwellSpeeds(PhaseLock.Locked locked, double frameS) {
        this.locked = locked;
        this.frameS = frameS;
        this.time = locked.time();
        this.level = new double[time.length];
        this.rate = new double[time.length];
        SpeedTrack whole = locked.track();
        for (int i = 0; i < time.length; i++) {
            level[i] = whole.revolutionsAt(time[i]);
            rate[i] = whole.propellerHzAt(time[i]);
        }
    }

    /** Mean speed of a stretch; the track follows its smoothed readings from then on. */
    Dwell of(DwellFinder.Stretch stretch) {
        return locked.sound() ? smoothed(stretch) : plain(stretch);
    }

    /** The track through all, with the stretches asked for smoothed each by itself. */
    SpeedTrack track() {
        SpeedTrack whole = locked.track();
        return locked.sound() ? new KnotTrack(time, level, rate, whole.fromS(), whole.toS()) : whole;
    }

    private Dwell smoothed(DwellFinder.Stretch stretch) {
        
        int first = 0;
        while (first < time.length && time[first] < stretch.fromS()) {
            first++;
        }
        int end = first;
        while (end < time.length && time[end] <= stretch.toS()) {
            end++;
        }
        if (end - first < 3) {
            return plain(stretch);
        }
        DriftSmoother.Smoothed smooth = DriftSmoother.smooth(
                Arrays.copyOfRange(time, first, end),
                Arrays.copyOfRange(locked.revolutions(), first, end),
                Arrays.copyOfRange(locked.variance(), first, end),
                stretch.fromS(),
                stretch.toS());
        double min = Double.POSITIVE_INFINITY;
        double max = 0;
        for (int i = first; i < end; i++) {
            level[i] = smooth.level().get(i - first);
            rate[i] = smooth.rate().get(i - first);
            min = Math.min(min, rate[i]);
            max = Math.max(max, rate[i]);
        }
        return new Dwell(
                stretch.fromS(), stretch.toS(), smooth.meanRate(), smooth.meanRateStandardError(), min, max);
    }

    private Dwell plain(DwellFinder.Stretch stretch) {
        SpeedTrack track = locked.track();
        double mean =
                (track.revolutionsAt(stretch.toS()) - track.revolutionsAt(stretch.fromS())) / stretch.lengthS();
        double min = Double.POSITIVE_INFINITY;
        double max = 0;
        int steps = 200;
        for (int i = 0; i <= steps; i++) {
            double hz = track.propellerHzAt(stretch.fromS() + i * stretch.lengthS() / steps);
            min = Math.min(min, hz);
            max = Math.max(max, hz);
        }
        // A line's place in a short spectrum is good to about a twentieth of the frame's resolution.
        double independent = Math.max(1, stretch.lengthS() / frameS);
        double error = 0.05 / frameS / Math.sqrt(independent);
        return new Dwell(stretch.fromS(), stretch.toS(), mean, error, min, max);
    }
}
