package evenblade.measure.orders;

import java.util.OptionalDouble;

/** The amplitude of a line, or why there is none. */
public sealed interface Level {
    /**
     * A measured line. Amplitudes are peak values in the channel's unit.
     *
     * @param amplitude corrected for what noise adds
     * @param standardError of the amplitude
     * @param ciLow lower end of the 95 % interval
     * @param ciHigh upper end of the 95 % interval; where the line isn't detected, 'below' this
     * @param phaseDeg of the line against the mark (cosine), 0 to 360; empty without a mark and for
     *     lines that don't come back to the same place in every propeller revolution
     * @param detected whether it stands out of the noise at 1 %, all lines tested allowed for
     * @param estimator how the blocks of the dwell were brought together
     */
    record Measured(
            double amplitude,
            double standardError,
            double ciLow,
            double ciHigh,
            OptionalDouble phaseDeg,
            boolean detected,
            Estimator estimator)
            implements Level {}

    /**
     * A line above what the file's sample rate lets through.
     *
     * @param foldsToHz where it would appear instead
     */
    record BeyondRange(double foldsToHz) implements Level {}

    /** How the blocks of a dwell were brought together. */
    enum Estimator {
        /** One fit over the whole dwell; the line keeps step with the track. */
        COHERENT("coherent"),
        /** Root mean square over blocks, noise taken out; the line doesn't keep step. */
        BLOCK_RMS("block-rms");

        private final String word;

        Estimator(String word) {
            this.word = word;
        }

        /** As written in JSON. */
        public String word() {
            return word;
        }
    }
}
