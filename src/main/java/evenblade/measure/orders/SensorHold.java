package evenblade.measure.orders;

import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value.Quoted;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.Series;
import evenblade.measure.speed.Dwell;
import evenblade.measure.speed.SpeedTrack;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;

/** Whether a sensor kept its hold: a level that steps while nobody moved the throttle, knocks between the lines. */
final class SensorHold {
    /** Levels are those of stretches so long, seconds: several turns of a slow propeller. */
    private static final double BLOCK_S = 0.25;
    /** The level has to stay on either side for so many of them. */
    private static final int LEAST_BLOCKS = 8;
    /** A step of the level by less (natural logarithm, 5 dB) may be a gust or a drift of the speed: own limit. */
    private static final double LEAST_STEP = 0.58;
    /** A step is so many times what the level scatters by beside it. */
    private static final double OVER_SCATTER = 4;
    /** Share of the step that must happen within two blocks: nothing that builds up; ours. */
    private static final double AT_ONCE = 0.6;
    /** The least that is left of a dwell to be measured, seconds; ours. */
    private static final double SHORTEST_S = 3;
    /**
     * Fourth moment of what the lines leave, over the square of its second, from which on it knocks: noise has 3, sound
     * runs of the rig up to 3.3, rattling ones 4.9 and more.
     */
    private static final double KNOCKS = 4.5;
    /** Correlation from one turn to the next from which on it is a mark's pulse, not a knock: own limit. */
    private static final double SAME_EVERY_TURN = 0.3;
    /** Share of a turn by which the next may come early or late. */
    private static final double WANDER = 0.01;

    private static final double KNOCK_BLOCK_S =
            1; // holds a few knocks, and gusts don't change the noise within it; ours

    private SensorHold() {}

    /**
     * The dwells as far as every sensor kept its hold.
     *
     * @param dwells what is left of them, in order of time
     * @param warnings which sensor let go, and when
     */
    record Held(List<Dwell> dwells, List<Warning> warnings) {}

    static Held through(List<Dwell> dwells, SpeedTrack track, Recording recording, List<Channel> channels) {
        List<Dwell> held = new ArrayList<>();
        List<Warning> warnings = new ArrayList<>();
        for (Dwell dwell : dwells) {
            double toS = dwell.toS();
            for (Channel channel : channels) {
                Optional<Step> step = step(levels(recording, channel, dwell));
                if (step.isPresent()) {
                    double atS = dwell.fromS() + step.get().block() * BLOCK_S;
                    toS = Math.min(toS, atS - BLOCK_S);
                    warnings.add(Warning.of(
                            WarningCode.SENSOR_LET_GO,
                            new Subject.Channel(channel.name()),
                            new Quoted(channel.name()),
                            Measure.TIME.of(atS),
                            Measure.SHARE.of(Math.exp(step.get().size()))));
                }
            }
            if (toS == dwell.toS()) {
                held.add(dwell);
            } else if (toS - dwell.fromS() >= SHORTEST_S) {
                held.add(cut(dwell, toS, track));
            }
        }
        return new Held(held, warnings);
    }

    private static Dwell cut(Dwell dwell, double toS, SpeedTrack track) {
        double length = toS - dwell.fromS();
        // The error of a mean speed grows as the length falls, to the power of 3/2 (Cramér and Rao).
        double error = dwell.standardErrorHz() * Math.pow(dwell.durationS() / length, 1.5);
        double meanHz = (track.revolutionsAt(toS) - track.revolutionsAt(dwell.fromS())) / length;
        return new Dwell(dwell.fromS(), toS, meanHz, error, dwell.minHz(), dwell.maxHz(), dwell.confirmedBy());
    }

    /** A step of a level. */
    private record Step(int block, double size) {}

