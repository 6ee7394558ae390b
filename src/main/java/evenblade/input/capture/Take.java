package evenblade.input.capture;

import evenblade.base.problem.Warning;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A finished recording.
 *
 * @param file where it lies
 * @param device what recorded it
 * @param format of its samples
 * @param frames in the file
 * @param ending why it ended
 * @param detail what the system said of an unwanted ending; may be empty
 * @param gaps where samples are missing by the clock
 */
public record Take(
        Path file, String device, InputFormat format, long frames, Ending ending, String detail, List<Gap> gaps) {
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
        if (ending.unwanted()) {
            warnings.add(new Warning(
                    "recording-cut-short",
                    String.format(
                            Locale.ROOT,
                            "%s after %.1f s%s; what had come in is in the file",
                            ending.words(),
                            durationS(),
                            detail.isEmpty() ? "" : " (" + detail + ")")));
        }
        for (Gap gap : gaps) {
            warnings.add(new Warning(
                    "samples-missing",
                    String.format(
                            Locale.ROOT,
                            "by the clock %.2f s of sound are missing near %.1f s; the place is marked in the file",
                            gap.lostS(),
                            (double) gap.frame() / format.rateHz())));
        }
        return warnings;
    }
}
