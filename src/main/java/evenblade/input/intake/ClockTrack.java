package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.IntUnaryOperator;

/**
 * Follows the clock of a table through its rows in the order of the file: counters that begin anew go on, a stamp that
 * fits neither its neighbours before nor those behind is left out, and where the clock itself steps the rows fall into
 * runs, each with its own clock. Nothing is ever sorted.
 *
 * <p>Where the signal goes on without a break although the clock steps ({@link SignalSeam}), only the clock was moved:
 * the time is carried on. A forward step of up to {@value #MOST_GAP_S} s across which the signal doesn't go on is a
 * gap: rows are missing, and the stamps are right.
 */
final class ClockTrack {
    /** A step longer than so many usual ones is looked at. */
    private static final double LONG_STEPS = 2.5;
    /** Rows behind a doubtful stamp that are asked which clock they follow. */
    private static final int ASKED = 12;
    /**
     * A longer gap ends a run: what clock and propeller did meanwhile, nobody knows. Across gaps of 1.6 to 1.95 s, 3 of 90
     * tables of the rig's machines had their turns counted wrong; up to 1.5 s, none of 330.
     */
    static final double MOST_GAP_S = 1;
    /** The longest gap where the signal doesn't tell whether rows are missing: a turn and a half of a slow propeller. */
    static final double MOST_UNTOLD_GAP_S = 0.06;
    /** More seams than these aren't looked at in the signal. */
    private static final int MOST_SEAMS = 300;
    /** Of the steps between stamps, the share that a usual one isn't longer than: rows in bursts step every 50th row or oftener. */
    private static final double USUAL_SHARE = 0.98;

    private static final double MOST_USUAL_S = 1; // a step over a second is a pause, not a rate
    private static final int LEAST_BURSTS = 8; // fewer may be gaps; ours
    private static final double IN_BURSTS = 0.6; // ours
    /** Beyond this share of stamps that fit nowhere, no clock can be made out. */
    private static final double MOST_LEFT_OUT = 0.05;

    private static final int FEW = 3; // so many stamps may stray in a short file
    /** So many rows with one stamp are a clock that stands, where so many times fewer are usual. */
    private static final int LEAST_STANDING = 16;

    private static final int STANDING_TIMES = 4; // so much longer than usual; ours
    /** Rows that show the usual step well enough where one is to be bridged; ours. */
    private static final int TYPICAL_ROWS = 64;

    /** Rows that follow one clock. */
    static final class Run {
        private final int[] rows;
        private final double[] seconds;
        private final double stepBeforeS;

        private Run(int[] rows, double[] seconds, double stepBeforeS) {
            this.rows = rows;
            this.seconds = seconds;
            this.stepBeforeS = stepBeforeS;
        }

        /** Places among the rows read, rising. */
        int[] rows() {
            return rows;
        }

        /** Their times, not falling, seconds. */
        double[] seconds() {
            return seconds;
        }

        /** What the clock did from the run before to this one, seconds; 0 for the first. */
        double stepBeforeS() {
            return stepBeforeS;
        }

        double durationS() {
            return seconds[seconds.length - 1] - seconds[0];
        }
    }

    /**
     * A step of the clock.
     *
     * @param row the first row behind it
     * @param stepS from the stamp before it
     * @param carriedOn whether the signal went on, so that the time was carried on
     */
    record Step(int row, double stepS, boolean carriedOn) {}

    /**
     * What was found.
     *
     * @param runs in the order of the file, at least one
     * @param steps of the clock, those that end a run and those across which the time was carried on
     * @param leftOut rows whose stamp fits nowhere
     * @param standing rows behind another with the same stamp where the clock stood
     * @param wrapS length of a counter that began anew
     */
    record Found(
            List<Run> runs, List<Step> steps, List<Integer> leftOut, List<Integer> standing, OptionalDouble wrapS) {
        Found {
            runs = List.copyOf(runs);
            steps = List.copyOf(steps);
            leftOut = List.copyOf(leftOut);
            standing = List.copyOf(standing);
        }
    }

    private final double[] raw;
    private final SignalSeam signal;
    private final double usualS;
    private final OptionalDouble wrapS;
    private final boolean[] stands;
    private final List<Run> runs = new ArrayList<>();
    private final List<Step> steps = new ArrayList<>();
    private final List<Integer> leftOut = new ArrayList<>();
    private final GrowingNumbers rows = new GrowingNumbers();
    private final GrowingNumbers seconds = new GrowingNumbers();
    private double carriedS;
    private double stepBeforeS;

    private ClockTrack(double[] raw, List<double[]> values, boolean clock) {
        this.raw = raw;
        this.signal = SignalSeam.of(values);
        this.usualS = usualStep(raw);
        this.wrapS = CounterWrap.of(raw, clock, usualS);
        this.stands = standing(raw);
    }

