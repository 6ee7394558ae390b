package evenblade.input.intake;

import evenblade.base.problem.BadInput;
import evenblade.base.problem.Warning;
import java.util.List;
import java.util.Locale;

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
            warnings = repaired(
                    "the header leaves the length open; read to the end of the file, " + seconds(frames, rateHz));
        } else if (cut) {
            warnings = repaired("the header promises " + seconds(declared / frameBytes, rateHz) + ", the file holds "
                    + seconds(frames, rateHz) + "; it may have been cut off");
        } else if (goesOn) {
            warnings = repaired("the header promises " + seconds(declared / frameBytes, rateHz)
                    + ", samples go on behind that; read to the end of the file, " + seconds(frames, rateHz));
        } else if (bytes % frameBytes != 0) {
            warnings =
                    repaired("the samples end inside a frame; the last " + bytes % frameBytes + " bytes are left out");
        }
        return new DataLength(frames, warnings);
    }

    private static List<Warning> repaired(String message) {
        return List.of(new Warning("length-repaired", message));
    }

    private static String seconds(long frames, double rateHz) {
        return String.format(Locale.ROOT, "%.2f s", frames / rateHz);
    }
}
