package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.numeric.RobustLine;
import evenblade.base.numeric.Selection;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.StampQuality;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;

/**
 * Time stamps of one run of rows, cleaned and measured.
 *
 * <p>Not a record, because it holds arrays; nobody changes them after {@link #of}.
 */
final class Stamps {
    private static final double GAP_STEPS = 3; // a line or two may come late; ours
    private static final double TOLD_JITTER = 0.1; // ours: from a tenth of a step on a spectrum suffers
    /** From this share of rows with a stamp already used on, the clock is coarse and no row is a repeat. */
    private static final double COARSE_REPEATS = 0.2;

    /** A tick longer than this share of a step is told. */
    private static final double COARSE_TICK = 0.05;

    /** √2 over √12: the unevenness of the sampling is no more than what cutting adds. */
    private static final double MOST_SCATTER = 0.41;

    /** Rounding is half a tick at each end, jitter of the writer one or two. */
    private static final double MOST_TICKS_OFF = 2.5;

    /** Stamps this many times further off than usual, and by this share of a step, have a wrong digit. */
    private static final double STRAY_TIMES = 12;

    private static final double STRAY_SHARE = 0.2; // of a step; smaller strays shift no line; ours
    private static final int LEAST_FOR_STRAYS = 16; // fewer give no usual deviation

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

    /** Rising, in seconds from the first. */
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
     * Measures the stamps of one run.
     *
     * @param run of rows that follow one clock
     * @param values the value columns, to tell a repeated row from two samples within one tick
     * @param signal of the same columns
     * @param place what to complain about
     * @param lineOf the line of the file of each row
     * @throws BadInput where nothing tells when the rows were sampled
     */
    static Stamps of(
            ClockTrack.Run run,
            List<double[]> values,
            SignalSeam signal,
            BadInput.Place place,
            IntUnaryOperator lineOf) {
        List<Warning> warnings = new ArrayList<>();
        int[] rows = run.rows();
        double[] all = run.seconds();
        int repeats = repeats(all);
        boolean coarseClock = repeats > COARSE_REPEATS * all.length && !mostlySameRows(all, rows, values, repeats);
        int doubled = coarseClock ? 0 : repeats;
        boolean[] keep = coarseClock ? kept(all.length) : once(all);
        int strays = leaveOutStrays(all, keep);
        double[] numbers = sampleNumbers(all, rows, coarseClock, lineOf);
        rows = only(rows, keep);
        numbers = only(numbers, keep);
        double[] kept = only(all, keep);
        double[] seconds = Arrays.stream(kept).map(each -> each - kept[0]).toArray();
        double resolution = resolution(seconds);
        boolean coarse = coarseClock;
        if (coarseClock) {
            double[] counted = SampleCount.of(seconds, resolution);
            RobustLine even = RobustLine.fit(counted, seconds);
            if (follows(seconds, counted, even, resolution)) {
                warnings.add(coarseStamps(resolution, even.slope(), true));
                seconds = evenTimes(counted, even);
                return measured(seconds, rows, coarse, doubled, strays, warnings);
            }
        }
        Optional<RobustLine> bursts = BurstClock.behind(seconds, numbers, rows, signal, place, lineOf);
        if (bursts.isPresent()) {
            RobustLine line = bursts.get();
            seconds = evenTimes(numbers, line);
            warnings.add(inBursts(line.slope()));
            return measured(seconds, rows, true, doubled, strays, warnings);
        }
        if (coarseClock) {
            warnings.add(coarseStamps(resolution, (seconds[seconds.length - 1]) / (seconds.length - 1), false));
            spread(seconds);
        }
        Steps steps = Steps.of(seconds);
        if (!coarseClock && resolution > COARSE_TICK * steps.mean() && steps.jitterShare() > NO_JITTER) {
            coarse = true;
            double[] counted = SampleCount.of(seconds, resolution);
            RobustLine even = RobustLine.fit(counted, seconds);
            boolean follows = follows(seconds, counted, even, resolution);
            warnings.add(coarseStamps(resolution, even.slope(), follows));
            if (follows) {
                StampQuality quality = quality(steps, doubled, strays);
                warnings.addAll(told(quality, true));
                return new Stamps(evenTimes(counted, even), rows, 1 / even.slope(), quality, warnings);
            }
        }
        return measured(seconds, rows, coarse, doubled, strays, warnings);
    }

    private static Stamps measured(
            double[] seconds, int[] rows, boolean coarse, int doubled, int strays, List<Warning> warnings) {
        Steps steps = Steps.of(seconds);
        RobustLine even = RobustLine.fit(SampleCount.of(seconds, coarse ? 0 : resolution(seconds)), seconds);
        StampQuality quality = quality(steps, doubled, strays);
        warnings.addAll(told(quality, coarse));
        return new Stamps(seconds, rows, 1 / even.slope(), quality, warnings);
    }