    /**
     * Follows the clock.
     *
     * @param raw stamps in seconds in the order of the file, at least 2
     * @param values the value columns
     * @param clock whether the stamps are times of day
     * @param place what to complain about
     * @param lineOf the line of the file of each row
     * @throws BadInput where no clock can be made out
     */
    static Found follow(
            double[] raw, List<double[]> values, boolean clock, BadInput.Place place, IntUnaryOperator lineOf) {
        ClockTrack track = new ClockTrack(raw, values, clock);
        List<Integer> standing = track.run();
        int lost = track.leftOut.size();
        if (track.runs.isEmpty() || lost > Math.max(FEW, MOST_LEFT_OUT * raw.length)) {
            int first = lost == 0 ? 0 : track.leftOut.get(0);
            throw place.line(lineOf.applyAsInt(first))
                    .found(
                            String.format(
                                    Locale.ROOT,
                                    "a stamp that fits no clock (%d of %d rows are like that)",
                                    lost,
                                    raw.length),
                            "times that rise from row to row");
        }
        if (2 * standing.size() > raw.length) {
            throw place.line(lineOf.applyAsInt(standing.get(0)))
                    .found(
                            String.format(
                                    Locale.ROOT,
                                    "a time that stands still (%d of %d rows repeat one)",
                                    standing.size(),
                                    raw.length),
                            "times that rise from row to row");
        }
        return new Found(track.runs, track.steps, track.leftOut, standing, track.wrapS);
    }

    private static double usualStep(double[] raw) {
        double[] forward = new double[raw.length - 1];
        int count = 0;
        for (int i = 1; i < raw.length; i++) {
            double step = raw[i] - raw[i - 1];
            if (step >= 0 && step <= MOST_USUAL_S) {
                forward[count++] = step;
            }
        }
        if (count == 0) {
            return MOST_USUAL_S;
        }
        double[] sorted = Arrays.copyOf(forward, count);
        Arrays.sort(sorted);
        double usual = sorted[(int) (USUAL_SHARE * (count - 1))];
        double all = Arrays.stream(sorted).sum();
        double[] longer =
                Arrays.stream(sorted).filter(step -> step > LONG_STEPS * usual).toArray();
        // Long bursts step so seldom that their steps are no usual ones, and yet all the time lies in them.
        boolean bursts = longer.length >= LEAST_BURSTS && Arrays.stream(longer).sum() > IN_BURSTS * all;
        return bursts ? longer[longer.length / 2] : usual > 0 ? usual : sorted[count - 1];
    }

    /** Rows behind the first of a long run of one stamp. */
    private static boolean[] standing(double[] raw) {
        int[] lengths = new int[raw.length];
        int count = 0;
        for (int from = 0, to; from < raw.length; from = to) {
            to = from + 1;
            while (to < raw.length && raw[to] == raw[from]) {
                to++;
            }
            lengths[count++] = to - from;
        }
        int[] sorted = Arrays.copyOf(lengths, count);
        Arrays.sort(sorted);
        int usual = sorted[(int) (0.95 * (count - 1))];
        int most = Math.max(LEAST_STANDING, STANDING_TIMES * usual);
        boolean[] stands = new boolean[raw.length];
        int row = 0;
        for (int i = 0; i < count; i++) {
            if (lengths[i] >= most) {
                Arrays.fill(stands, row + 1, row + lengths[i], true);
            }
            row += lengths[i];
        }
        return stands;
    }

    private List<Integer> run() {
        List<Integer> standing = new ArrayList<>();
        double latest = 0;
        for (int i = 0; i < raw.length; i++) {
            if (stands[i]) {
                standing.add(i);
                continue;
            }
            if (rows.size() == 0) {
                int behind = behind(i);
                if (runs.isEmpty() && behind < raw.length && 2 * followers(i, raw[i], 0) < asked(i)) {
                    leftOut.add(i);
                    continue;
                }
                latest = raw[i];
                accept(i, latest);
                continue;
            }
            double now = unwrapped(raw[i], latest);
            double step = now - latest;
            boolean stood = i > 0 && stands[i - 1];
            if (!stood && step >= 0 && step <= (LONG_STEPS + leftOutLately(i)) * usualS) {
                latest = now;
                accept(i, latest);
                continue;
            }
            if (!stood && step < 0 && fitsBeforeLatest(now)) {
                leaveOutLatest();
                latest = now;
                accept(i, latest);
                continue;
            }
            int asked = asked(i);
            int follow = followers(i, now, 0);
            if (2 * follow < asked || asked == 0 || follow < followers(i, latest, 1)) {
                leftOut.add(i);
                continue;
            }
            if (stood) {
                stood(i, step);
            } else {
                seam(i, step);
            }
            latest = now;
            accept(i, latest);
        }
        close(0);
        return standing;
    }

