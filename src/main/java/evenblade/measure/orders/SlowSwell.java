package evenblade.measure.orders;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import evenblade.measure.signal.RealFft;
import evenblade.measure.speed.Dwell;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How the whole signal swells and fades over a dwell: E² = twice its mean square over a Hann window of 80 ms, so that a
 * steady sine reads its peak. Two sines A and B swell E² by m = 2AB/(A² + B²) of its mean; so r = B/A is (1 − √(1 − m²))/m,
 * and E falls from A + B to A − B: by 2r/(1 + r) of its most.
 *
 * @param timeS of each level, in steps of {@value #STEP_S} s
 * @param level E, in the channel's unit
 * @param swell the one rate at which it swells, where one stands out
 */
public record SlowSwell(Series timeS, Series level, Optional<Swell> swell) {
    /** Fine enough that twice any propeller 1× doesn't fold down into the throbs (by reckoning: 195 Hz lands at 5 Hz). */
    private static final double STEP_S = 0.005;
    /** Half the window in steps: its first zero lies at 25 Hz, below twice any propeller 1×. */
    private static final int HALF = 8;

    /** Weights of the window (Hann), from one end to the other. */
    private static final double[] HANN = IntStream.rangeClosed(-HALF, HALF)
            .mapToDouble(step -> 0.5 + 0.5 * Math.cos(Math.PI * step / HALF))
            .toArray();
    /** Range in which a throb is felt; see {@code Beat}. */
    private static final double SLOWEST_HZ = 1;

    /** Faster ones are felt as roughness; see {@code Beat}. */
    private static final double FASTEST_HZ = 8;
    /**
     * A rate stands out where its size is this many times the median of all rates: of 200 rates whose sizes are Rayleigh
     * with this median, one passes by chance in 300 runs (2^−16 each).
     */
    private static final double STANDS_OUT = 4;

    /**
     * A rate at which the level swells.
     *
     * @param hz swells per second
     * @param depth by how much of its most the level falls, 0 to 1
     */
    public record Swell(double hz, double depth) {}

    /** Of a channel in a dwell; empty where the dwell has too few samples. */
    public static Optional<SlowSwell> of(TimeBase time, Series values, Dwell dwell) {
        int steps = (int) (dwell.durationS() / STEP_S);
        int from = time.firstFrom(dwell.fromS());
        int to = time.firstFrom(dwell.fromS() + steps * STEP_S);
        if (steps < 20 * HALF || to - from < 2 * steps) {
            return Optional.empty();
        }
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values.at(i);
        }
        double mean = sum / (to - from);
        double[] squares = new double[steps];
        int[] count = new int[steps];
        int at = from;
        for (int step = 0; step < steps; step++) {
            int next = time.firstFrom(dwell.fromS() + (step + 1) * STEP_S);
            count[step] = next - at;
            squares[step] = power(values, at, next, mean);
            at = next;
        }
        double[] level = new double[steps - 2 * HALF];
        double[] times = new double[level.length];
        for (int k = 0; k < level.length; k++) {
            double weights = 0;
            for (int j = 0; j <= 2 * HALF; j++) {
                level[k] += 2 * HANN[j] * squares[k + j];
                weights += HANN[j] * count[k + j];
            }
            level[k] /= Math.max(weights, Double.MIN_NORMAL);
            times[k] = dwell.fromS() + (k + HALF + 0.5) * STEP_S;
        }
        Optional<Swell> swell = swell(level);
        return Optional.of(new SlowSwell(
                Series.of(times), Series.of(Arrays.stream(level).map(Math::sqrt).toArray()), swell));
    }

    private static double power(Series values, int from, int to, double mean) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            double off = values.at(i) - mean;
            sum += off * off;
        }
        return sum;
    }

    private static Optional<Swell> swell(double[] squares) {
        double mean = Arrays.stream(squares).average().orElse(0);
        // Twice as fine as the dwell tells apart, or finer; so that no rate is read low for lying between two.
        int padded = 2 * Integer.highestOneBit(2 * squares.length - 1);
        double[] weighed = new double[padded];
        for (int k = 0; k < squares.length; k++) {
            weighed[k] = (squares[k] - mean) * (1 - Math.cos(2 * Math.PI * (k + 0.5) / squares.length));
        }
        RealFft spectrum = new RealFft(padded);
        spectrum.transform(weighed);
        double binHz = 1 / (padded * STEP_S);
        int slowest = (int) Math.ceil(SLOWEST_HZ / binHz);
        double[] sizes = new double[(int) ((FASTEST_HZ - SLOWEST_HZ) / binHz)];
        int most = 0;
        for (int r = 0; r < sizes.length; r++) {
            sizes[r] = 2 * Math.sqrt(spectrum.power(slowest + r)) / squares.length;
            most = sizes[r] > sizes[most] ? r : most;
        }
        double[] sorted = sizes.clone();
        Arrays.sort(sorted);
        if (mean <= 0 || sizes[most] < STANDS_OUT * sorted[sorted.length / 2]) {
            return Optional.empty();
        }
        double hz = (slowest + most) * binHz;
        double m = Math.min(1, sizes[most] / mean / passed(hz));
        double r = m > 0 ? (1 - Math.sqrt(1 - m * m)) / m : 0;
        return Optional.of(new Swell(hz, 2 * r / (1 + r)));
    }

    /** What the window leaves of a swell. */
    private static double passed(double hz) {
        double sum = 0;
        double all = 0;
        for (int j = -HALF; j <= HALF; j++) {
            sum += HANN[HALF + j] * Math.cos(2 * Math.PI * hz * j * STEP_S);
            all += HANN[HALF + j];
        }
        return sum / all;
    }
}
