package evenblade.measure.speed;

import evenblade.input.recording.Series;
import evenblade.input.recording.TimeBase;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The passings of a once-per-revolution mark, with the revolutions turned at each.
 *
 * <p>A pulse is a crossing of half the local height, upwards or downwards as the channel's pulses
 * stand, its time taken on the straight line between the two samples; the next one counts only after
 * the signal has come back below a quarter. A pulse that comes much too early is taken for a double
 * and left out; where one or more are missing the revolutions are counted on.
 *
 * @param timeS of each pulse kept, rising
 * @param revolutions whole revolutions turned since the first
 * @param missing pulses that should have come and didn't
 * @param doubled pulses left out
 */
record MarkPulseTimes(List<Double> timeS, List<Integer> revolutions, int missing, int doubled) {
    private static final double WINDOW_S = 1.0; // several turns of the slowest propeller
    private static final double FIRE = 0.5; // half the height is where a slope is steepest
    private static final double REARM = 0.25; // half of that, so that noise on the slope fires once
    /** Height over the channel's usual stray below which there is no mark at all. */
    private static final double LEAST_HEIGHT = 8;
    /** A pulse after less than this share of a revolution is a double. */
    private static final double TOO_EARLY = 0.6;

    private static final int LEAST_PULSES = 5; // fewer show no speed

    MarkPulseTimes {
        timeS = List.copyOf(timeS);
        revolutions = List.copyOf(revolutions);
    }

    boolean usable() {
        return timeS.size() >= LEAST_PULSES;
    }

    static MarkPulseTimes of(TimeBase time, Series values) {
        return counted(crossings(time, values.toArray()));
    }

    private static List<Double> crossings(TimeBase time, double[] x) {
        double[] sorted = x.clone();
        Arrays.sort(sorted);
        double base = sorted[sorted.length / 2];
        double up = sorted[sorted.length - 1] - base;
        double down = base - sorted[0];
        double sign = up >= down ? 1 : -1;
        double usual = sorted[(int) (0.75 * sorted.length)] - sorted[(int) (0.25 * sorted.length)];
        for (int i = 0; i < x.length; i++) {
            x[i] = sign * (x[i] - base);
        }
        int width = Math.max(8, (int) Math.round(WINDOW_S * time.rateHz()));
        List<Double> crossings = new ArrayList<>();
        boolean armed = false;
        for (int from = 0; from < x.length; from += width) {
            int to = Math.min(x.length, from + width);
            double height = 0;
            for (int i = Math.max(0, from - width / 2); i < Math.min(x.length, to + width / 2); i++) {
                height = Math.max(height, x[i]);
            }
            if (height <= LEAST_HEIGHT * usual / 2) {
                armed = false;
                continue;
            }
            for (int i = Math.max(1, from); i < to; i++) {
                if (armed && x[i] >= FIRE * height) {
                    double share = x[i] == x[i - 1]
                            ? 0
                            : Math.max(0, Math.min(1, (FIRE * height - x[i - 1]) / (x[i] - x[i - 1])));
                    crossings.add(time.at(i - 1) + share * (time.at(i) - time.at(i - 1)));
                    armed = false;
                } else if (x[i] < REARM * height) {
                    armed = true;
                }
            }
        }
        return crossings;
    }

    /** Counts revolutions along the crossings, each step held against the median of the steps around it. */
    private static MarkPulseTimes counted(List<Double> crossings) {
        List<Double> times = new ArrayList<>();
        List<Integer> revolutions = new ArrayList<>();
        int missing = 0;
        int doubled = 0;
        if (crossings.size() < LEAST_PULSES) {
            return new MarkPulseTimes(List.of(), List.of(), 0, 0);
        }
        double[] steps = new double[crossings.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = crossings.get(i + 1) - crossings.get(i);
        }
        times.add(crossings.get(0));
        revolutions.add(0);
        for (int i = 1; i < crossings.size(); i++) {
            double usual = usualStep(steps, i - 1);
            double step = crossings.get(i) - times.get(times.size() - 1);
            if (step < TOO_EARLY * usual) {
                doubled++;
                continue;
            }
            int turns = Math.max(1, (int) Math.rint(step / usual));
            missing += turns - 1;
            times.add(crossings.get(i));
            revolutions.add(revolutions.get(revolutions.size() - 1) + turns);
        }
        return new MarkPulseTimes(times, revolutions, missing, doubled);
    }

    /** Median of the steps nearby; the halves of doubles pull it little, missing ones likewise. */
    private static double usualStep(double[] steps, int at) {
        int from = Math.max(0, Math.min(at - 10, steps.length - 21));
        int to = Math.min(steps.length, from + 21);
        double[] near = Arrays.copyOfRange(steps, from, to);
        Arrays.sort(near);
        return near[near.length / 2];
    }
}