    /** Rows just before whose stamps fitted nowhere: they took time too. */
    private int leftOutLately(int row) {
        int first = leftOut.size();
        while (first > 0 && leftOut.get(first - 1) >= row - ASKED) {
            first--;
        }
        return leftOut.size() - first;
    }

    /** Whether a stamp behind the latest goes on from the one before that: then the latest was wrong. */
    private boolean fitsBeforeLatest(double now) {
        int many = seconds.size();
        if (many < 2) {
            return false;
        }
        double step = now + carriedS - seconds.at(many - 2);
        return step >= 0 && step <= LONG_STEPS * usualS;
    }

    private void leaveOutLatest() {
        leftOut.add((int) rows.at(rows.size() - 1));
        rows.removeLast();
        seconds.removeLast();
    }

    private void seam(int row, double step) {
        SignalSeam.Verdict verdict = signalAt(row);
        if (verdict == SignalSeam.Verdict.CONTINUES) {
            carryOn(row, step);
            return;
        }
        double most = verdict == SignalSeam.Verdict.BROKEN ? MOST_GAP_S : MOST_UNTOLD_GAP_S;
        if (step < 0 || step > most) {
            breakOff(row, step);
        }
    }

    /**
     * The first row behind some for which the clock stood. Where it has caught up with them the stamps are right again;
     * where the signal goes on at both their ends it was the clock alone that stood.
     */
    private void stood(int row, double step) {
        double typical = typicalStep(row);
        if (Math.max(step, typical) > MOST_GAP_S) {
            breakOff(row, step);
        } else if (Math.abs(step - typical) > LONG_STEPS * usualS) {
            int first = (int) rows.at(rows.size() - 1) + 1;
            boolean goesOn =
                    signalAt(first) == SignalSeam.Verdict.CONTINUES && signalAt(row) == SignalSeam.Verdict.CONTINUES;
            if (goesOn) {
                carryOn(row, step);
            } else {
                breakOff(row, step);
            }
        }
    }

    private SignalSeam.Verdict signalAt(int row) {
        return steps.size() < MOST_SEAMS ? signal.at(row) : SignalSeam.Verdict.UNTOLD;
    }

    private void carryOn(int row, double step) {
        carriedS += typicalStep(row) - step;
        steps.add(new Step(row, step, true));
    }

    private void breakOff(int row, double step) {
        steps.add(new Step(row, step, false));
        close(step);
    }

    /** The time that the rows since the last one accepted took, by as many rows before or {@value #TYPICAL_ROWS}. */
    private double typicalStep(int row) {
        int many = seconds.size();
        int back = (int) Math.min(Math.max(TYPICAL_ROWS, row - rows.at(many - 1)), many - 1);
        if (back == 0) {
            return usualS;
        }
        double rowsBetween = rows.at(many - 1) - rows.at(many - 1 - back);
        double step = (seconds.at(many - 1) - seconds.at(many - 1 - back)) / rowsBetween;
        return step * (row - rows.at(many - 1));
    }

    private void accept(int row, double now) {
        rows.add(row);
        seconds.add(now + carriedS);
    }

    private void close(double step) {
        if (rows.size() > 1) {
            double[] kept = rows.toArray();
            runs.add(new Run(
                    Arrays.stream(kept).mapToInt(each -> (int) each).toArray(), seconds.toArray(), stepBeforeS));
        } else if (rows.size() == 1) {
            leftOut.add((int) rows.at(0));
        }
        rows.clear();
        seconds.clear();
        stepBeforeS = step;
    }

    private int behind(int row) {
        int next = row + 1;
        while (next < raw.length && stands[next]) {
            next++;
        }
        return next;
    }

    private int asked(int row) {
        int asked = 0;
        for (int next = behind(row); next < raw.length && asked < ASKED; next = behind(next)) {
            asked++;
        }
        return asked;
    }

    /** How many of the next rows go on from that time. */
    private int followers(int row, double from, int rowsBefore) {
        int follow = 0;
        int asked = 0;
        for (int next = behind(row); next < raw.length && asked < ASKED; next = behind(next)) {
            asked++;
            double ahead = unwrapped(raw[next], from) - from;
            follow += ahead >= 0 && ahead <= LONG_STEPS * usualS * (asked + rowsBefore) ? 1 : 0;
        }
        return follow;
    }

    /** A stamp of a counter that begins anew, brought to the first place not before the latest. */
    private double unwrapped(double stamp, double latest) {
        if (wrapS.isEmpty()) {
            return stamp;
        }
        double length = wrapS.getAsDouble();
        double turns = Math.ceil((latest - Math.min(LONG_STEPS * usualS, length / 8) - stamp) / length);
        return stamp + length * turns;
    }
}
