package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Value.Listed;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.input.recording.StampQuality;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntUnaryOperator;

/** What happened to the clock of a table, for the reader of a result. */
final class ClockWarnings {
    /** Steps of the clock that are named one by one. */
    private static final int MOST_NAMED = 3;

    private ClockWarnings() {}

    /**
     * What was found on the way through the rows.
     *
     * @param kept number of stretches that are long enough
     * @param rows in all
     * @param lineOf the line of the file of each row
     */
    static List<Warning> of(ClockTrack.Found found, int kept, int rows, IntUnaryOperator lineOf) {
        List<Warning> warnings = new ArrayList<>();
        found.wrapS()
                .ifPresent(length -> warnings.add(
                        Warning.of(WarningCode.COUNTER_WRAPS, Subject.Whole.RECORDING, Measure.TIME.of(length))));
        if (!found.leftOut().isEmpty()) {
            warnings.add(counted(WarningCode.STAMPS_LEFT_OUT, found.leftOut(), rows, lineOf));
        }
        if (!found.standing().isEmpty()) {
            warnings.add(counted(WarningCode.CLOCK_STANDS, found.standing(), rows, lineOf));
        }
        List<ClockTrack.Step> carried =
                found.steps().stream().filter(ClockTrack.Step::carriedOn).toList();
        if (!carried.isEmpty()) {
            warnings.add(Warning.of(
                    WarningCode.CLOCK_STEPPED,
                    Subject.Whole.RECORDING,
                    new Count(carried.size()),
                    named(carried, lineOf)));
        }
        List<ClockTrack.Step> breaks =
                found.steps().stream().filter(step -> !step.carriedOn()).toList();
        if (!breaks.isEmpty()) {
            warnings.add(Warning.of(
                    WarningCode.CLOCK_BROKEN,
                    Subject.Whole.RECORDING,
                    new Count(breaks.size()),
                    named(breaks, lineOf),
                    new Count(kept)));
        }
        return warnings;
    }

    private static Warning counted(WarningCode code, List<Integer> which, int rows, IntUnaryOperator lineOf) {
        int line = lineOf.applyAsInt(which.get(0));
        return Warning.of(code, new Subject.FileLine(line), new Count(which.size()), new Count(rows), new Count(line));
    }

    /**
     * What was counted in the stretches.
     *
     * @param rows in all
     */
    static List<Warning> counted(StampQuality quality, int rows) {
        List<Warning> warnings = new ArrayList<>();
        if (quality.doubled() > 0) {
            warnings.add(Warning.of(
                    WarningCode.STAMPS_DOUBLED,
                    Subject.Whole.RECORDING,
                    new Count(quality.doubled()),
                    new Count(rows)));
        }
        if (quality.gaps() > 0) {
            warnings.add(Warning.of(
                    WarningCode.GAPS,
                    Subject.Whole.RECORDING,
                    new Count(quality.gaps()),
                    Measure.TIME.of(quality.lostS())));
        }
        return warnings;
    }

    private static Listed named(List<ClockTrack.Step> steps, IntUnaryOperator lineOf) {
        return new Listed(steps.stream()
                .limit(MOST_NAMED)
                .<Value>map(step -> Fact.of(
                        IntakeFact.CLOCK_STEP, Measure.TIME.of(step.stepS()), new Count(lineOf.applyAsInt(step.row()))))
                .toList());
    }
}
