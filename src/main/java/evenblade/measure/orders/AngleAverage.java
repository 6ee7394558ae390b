package evenblade.measure.orders;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.speed.SpeedTrack;
import java.util.Optional;

/**
 * One mean turn of the propeller: the signal brought to even steps of angle, then averaged over turns.
 * What repeats every turn stays, the rest fades with the number of turns. McFadden 1987, "A revised model
 * for the extraction of periodic waveforms by time domain averaging", Mechanical Systems and Signal
 * Processing 1(1):83 (from memory).
 *
 * <p>Between samples the cubic through four neighbours at their true stamps is taken, which reads low
 * where a line has fewer than about eight samples per period: for looking, not for measuring. Lines that
 * belong to another shaft don't fade where they fall on whole propeller orders.
 *
 * @param mean about zero, at angles 0, 1/n, 2/n … of a turn after the track's whole revolutions
 * @param standardError of each mean, from the scatter between turns
 * @param turns how many were averaged, at least {@value #LEAST_TURNS}
 */
public record AngleAverage(Series mean, Series standardError, int turns) {
    /** Fewer turns give no idea of the scatter. */
    public static final int LEAST_TURNS = 5;

    /** From a point a step of angle earlier, where the speed hardly differs, two leave nothing to be seen. */
    private static final int STEPS_OF_NEWTON = 2;

    /**
     * Averages the whole turns between two times.
     *
     * @param time when each sample was taken
     * @param values one per stamp
     * @param track the propeller's angle over time
     * @param fromS start, seconds
     * @param toS end
     * @param points angles per turn, at least 2
     * @return empty where fewer than {@value #LEAST_TURNS} whole turns lie between them
     */
    public static Optional<AngleAverage> of(
            TimeBase time, Series values, SpeedTrack track, double fromS, double toS, int points) {
        if (points < 2 || values.size() != time.size()) {
            throw new IllegalArgumentException(
                    points + " angles per turn from " + values.size() + " values at " + time.size() + " stamps");
        }
        double start = Math.max(fromS, Math.max(track.fromS(), time.at(0)));
        double end = Math.min(toS, Math.min(track.toS(), time.at(time.size() - 1)));
        if (time.size() < 4 || !(end > start)) {
            return Optional.empty();
        }
        long first = (long) Math.ceil(track.revolutionsAt(start));
        long last = (long) Math.floor(track.revolutionsAt(end));
        int turns = (int) (last - first);
        if (turns < LEAST_TURNS) {
            return Optional.empty();
        }
        double[] sum = new double[points];
        double[] squares = new double[points];
        Cursor cursor = new Cursor(time, values);
        double t = start;
        for (int turn = 0; turn < turns; turn++) {
            for (int k = 0; k < points; k++) {
                t = timeAt(track, first + turn + (double) k / points, t);
                double value = cursor.at(t);
                sum[k] += value;
                squares[k] += value * value;
            }
        }
        return Optional.of(average(sum, squares, turns));
    }

    private static AngleAverage average(double[] sum, double[] squares, int turns) {
        double all = 0;
        for (double each : sum) {
            all += each / turns / sum.length;
        }
        double[] mean = new double[sum.length];
        double[] error = new double[sum.length];
        for (int k = 0; k < sum.length; k++) {
            double own = sum[k] / turns;
            mean[k] = own - all;
            double variance = Math.max(0, squares[k] - turns * own * own) / (turns - 1);
            error[k] = Math.sqrt(variance / turns);
        }
        return new AngleAverage(Series.of(mean), Series.of(error), turns);
    }

    /** When the propeller has turned so often, by Newton's method from a time a little earlier. */
    private static double timeAt(SpeedTrack track, double revolutions, double nearS) {
        double t = nearS;
        for (int i = 0; i < STEPS_OF_NEWTON; i++) {
            t += (revolutions - track.revolutionsAt(t)) / track.propellerHzAt(t);
            t = Math.max(track.fromS(), Math.min(track.toS(), t));
        }
        return t;
    }

    /** Reads a signal between its samples, forwards. */
    private static final class Cursor {
        private final TimeBase time;
        private final Series values;
        private int left;

        Cursor(TimeBase time, Series values) {
            this.time = time;
            this.values = values;
        }

        double at(double t) {
            while (left < time.size() - 2 && time.at(left + 1) <= t) {
                left++;
            }
            int first = Math.max(0, Math.min(time.size() - 4, left - 1));
            double value = 0;
            for (int i = first; i < first + 4; i++) {
                double weight = 1;
                for (int j = first; j < first + 4; j++) {
                    if (j != i) {
                        weight *= (t - time.at(j)) / (time.at(i) - time.at(j));
                    }
                }
                value += weight * values.at(i);
            }
            return value;
        }
    }
}
