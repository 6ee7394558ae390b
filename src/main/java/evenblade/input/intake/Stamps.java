package evenblade.input.intake;

import evenblade.base.fact.Amount;
import evenblade.base.fact.Count;
import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.numeric.RobustLine;
import evenblade.input.recording.StampQuality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Time stamps brought into order and measured.
 *
 * <p>Not a record, because it holds arrays; nobody changes them after {@link #of}.
 */
final class Stamps {
    private static final double GAP_STEPS = 3;
    private static final double TOLD_JITTER = 0.1;
    /** From this share of rows with a stamp already used on, the clock is coarse and no row is a repeat. */
    private static final double COARSE_REPEATS = 0.2;

    /** A tick longer than this share of a step is told. */
    private static final double COARSE_TICK = 0.05;

    /** Below this jitter all steps are the same. */
    private static final double NO_JITTER = 1e-6;

    private static final double USABLE_SHARE = evenblade.input.recording.Recording.USABLE_SHARE_OF_RATE;

    private final double[] seconds;
    private final int[] rows;
    private final double rateHz;
    private final StampQuality quality;
    private final List<Warning> warnings;

    private Stamps(double[] seconds, int[] rows, double rateHz, StampQuality quality, List<Warning> warnings) {
        this.seconds = seconds;
        this.rows = rows;
        this.rateHz = rateHz;
        this.quality = quality;
        this.warnings = List.copyOf(warnings);
    }

    /** Stamps in rising order, in seconds from the first. */
    double[] seconds() {
        return seconds;
    }

    /** For each stamp, the row of the file it belongs to. */
    int[] rows() {
        return rows;
    }

    double rateHz() {
        return rateHz;
    }

    StampQuality quality() {
        return quality;
    }

    List<Warning> warnings() {
        return warnings;
    }

    /**
     * Orders and measures.
     *
     * @param raw stamps in seconds as they came, at least 2, not all equal
     * @param values the value columns, to tell a repeated row from two samples within one tick
     */
    static Stamps of(double[] raw, List<double[]> values) {
        List<Warning> warnings = new ArrayList<>();
        int unsorted = unsorted(raw);
        int[] rows = order(raw, unsorted);
        if (unsorted > 0) {
            warnings.add(Warning.of(
                    WarningCode.STAMPS_UNSORTED, Subject.Whole.RECORDING, new Count(unsorted), new Count(raw.length)));
        }
        int repeats = repeats(raw, rows);
        boolean coarseClock = repeats > COARSE_REPEATS * raw.length && !mostlySameRows(raw, rows, values, repeats);
        int doubled = 0;
        if (repeats > 0 && !coarseClock) {
            rows = withoutRepeats(raw, rows);
            doubled = repeats;
            warnings.add(Warning.of(
                    WarningCode.STAMPS_DOUBLED, Subject.Whole.RECORDING, new Count(doubled), new Count(raw.length)));
        }
        double first = raw[rows[0]];
        double[] seconds =
                Arrays.stream(rows).mapToDouble(row -> raw[row] - first).toArray();
        double resolution = resolution(seconds);
        boolean coarse = coarseClock;
        if (coarseClock) {
            double[] numbers = SampleCount.of(seconds, resolution);
            RobustLine even = RobustLine.fit(numbers, seconds);
            boolean follows = follows(seconds, numbers, even, resolution);
            warnings.add(coarseStamps(resolution, even.slope(), follows));
            if (follows) {
                seconds = evenTimes(numbers, even);
            } else {
                spread(seconds);
            }
        }
        Steps steps = Steps.of(seconds);
        double[] numbers = SampleCount.of(seconds, coarseClock ? 0 : resolution);
        RobustLine even = RobustLine.fit(numbers, seconds);
        StampQuality quality =
                new StampQuality(steps.median(), steps.jitterShare(), steps.gaps(), steps.lostS(), unsorted, doubled);
        if (!coarseClock && resolution > COARSE_TICK * steps.mean() && steps.jitterShare() > NO_JITTER) {
            coarse = true;
            boolean follows = follows(seconds, numbers, even, resolution);
            warnings.add(coarseStamps(resolution, even.slope(), follows));
            if (follows) {
                seconds = evenTimes(numbers, even);
            }
        }
        warnings.addAll(told(quality, coarse));
        return new Stamps(seconds, rows, 1 / even.slope(), quality, warnings);
    }

    private static int unsorted(double[] raw) {
        int unsorted = 0;
        double latest = raw[0];
        for (double stamp : raw) {
            if (stamp < latest) {
                unsorted++;
            }
            latest = Math.max(latest, stamp);
        }
        return unsorted;
    }

    private static int[] order(double[] raw, int unsorted) {
        IntStream rows = IntStream.range(0, raw.length);
        return unsorted == 0
                ? rows.toArray()
                : rows.boxed()
                        .sorted(Comparator.comparingDouble(row -> raw[row]))
                        .mapToInt(Integer::intValue)
                        .toArray();
    }

    private static int repeats(double[] raw, int[] rows) {
        int repeats = 0;
        for (int i = 1; i < rows.length; i++) {
            if (raw[rows[i]] == raw[rows[i - 1]]) {
                repeats++;
            }
        }
        return repeats;
    }

    private static boolean mostlySameRows(double[] raw, int[] rows, List<double[]> values, int repeats) {
        int same = 0;
        for (int i = 1; i < rows.length; i++) {
            int row = rows[i];
            int before = rows[i - 1];
            if (raw[row] == raw[before] && values.stream().allMatch(v -> v[row] == v[before])) {
                same++;
            }
        }
        return 2 * same > repeats;
    }

    private static int[] withoutRepeats(double[] raw, int[] rows) {
        return IntStream.range(0, rows.length)
                .filter(i -> i == 0 || raw[rows[i]] != raw[rows[i - 1]])
                .map(i -> rows[i])
                .toArray();
    }

    /** The coarsest decade of a second that all stamps are whole multiples of, or 0. */
    private static double resolution(double[] seconds) {
        for (double perSecond = 1; perSecond <= 1e6; perSecond *= 10) {
            double ticks = perSecond;
            if (Arrays.stream(seconds).allMatch(t -> Math.abs(t * ticks - Math.rint(t * ticks)) < 0.01)) {
                return 1 / perSecond;
            }
        }
        return 0;
    }

    /** Samples within one tick of a coarse clock, spread evenly to the next tick. */
    private static void spread(double[] seconds) {
        double[] ticks = seconds.clone();
        double typical = ticks[ticks.length - 1] / (ticks.length - 1);
        for (int from = 0; from < ticks.length; ) {
            int to = from;
            while (to < ticks.length && ticks[to] == ticks[from]) {
                to++;
            }
            // A tick is full except at both ends of the file, where the usual step is taken.
            boolean firstTick = from == 0 && to < ticks.length;
            double step = to == ticks.length ? typical : (ticks[to] - ticks[from]) / (to - from);
            for (int i = from; i < to; i++) {
                seconds[i] =
                        firstTick ? ticks[to] - (to - i) * Math.min(step, typical) : ticks[from] + (i - from) * step;
            }
            from = to;
        }
    }

    /** Whether stamps cut to a tick agree with an even clock: none lies further off than half a tick. */
    private static boolean follows(double[] seconds, double[] numbers, RobustLine even, double resolution) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < numbers.length; i++) {
            double off = seconds[i] - even.at(numbers[i]);
            low = Math.min(low, off);
            high = Math.max(high, off);
        }
        return high - low <= 1.1 * resolution;
    }

    private static double[] evenTimes(double[] numbers, RobustLine even) {
        return Arrays.stream(numbers).map(n -> even.slope() * n).toArray();
    }

    private static Warning coarseStamps(double resolution, double step, boolean follows) {
        Amount tick = Measure.TIME.of(resolution);
        Amount every = Measure.TIME.of(step);
        double highest = USABLE_SHARE / step;
        double x = Math.PI * highest * resolution;
        return Warning.of(
                WarningCode.COARSE_STAMPS,
                Subject.Whole.RECORDING,
                tick,
                every,
                follows
                        ? Fact.of(IntakeFact.STAMPS_AGREE, Measure.FREQUENCY.of(1 / step))
                        : Fact.of(
                                IntakeFact.STAMPS_FOLLOW_NO_CLOCK,
                                Measure.FREQUENCY.of(highest),
                                Measure.SHARE.of(1 - Math.abs(Math.sin(x) / x))));
    }

    private static List<Warning> told(StampQuality quality, boolean coarse) {
        List<Warning> warnings = new ArrayList<>();
        if (quality.gaps() > 0) {
            warnings.add(Warning.of(
                    WarningCode.GAPS,
                    Subject.Whole.RECORDING,
                    new Count(quality.gaps()),
                    Measure.TIME.of(quality.lostS())));
        }
        if (quality.jitterShare() > TOLD_JITTER && !coarse) {
            warnings.add(Warning.of(
                    WarningCode.JITTER,
                    Subject.Whole.RECORDING,
                    Measure.SHARE.of(quality.jitterShare()),
                    Measure.TIME.of(quality.medianStepS())));
        }
        return warnings;
    }

    /** The steps between stamps; mean and scatter without the gaps. */
    private record Steps(double median, double mean, double jitterShare, int gaps, double lostS) {
        static Steps of(double[] seconds) {
            double[] steps = new double[seconds.length - 1];
            for (int i = 0; i < steps.length; i++) {
                steps[i] = seconds[i + 1] - seconds[i];
            }
            double[] sorted = steps.clone();
            Arrays.sort(sorted);
            double median = sorted[sorted.length / 2];
            double sum = 0;
            double lost = 0;
            int gaps = 0;
            for (double step : steps) {
                if (step > GAP_STEPS * median) {
                    gaps++;
                    lost += step - median;
                } else {
                    sum += step;
                }
            }
            double mean = sum / (steps.length - gaps);
            double squares = 0;
            for (double step : steps) {
                squares += step > GAP_STEPS * median ? 0 : (step - mean) * (step - mean);
            }
            double jitter = Math.sqrt(squares / (steps.length - gaps)) / median;
            return new Steps(median, mean, jitter, gaps, lost);
        }
    }
}