    private static StampQuality quality(Steps steps, int doubled, int strays) {
        return new StampQuality(steps.median(), steps.jitterShare(), steps.gaps(), steps.lostS(), strays, doubled);
    }

    private static Warning inBursts(double step) {
        return Warning.of(WarningCode.ROWS_IN_BURSTS, Subject.Whole.RECORDING, Measure.SAMPLE_RATE.of(1 / step));
    }

    private static int repeats(double[] seconds) {
        int repeats = 0;
        for (int i = 1; i < seconds.length; i++) {
            repeats += seconds[i] == seconds[i - 1] ? 1 : 0;
        }
        return repeats;
    }

    private static boolean mostlySameRows(double[] seconds, int[] rows, List<double[]> values, int repeats) {
        int same = 0;
        for (int i = 1; i < rows.length; i++) {
            int row = rows[i];
            int before = rows[i - 1];
            if (seconds[i] == seconds[i - 1] && values.stream().allMatch(v -> v[row] == v[before])) {
                same++;
            }
        }
        return 2 * same > repeats;
    }

    private static boolean[] kept(int size) {
        boolean[] keep = new boolean[size];
        Arrays.fill(keep, true);
        return keep;
    }

    private static boolean[] once(double[] seconds) {
        boolean[] keep = kept(seconds.length);
        for (int i = 1; i < seconds.length; i++) {
            keep[i] = seconds[i] != seconds[i - 1];
        }
        return keep;
    }

    /**
     * Leaves out stamps that lie off the middle of their neighbours, where the neighbours are two usual steps apart
     * and stamps are else far steadier: a wrong digit of low order.
     */
    private static int leaveOutStrays(double[] seconds, boolean[] keep) {
        int[] at = IntStream.range(0, seconds.length).filter(i -> keep[i]).toArray();
        if (at.length < LEAST_FOR_STRAYS) {
            return 0;
        }
        double[] off = new double[at.length];
        double[] steps = new double[at.length - 1];
        for (int i = 1; i < at.length; i++) {
            steps[i - 1] = seconds[at[i]] - seconds[at[i - 1]];
            off[i] = i + 1 < at.length ? Math.abs(seconds[at[i]] - (seconds[at[i - 1]] + seconds[at[i + 1]]) / 2) : 0;
        }
        double step = Selection.ofRank(steps, steps.length, steps.length / 2);
        double usual = Selection.ofRank(off.clone(), off.length, off.length / 2);
        double most = Math.max(STRAY_TIMES * usual, STRAY_SHARE * step);
        int strays = 0;
        for (int i = 1; i + 1 < at.length; i++) {
            double neighbours = seconds[at[i + 1]] - seconds[at[i - 1]];
            boolean worst = off[i] >= off[i - 1] && off[i] >= off[i + 1];
            if (off[i] > most && worst && Math.abs(neighbours - 2 * step) <= most) {
                keep[at[i]] = false;
                strays++;
            }
        }
        return strays;
    }

    /** Lines of the file are counted, so that a row left out is a sample still; a repeated row isn't one. */
    private static double[] sampleNumbers(double[] seconds, int[] rows, boolean coarse, IntUnaryOperator lineOf) {
        double[] numbers = new double[rows.length];
        for (int i = 1; i < rows.length; i++) {
            boolean again = !coarse && seconds[i] == seconds[i - 1];
            numbers[i] = numbers[i - 1] + (again ? 0 : lineOf.applyAsInt(rows[i]) - lineOf.applyAsInt(rows[i - 1]));
        }
        return numbers;
    }

    private static double[] only(double[] values, boolean[] keep) {
        return IntStream.range(0, values.length)
                .filter(i -> keep[i])
                .mapToDouble(i -> values[i])
                .toArray();
    }

    private static int[] only(int[] values, boolean[] keep) {
        return IntStream.range(0, values.length)
                .filter(i -> keep[i])
                .map(i -> values[i])
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

    /**
     * Whether stamps cut to a tick lie nearer to an even clock than cutting alone moves them: then the even clock is
     * nearer to the truth than they are. Cutting by itself scatters by the tick over √12.
     */
    private static boolean follows(double[] seconds, double[] numbers, RobustLine even, double resolution) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double squares = 0;
        for (int i = 0; i < numbers.length; i++) {
            double off = seconds[i] - even.at(numbers[i]);
            low = Math.min(low, off);
            high = Math.max(high, off);
            squares += off * off;
        }
        double scatter = Math.sqrt(squares / numbers.length);
        return high - low <= MOST_TICKS_OFF * resolution && scatter <= MOST_SCATTER * resolution;
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
