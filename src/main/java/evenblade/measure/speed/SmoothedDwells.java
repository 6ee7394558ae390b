package evenblade.measure.speed;

import evenblade.base.numeric.DriftSmoother;
import java.util.ArrayList;
import java.util.List;

/**
 * Puts the angle readings of dwells into one track, each smoothed by itself: between dwells it follows the path through
 * the short spectra.
 */
final class SmoothedDwells {
    private static final int LEAST_READINGS = 3; // what a line with an error needs
    /** Step of the track between dwells, seconds: short against a move of the throttle. */
    private static final double BETWEEN_S = 0.25;
    /**
     * What is not known of the angle at an end of a dwell at which the throttle moves, over the speed: no reading is as short
     * as the lever's first stir. Ours, from a trial: two in three of 183 dwells of the test rig were off by less.
     */
    private static final double AT_A_MOVE_S = 4e-4;

    /**
     * Turns by which a track may have slipped, by the share of its lines that doesn't stand still under it: hardly any up to a
     * hundredth, then steeply to a tenth of a turn, then {@link #SLIPPED} for the whole. Ours: of 266 dwells of the test rig with
     * drift, gusts and uneven idle two in three were off by less in each part of this.
     */
    private static final double SLIPPED = 0.4;

    private static final double SLIPS_FROM = 0.01; // share that noise and wander take; ours, as above
    private static final double SLIPS_STEEPLY = 2.5; // turns for each share; ours, as above
    private static final double FIRST_SLIP = 0.1; // turns; ours, as above

    private final SpeedTrack start;
    private final double frameS;
    private final List<double[]> knots = new ArrayList<>();
    private double turnedBeyond;
    private double reachedS;

    /**
     * @param start the path through the short spectra
     * @param frameS length of those
     */
    SmoothedDwells(SpeedTrack start, double frameS) {
        this.start = start;
        this.frameS = frameS;
        this.reachedS = start.fromS();
    }

    /**
     * Mean speed of a stretch, which the track follows from now on. To be called in order of time.
     *
     * @param locked its angle readings, or none where no line carried phase
     */
    Dwell of(PhaseLock.Locked locked) {
        DwellFinder.Stretch stretch = locked.held();
        if (!locked.sound() || locked.time().length < LEAST_READINGS) {
            return plain(stretch);
        }
        double[] time = locked.time();
        DriftSmoother.Smoothed smooth =
                DriftSmoother.smooth(time, locked.revolutions(), locked.variance(), stretch.fromS(), stretch.toS());
        follow(stretch.fromS());
        double offset =
                turnedBeyond + start.revolutionsAt(time[0]) - smooth.level().get(0);
        double min = Double.POSITIVE_INFINITY;
        double max = 0;
        for (int i = 0; i < time.length; i++) {
            double rate = smooth.rate().get(i);
            knots.add(new double[] {time[i], smooth.level().get(i) + offset, rate});
            min = Math.min(min, rate);
            max = Math.max(max, rate);
        }
        int last = time.length - 1;
        turnedBeyond = smooth.level().get(last) + offset - start.revolutionsAt(time[last]);
        reachedS = stretch.toS();
        double turns = Math.hypot(smooth.meanRate() * endsS(stretch), slippedTurns(locked.followed()));
        double error = Math.hypot(smooth.meanRateStandardError(), turns / stretch.lengthS());
        return new Dwell(stretch.fromS(), stretch.toS(), smooth.meanRate(), error, min, max);
    }

    /**
     * Turns by which a track may have slipped, as a standard deviation.
     *
     * @param followed share of the signal of its lines that stands still under it
     */
    private static double slippedTurns(double followed) {
        double gone = 1 - followed;
        return Math.min(FIRST_SLIP, SLIPS_STEEPLY * Math.max(0, gone - SLIPS_FROM)) + SLIPPED * gone;
    }

    /** What isn't known of the angle at both ends, over the speed; where the recording itself ends nobody moved the throttle. */
    private double endsS(DwellFinder.Stretch stretch) {
        int moves = (stretch.beginsAtAMove(start) ? 1 : 0) + (stretch.endsAtAMove(start) ? 1 : 0);
        return Math.sqrt(moves) * AT_A_MOVE_S;
    }

    /** The track through all. */
    SpeedTrack track() {
        if (knots.isEmpty()) {
            return start;
        }
        follow(start.toS());
        double[] time = knots.stream().mapToDouble(k -> k[0]).toArray();
        double[] level = knots.stream().mapToDouble(k -> k[1]).toArray();
        double[] rate = knots.stream().mapToDouble(k -> k[2]).toArray();
        return new KnotTrack(time, level, rate, start.fromS(), start.toS());
    }

    /** Follows the path up to a time. */
    private void follow(double toS) {
        int steps = (int) Math.floor((toS - reachedS) / BETWEEN_S);
        for (int i = 0; i < steps; i++) {
            double t = reachedS + (i + 0.5) * BETWEEN_S;
            knots.add(new double[] {t, turnedBeyond + start.revolutionsAt(t), start.propellerHzAt(t)});
        }
    }

    private Dwell plain(DwellFinder.Stretch stretch) {
        SpeedTrack track = start;
        double mean = (track.revolutionsAt(stretch.toS()) - track.revolutionsAt(stretch.fromS())) / stretch.lengthS();
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
