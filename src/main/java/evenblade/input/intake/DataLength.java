package evenblade.input.intake;

import evenblade.base.fact.Fact;
import evenblade.base.fact.Measure;
import evenblade.base.fact.Subject;
import evenblade.base.fact.Value;
import evenblade.base.fact.Value.Amount;
import evenblade.base.fact.Value.Count;
import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import java.util.List;

/**
 * How much sound there really is, where header and file may disagree.
 *
 * @param frames whole frames in the file
 * @param warnings {@code length-repaired} where the header was wrong
 */
record DataLength(long frames, List<Warning> warnings) {
    /** A number that writers leave in the header when they don't know the length yet. */
    private static final long UNKNOWN = 0xFFFF_FFFFL;

    /**
     * Compares what the header says with what is there.
     *
     * @param declared bytes of samples by the header
     * @param available bytes from the first sample to the end of the file
     * @param goesOn whether samples, and not other parts of the file, follow the declared ones
     */
    static DataLength of(
            BadInput.Place place, long declared, long available, boolean goesOn, int frameBytes, double rateHz) {
        boolean open = declared == 0 || declared == UNKNOWN;
        boolean cut = declared > available;
        long bytes = open || cut || goesOn ? available : declared;
        long frames = bytes / frameBytes;
        if (frames == 0) {
            throw place.found("no samples after the header", "at least 1 s of signal");
        }
        List<Warning> warnings = List.of();
        if (open) {
            warnings = repaired(IntakeFact.LENGTH_OPEN, seconds(frames, rateHz));
        } else if (cut) {
            warnings = repaired(IntakeFact.LENGTH_CUT, seconds(declared / frameBytes, rateHz), seconds(frames, rateHz));
        } else if (goesOn) {
            warnings = repaired(
                    IntakeFact.LENGTH_GOES_ON, seconds(declared / frameBytes, rateHz), seconds(frames, rateHz));
        } else if (bytes % frameBytes != 0) {
            warnings = repaired(IntakeFact.LENGTH_INSIDE_FRAME, new Count(bytes % frameBytes));
        }
        return new DataLength(frames, warnings);
    }

    private static List<Warning> repaired(IntakeFact how, Value... values) {
        return List.of(Warning.of(WarningCode.LENGTH_REPAIRED, Subject.Whole.RECORDING, Fact.of(how, values)));
    }

    private static Amount seconds(long frames, double rateHz) {
        return Measure.TIME.of(frames / rateHz);
    }
}
