package evenblade.measure.speed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds the stretches of a track in which nobody moved the throttle. What a warm engine, gusts or an uneven idle do to
 * the speed doesn't end one; a move of the lever does: the speed changes by {@value #MOVED} within {@value #WITHIN_S} s
 * and stays changed by as much, well beyond its usual scatter there.
 */
final class DwellFinder {
    /** Shortest dwell, seconds; less only where the whole recording is hardly longer. */
    static final double SHORTEST_S = 5;

    private static final double SHARE_OF_SHORT_RECORDING = 0.75; // a short recording is one dwell, less its ends; ours
    /** Share of the speed: a throttle step of 3 % less what smoothing takes of it. */
    private static final double MOVED = 0.024;

    private static final double WITHIN_S = 3; // ours: as fast as a lever is moved
    /** Seconds on either side over which the speed has to stay changed. */
    private static final double STAYED_S = 3;
    /** A move is this many times the scatter of the speed beside it: wander comes back. */
    private static final double OVER_SCATTER = 2.5;
    /** A change so large is a move whatever the scatter. */
    private static final double CERTAINLY_MOVED = 0.06;
    /** Slowest to fastest in a dwell, as a share of the speed: a drift of 5 % and some wander (common practice). */
    private static final double WIDEST = 0.09;
    /** A stretch that drifts further is a slow ramp; steady parts of it are this narrow: ± 1 % and a little for noise. */
    private static final double NARROW = 0.023;

    /** The least of a hold that isn't about a move, seconds; outwards from it the hold goes on as far as the speed does. */
    private static final double CORE_S = 1.0;
    /** Share of the speed at a hold's end by which it may be off and still be that speed. */
    private static final double STILL = 0.008;

    private static final double SMOOTHING_S = 1.0; // ours: gusts go, a lever's move stays
    private static final double STEP_S = 0.1; // finer than anybody moves a lever
    private static final int LEAST_STEPS = 8; // enough for the mean over a second
    private static final int MOST_STEPS = 20_000; // half an hour at the usual step

    private final double[] speed;
    private final double step;
    private final int least;

    private DwellFinder(double[] speed, double step, int least) {
        this.speed = speed;
        this.step = step;
        this.least = least;
    }

    /** From and to, seconds. */
    record Stretch(double fromS, double toS) {
        double lengthS() {
            return toS - fromS;
        }

        /** Whether it begins later than the track, as it does where the throttle was moved before. */
        boolean beginsAtAMove(SpeedTrack track) {
            return fromS - track.fromS() > STEP_S / 2;
        }

        /** Whether it ends before the track does. */
        boolean endsAtAMove(SpeedTrack track) {
            return track.toS() - toS > STEP_S / 2;
        }
    }

    static double shortest(double durationS) {
        return Math.min(SHORTEST_S, SHARE_OF_SHORT_RECORDING * durationS);
    }

    static List<Stretch> find(SpeedTrack track) {
        double duration = track.toS() - track.fromS();
        int steps = (int) Math.max(LEAST_STEPS, Math.min(MOST_STEPS, Math.round(duration / STEP_S)));
        double step = duration / steps;
        double[] raw = new double[steps];
        for (int i = 0; i < steps; i++) {
            raw[i] = track.propellerHzAt(track.fromS() + (i + 0.5) * step);
        }
        double[] smooth = movingMean(raw, Math.max(1, (int) Math.round(SMOOTHING_S / step)) | 1);
        int least = (int) Math.ceil(shortest(duration) / step - 1e-9);
        List<Stretch> stretches = new ArrayList<>();
        for (int[] hold : new DwellFinder(smooth, step, least).holds()) {
            stretches.add(new Stretch(track.fromS() + hold[0] * step, track.fromS() + hold[1] * step));
        }
        return stretches;
    }

