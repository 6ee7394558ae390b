package evenblade.input.recording;

/**
 * A part of a recording through which one clock ran without a break. Between two stretches any time may have passed,
 * so no phase is carried from one to the next; what was measured in each must agree.
 *
 * @param fromS time of its first sample, seconds from the recording's start
 * @param toS time of its last sample, seconds from the recording's start
 */
public record Stretch(double fromS, double toS) {
    public Stretch {
        if (!(toS >= fromS)) {
            throw new IllegalArgumentException("a stretch from " + fromS + " s to " + toS + " s");
        }
    }

    /** From its first sample to its last, seconds. */
    public double durationS() {
        return toS - fromS;
    }
}
