package evenblade.input.capture;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A finished recording.
 *
 * @param file where it lies
 * @param device what recorded it
 * @param format of its samples
 * @param frames in the file
 * @param ending why it ended
 * @param detail what is known of an unwanted ending, or that nothing is
 * @param gaps where samples are missing by the clock
 */
public record Take(
        Path file, String device, InputFormat format, long frames, Ending ending, Value detail, List<Gap> gaps) {
    public Take {
        gaps = List.copyOf(gaps);
    }

    public double durationS() {
        return (double) frames / format.rateHz();
    }

    /** Sound that the clock says is missing, seconds. */
    public double lostS() {
        return gaps.stream().mapToDouble(Gap::lostS).sum();
    }

    /** What whoever works on the recording has to know. */
    public List<Warning> warnings() {
        List<Warning> warnings = new ArrayList<>();
        if (ending == Ending.INPUT_CHANGED) {
            warnings.add(
                    Warning.of(WarningCode.INPUT_CHANGED, Subject.Whole.INPUT, Measure.TIME.of(durationS()), detail));
        } else if (ending.unwanted()) {
            warnings.add(Warning.of(
                    WarningCode.RECORDING_CUT_SHORT,
                    Subject.Whole.RECORDING,
                    Fact.of(ending),
                    Measure.TIME.of(durationS()),
                    detail.equals(CaptureFact.none()) ? detail : Fact.of(CaptureFact.DETAIL, detail)));
        }
        for (Gap gap : gaps) {
            warnings.add(Warning.of(
                    WarningCode.SAMPLES_MISSING,
                    Subject.Whole.RECORDING,
                    Measure.TIME.of(gap.lostS()),
                    Measure.TIME.of((double) gap.frame() / format.rateHz())));
        }
        return warnings;
    }
}