    private List<int[]> holds() {
        List<int[]> still = new ArrayList<>();
        int begin = 0;
        for (int i = 0; i <= speed.length; i++) {
            if (i == speed.length || moved(i)) {
                if ((i - begin) * step >= CORE_S || i - begin >= least) {
                    still.add(new int[] {begin, i});
                }
                begin = i + 1;
            }
        }
        List<int[]> found = new ArrayList<>();
        for (int h = 0; h < still.size(); h++) {
            int from = h == 0 ? 0 : still.get(h - 1)[1];
            int to = h + 1 == still.size() ? speed.length : still.get(h + 1)[0];
            int[] hold = still.get(h);
            still.set(h, new int[] {reach(hold[0], from, -1), reach(hold[1] - 1, to, 1) + 1});
            add(found, still.get(h)[0], still.get(h)[1]);
        }
        return found;
    }

    /** The last place from an end of a hold outwards at which the speed is still that of the end. */
    private int reach(int end, int limit, int direction) {
        int core = (int) Math.round(CORE_S / step);
        int inner = Math.max(0, Math.min(speed.length - 1, end - direction * core));
        double own = mean(Math.min(end, inner), Math.max(end, inner) + 1);
        int at = end;
        while (at + direction >= 0
                && at + direction < speed.length
                && (limit - at - direction) * direction >= 0
                && Math.abs(speed[at + direction] / own - 1) < STILL) {
            at += direction;
        }
        return at;
    }

    private void add(List<int[]> found, int from, int to) {
        if (to - from < least) {
            return;
        }
        if (spread(from, to) <= WIDEST) {
            found.add(new int[] {from, to});
        } else {
            narrowParts(found, from, to);
        }
    }

    /** The longest narrow part, then what lies on either side of it. */
    private void narrowParts(List<int[]> found, int from, int to) {
        int[] best = {from, from};
        int begin = from;
        for (int i = from; i < to; i++) {
            while (spread(begin, i + 1) > NARROW) {
                begin++;
            }
            if (i + 1 - begin > best[1] - best[0]) {
                best = new int[] {begin, i + 1};
            }
        }
        if (best[1] - best[0] >= least) {
            narrowParts(found, from, best[0]);
            found.add(best);
            narrowParts(found, best[1], to);
        }
    }

    private double spread(int from, int to) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (int i = from; i < to; i++) {
            low = Math.min(low, speed[i]);
            high = Math.max(high, speed[i]);
        }
        return high / low - 1;
    }

    /** Whether the lever moves about a place. */
    private boolean moved(int at) {
        int half = (int) Math.round(WITHIN_S / 2 / step);
        int stay = (int) Math.round(STAYED_S / step);
        int before = Math.max(0, at - half);
        int after = Math.min(speed.length - 1, at + half);
        double change = Math.abs(speed[after] / speed[before] - 1);
        if (change < MOVED) {
            return false;
        }
        int first = Math.max(0, before - stay);
        int last = Math.min(speed.length, after + 1 + stay);
        double meanBefore = mean(first, before + 1);
        double meanAfter = mean(after, last);
        double stayed = Math.abs(meanAfter / meanBefore - 1);
        double scatter = Math.sqrt((square(first, before + 1, meanBefore) + square(after, last, meanAfter)) / 2);
        return change > CERTAINLY_MOVED || stayed > MOVED && stayed > OVER_SCATTER * scatter;
    }

    private double mean(int from, int to) {
        return Arrays.stream(speed, from, to).average().orElseThrow();
    }

    /** Mean square from a mean, as a share of it. */
    private double square(int from, int to, double mean) {
        return Arrays.stream(speed, from, to)
                .map(v -> (v / mean - 1) * (v / mean - 1))
                .average()
                .orElseThrow();
    }

    private static double[] movingMean(double[] values, int width) {
        double[] sum = new double[values.length + 1];
        for (int i = 0; i < values.length; i++) {
            sum[i + 1] = sum[i] + values[i];
        }
        double[] mean = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int half = Math.min(width / 2, Math.min(i, values.length - 1 - i));
            mean[i] = (sum[i + half + 1] - sum[i - half]) / (2 * half + 1);
        }
        return mean;
    }
}
