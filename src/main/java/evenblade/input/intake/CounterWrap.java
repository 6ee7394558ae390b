package evenblade.input.intake;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Finds the length after which a counter of time begins anew: 16 or 32 bits of microseconds or milliseconds, or a
 * day where the stamps are times of day.
 */
final class CounterWrap {
    /** 2^16 and 2^32 of µs and ms, seconds. */
    private static final double[] COUNTERS = {65536e-6, 65.536, 4294.967296, 4294967.296};

    private static final double DAY = 86_400; // a clock of the day starts anew after 86,400 s
    /** Of the stamps so many must lie within the length of the counter; the rest may be broken. */
    private static final double WITHIN = 0.98;
    /** Rows may be missing at the place where it begins anew, of a long counter. */
    private static final double MISSING_S = 1;

    private CounterWrap() {}

    /**
     * The length, seconds; empty where no backward step looks like it.
     *
     * @param raw stamps in the order of the file, seconds
     * @param clock whether they are times of day
     * @param usualS a usual step
     */
    static OptionalDouble of(double[] raw, boolean clock, double usualS) {
        double[] sorted = raw.clone();
        Arrays.sort(sorted);
        int out = (int) (0.5 * (1 - WITHIN) * raw.length);
        double span = sorted[raw.length - 1 - out] - sorted[out];
        return (clock ? DoubleStream.of(DAY) : DoubleStream.of(COUNTERS))
                .filter(length -> span <= length && wraps(raw, length, usualS))
                .findFirst();
    }

    private static boolean wraps(double[] raw, double length, double usualS) {
        double most = Math.min(length / 2, Math.max(20 * usualS, length > 1 ? MISSING_S : 0));
        int back = 0;
        int wraps = 0;
        for (int i = 1; i < raw.length; i++) {
            double step = raw[i] - raw[i - 1];
            if (step < -length / 2) {
                back++;
                // A counter that begins anew goes on from there: a lone wrong stamp doesn't.
                boolean goesOn = i + 1 >= raw.length || Math.abs(raw[i + 1] - raw[i]) <= most;
                wraps += step + length >= 0 && step + length <= most && goesOn ? 1 : 0;
            }
        }
        return wraps > 0 && 2 * wraps >= back;
    }
}
