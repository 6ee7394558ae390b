package evenblade.input.intake;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Numbers the samples of stamped data, samples that are missing counted in, also where stamps jitter.
 *
 * <p>One late stamp tells little; that the stamps behind it are all late by a step tells that a sample
 * is missing. So at every long step the middle lateness of the stamps before is held against that of
 * the stamps behind.
 */
final class SampleCount {
    private static final int LAG = 16; // ours: a lost line shows over so many steps
    private static final int WINDOW = 15; // ours: a median of so many bears seven strays
    /** A step shorter than this is taken for one without a closer look. */
    private static final double LONG_STEP = 1.3;

    private SampleCount() {}

    /**
     * The number of each sample, 0 for the first.
     *
     * @param seconds stamps in rising order, at least 2
     * @param tick what the stamps are whole multiples of, 0 where nothing is seen of that
     */
    static double[] of(double[] seconds, double tick) {
        double period = period(seconds);
        double longStep = Math.max(LONG_STEP * period, period + 1.001 * tick);
        double[] numbers = new double[seconds.length];
        for (int i = 1; i < seconds.length; i++) {
            numbers[i] = numbers[i - 1] + 1;
            if (seconds[i] - seconds[i - 1] > longStep) {
                numbers[i] += missing(seconds, numbers, i, period);
            }
        }
        return numbers;
    }

    /** Step of the clock: the median over stamps some way apart, in which few hold a missing sample. */
    private static double period(double[] seconds) {
        int last = seconds.length - 1;
        if (last < 2 * LAG) {
            return seconds[last] / last;
        }
        double[] steps = IntStream.rangeClosed(0, last - LAG)
                .mapToDouble(i -> (seconds[i + LAG] - seconds[i]) / LAG)
                .toArray();
        double median = median(steps);
        return median > 0 ? median : seconds[last] / last;
    }

    private static double missing(double[] seconds, double[] numbers, int at, double period) {
        double before = median(IntStream.range(Math.max(0, at - WINDOW), at)
                .mapToDouble(i -> seconds[i] - period * numbers[i])
                .toArray());
        double behind = median(IntStream.range(at, Math.min(seconds.length, at + WINDOW))
                .mapToDouble(i -> seconds[i] - period * (numbers[at] + i - at))
                .toArray());
        return Math.max(0, Math.rint((behind - before) / period));
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
