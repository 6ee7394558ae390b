package evenblade.measure.speed;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Warning;
import evenblade.base.fact.Worded;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The propeller's speed over a recording and how it is known.
 *
 * @param origin where the speed comes from
 * @param confirmed whether the signal (or the mark) bears it out in any dwell
 * @param doubt why it isn't confirmed in any; empty where it is
 * @param track speed and angle over time
 * @param main the longest dwell, or the whole recording where the speed never settles; empty where no
 *     speed is known at all
 * @param dwells those that are confirmed, in order of time; may be empty
 * @param doubtful steady stretches that are not confirmed, in order of time: nothing is measured in them
 * @param otherMachine whether lines of another machine stand out; empty where that can't be told
 * @param ratioCorrection share by which the lines show the reduction ratio to be larger than entered
 * @param warnings what to know about it
 */
public record SpeedResult(
        Origin origin,
        boolean confirmed,
        Optional<Fact> doubt,
        SpeedTrack track,
        Optional<Dwell> main,
        List<Dwell> dwells,
        List<DoubtfulDwell> doubtful,
        Optional<Boolean> otherMachine,
        double ratioCorrection,
        List<Warning> warnings) {
    /** Where a speed comes from. */
    public enum Origin implements Worded {
        SIGNAL,
        MARK,
        ENTERED
    }

    public SpeedResult {
        dwells = List.copyOf(dwells);
        doubtful = List.copyOf(doubtful);
        warnings = List.copyOf(warnings);
    }

    /** With more warnings. */
    SpeedResult with(List<Warning> more) {
        return withDwells(dwells, more);
    }

    /** This speed with only some dwells, or parts of them, and more warnings. */
    public SpeedResult withDwells(List<Dwell> left, List<Warning> more) {
        List<Warning> all = new ArrayList<>(warnings);
        all.addAll(more);
        Optional<Dwell> longest = left.stream().max(Comparator.comparingDouble(Dwell::durationS));
        return new SpeedResult(
                origin,
                confirmed,
                doubt,
                track,
                left.equals(dwells) ? main : longest.or(() -> main),
                left,
                doubtful,
                otherMachine,
                ratioCorrection,
                all);
    }

    /** A speed with no doubtful stretch, of which nothing is known about other machines. */
    public SpeedResult(
            Origin origin,
            boolean confirmed,
            Optional<Fact> doubt,
            SpeedTrack track,
            Optional<Dwell> main,
            List<Dwell> dwells,
            double ratioCorrection,
            List<Warning> warnings) {
        this(origin, confirmed, doubt, track, main, dwells, List.of(), Optional.empty(), ratioCorrection, warnings);
    }
}