    /** Logarithm of the level in each block of a dwell. */
    private static double[] levels(Recording recording, Channel channel, Dwell dwell) {
        int blocks = (int) (dwell.durationS() / BLOCK_S);
        double[] levels = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            int from = recording.time().firstFrom(dwell.fromS() + b * BLOCK_S);
            int to = recording.time().firstFrom(dwell.fromS() + (b + 1) * BLOCK_S);
            double sum = 0;
            double squares = 0;
            for (int i = from; i < to; i++) {
                double value = channel.values().at(i);
                sum += value;
                squares += value * value;
            }
            int n = Math.max(1, to - from);
            // Exact zeros have no level.
            levels[b] = Math.log(Math.max(1e-300, squares / n - sum / n * sum / n)) / 2;
        }
        return levels;
    }

    private static Optional<Step> step(double[] levels) {
        double[] before = distances(levels, 1);
        double[] after = distances(levels, -1);
        double least = Double.POSITIVE_INFINITY;
        int at = 0;
        for (int b = LEAST_BLOCKS; b <= levels.length - LEAST_BLOCKS; b++) {
            double rest = before[b] + after[levels.length - b];
            if (rest < least) {
                least = rest;
                at = b;
            }
        }
        if (at == 0) {
            return Optional.empty();
        }
        double size = median(levels, at, levels.length) - median(levels, 0, at);
        double besides = Math.max(before[at] / at, after[levels.length - at] / (levels.length - at));
        double atOnce = median(levels, at, at + LEAST_BLOCKS / 2) - median(levels, at - LEAST_BLOCKS / 2, at);
        return Math.abs(size) > Math.max(LEAST_STEP, OVER_SCATTER * besides) && atOnce / size > AT_ONCE
                ? Optional.of(new Step(at, size))
                : Optional.empty();
    }

    private static double median(double[] values, int from, int to) {
        double[] sorted = Arrays.copyOfRange(values, from, to);
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    /**
     * Sum of the distances from the median over the first n values, for every n from 0 to all: those above it less those
     * below it, each half kept as a heap, so that hours of blocks take no longer than their sorting.
     *
     * @param step 1 from the first value on, −1 from the last one back
     */
    private static double[] distances(double[] values, int step) {
        PriorityQueue<Double> below = new PriorityQueue<>(Comparator.reverseOrder());
        PriorityQueue<Double> above = new PriorityQueue<>();
        double[] distances = new double[values.length + 1];
        double difference = 0;
        for (int n = 1; n <= values.length; n++) {
            double value = values[step > 0 ? n - 1 : values.length - n];
            // The new value goes through the lower half, whose largest goes up; where that makes the upper one too
            // long,
            // its least comes back. So the upper half has as many as the lower one, or one more.
            below.add(value);
            double up = below.remove();
            above.add(up);
            difference += up - (value - up);
            if (above.size() > below.size() + 1) {
                double down = above.remove();
                below.add(down);
                difference -= 2 * down;
            }
            distances[n] = difference - (above.size() - below.size()) * above.element();
        }
        return distances;
    }

    /**
     * Whether what the lines leave is made of knocks that come at any time of a turn.
     *
     * @param turnsHz speeds of the shafts
     */
    static boolean knocks(Series residual, double rateHz, double... turnsHz) {
        return peakedness(residual, rateHz) > KNOCKS
                && Arrays.stream(turnsHz).noneMatch(hz -> likeness(residual, rateHz / hz) > SAME_EVERY_TURN);
    }

    /** Largest correlation with itself about so many samples later. */
    private static double likeness(Series residual, double lag) {
        double power = 0;
        for (int i = 0; i < residual.size(); i++) {
            power += residual.at(i) * residual.at(i);
        }
        double most = 0;
        for (int at = (int) (lag * (1 - WANDER)); at <= Math.ceil(lag * (1 + WANDER)); at++) {
            double sum = 0;
            for (int i = 0; i + at < residual.size(); i++) {
                sum += residual.at(i) * residual.at(i + at);
            }
            most = Math.max(most, sum / power);
        }
        return most;
    }

    /**
     * Middle over seconds of the fourth moment over the square of the second: a sensor that rattles does so in most of them,
     * and what filters leave at the ends of a recording is in the first and the last only.
     */
    private static double peakedness(Series residual, double rateHz) {
        int length = Math.max(1, (int) (KNOCK_BLOCK_S * rateHz));
        int blocks = residual.size() / length;
        double[] peaked = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            double second = 0;
            double fourth = 0;
            for (int i = b * length; i < (b + 1) * length; i++) {
                double square = residual.at(i) * residual.at(i);
                second += square / length;
                fourth += square * square / length;
            }
            peaked[b] = second > 0 ? fourth / (second * second) : 0;
        }
        return blocks == 0 ? 0 : median(peaked, 0, blocks);
    }
}
