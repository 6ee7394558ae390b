package evenblade.measure.speed;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/** Finds the stretches of steady speed in a track. */
final class DwellFinder {
    /** Shortest dwell, seconds; less only where the whole recording is hardly longer. */
    static final double SHORTEST_S = 5;

    private static final double SHARE_OF_SHORT_RECORDING = 0.75;
    /** Slowest to fastest within a dwell, as a share of the speed: ± 1 % and a little for noise. */
    private static final double WIDEST = 0.023;
    /**
     * How far the ends may lie from the median before they are taken for part of a ramp; at the ends of
     * the recording, where no ramp can be seen, only the loosest counts.
     */
    private static final double TIGHTEST_END = 0.0015;

    private static final double LOOSEST_END = 0.0105;
    private static final double SMOOTHING_S = 1.0;

    private DwellFinder() {}

    /** From and to, seconds. */
    record Stretch(double fromS, double toS) {
        double lengthS() {
            return toS - fromS;
        }
    }

    static double shortest(double durationS) {
        return Math.min(SHORTEST_S, SHARE_OF_SHORT_RECORDING * durationS);
    }

    static List<Stretch> find(SpeedTrack track) {
        double duration = track.toS() - track.fromS();
        int steps = (int) Math.max(8, Math.min(20_000, Math.round(duration / 0.1)));
        double step = duration / steps;
        double[] raw = new double[steps];
        for (int i = 0; i < steps; i++) {
            raw[i] = track.propellerHzAt(track.fromS() + (i + 0.5) * step);
        }
        double[] smooth = movingMean(raw, Math.max(1, (int) Math.round(SMOOTHING_S / step)) | 1);
        List<int[]> found = new ArrayList<>();
        int least = (int) Math.ceil(shortest(duration) / step - 1e-9);
        split(smooth, 0, steps, least, found);
        List<Stretch> stretches = new ArrayList<>();
        for (int[] range : found) {
            int[] trimmed = trim(smooth, range[0], range[1], least);
            if (trimmed[1] - trimmed[0] >= least) {
                stretches.add(new Stretch(track.fromS() + trimmed[0] * step, track.fromS() + trimmed[1] * step));
            }
        }
        stretches.sort(Comparator.comparingDouble(Stretch::fromS));
        return stretches;
    }

    /** Takes the longest steady run, then looks on either side of it. */
    private static void split(double[] speed, int from, int to, int least, List<int[]> found) {
        if (to - from < least) {
            return;
        }
        int[] longest = longest(speed, from, to);
        if (longest[1] - longest[0] < least) {
            return;
        }
        found.add(longest);
        split(speed, from, longest[0], least, found);
        split(speed, longest[1], to, least, found);
    }

    private static int[] longest(double[] speed, int from, int to) {
        Deque<Integer> high = new ArrayDeque<>();
        Deque<Integer> low = new ArrayDeque<>();
        int begin = from;
        int[] best = {from, from};
        for (int i = from; i < to; i++) {
            while (!high.isEmpty() && speed[high.peekLast()] <= speed[i]) {
                high.pollLast();
            }
            high.addLast(i);
            while (!low.isEmpty() && speed[low.peekLast()] >= speed[i]) {
                low.pollLast();
            }
            low.addLast(i);
            while (speed[high.peekFirst()] - speed[low.peekFirst()] > WIDEST * speed[low.peekFirst()]) {
                begin++;
                if (high.peekFirst() < begin) {
                    high.pollFirst();
                }
                if (low.peekFirst() < begin) {
                    low.pollFirst();
                }
            }
            if (i + 1 - begin > best[1] - best[0]) {
                best = new int[] {begin, i + 1};
            }
        }
        return best;
    }

    private static int[] trim(double[] speed, int from, int to, int least) {
        double[] sorted = Arrays.copyOfRange(speed, from, to);
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        double[] away = new double[sorted.length];
        for (int i = 0; i < away.length; i++) {
            away[i] = Math.abs(sorted[i] - median);
        }
        Arrays.sort(away);
        double usual = away[away.length / 2] / median;
        double reach = median * Math.max(TIGHTEST_END, Math.min(LOOSEST_END, 5 * usual));
        double loosest = LOOSEST_END * median;
        int[] trimmed = trimmed(speed, from, to, median, reach);
        // A stretch that is steady enough by itself isn't given up because most of it is steadier than its ends.
        while (trimmed[1] - trimmed[0] < least && reach < loosest) {
            reach = Math.min(loosest, 2 * reach);
            trimmed = trimmed(speed, from, to, median, reach);
        }
        return trimmed;
    }

    private static int[] trimmed(double[] speed, int from, int to, double median, double reach) {
        int first = from;
        int last = to;
        double atStart = from == 0 ? LOOSEST_END * median : reach;
        double atEnd = to == speed.length ? LOOSEST_END * median : reach;
        while (first < last && Math.abs(speed[first] - median) > atStart) {
            first++;
        }
        while (last > first && Math.abs(speed[last - 1] - median) > atEnd) {
            last--;
        }
        return new int[] {first, last};
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
