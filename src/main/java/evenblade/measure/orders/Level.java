package evenblade.measure.orders;

import evenblade.base.fact.Worded;
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
            implements Level {
        /** This line with its amplitude in a unit of which so many make one of this. */
        public Measured times(double factor) {
            return new Measured(
                    factor * amplitude,
                    factor * standardError,
                    factor * ciLow,
                    factor * ciHigh,
                    phaseDeg,
                    detected,
                    estimator);
        }
    }

    /** A line that the file's sample rate doesn't let through as it is. */
    sealed interface BeyondRange extends Level {
        /** Where it would appear instead; empty where it would appear at its own place. */
        OptionalDouble foldsToHz();
    }

    /** Below half the sample rate, so nothing folds, but above the share of it in which amplitudes can be trusted. */
    record AboveBand() implements BeyondRange {
        @Override
        public OptionalDouble foldsToHz() {
            return OptionalDouble.empty();
        }
    }

    /**
     * Above half the sample rate: its samples look like those of a lower line.
     *
     * @param toHz where it would appear
     */
    record Folded(double toHz) implements BeyondRange {
        @Override
        public OptionalDouble foldsToHz() {
            return OptionalDouble.of(toHz);
        }
    }

    /** What a sample rate makes of a line above the usable band. */
    static BeyondRange beyondRange(double frequencyHz, double sampleRateHz) {
        return 2 * frequencyHz <= sampleRateHz
                ? new AboveBand()
                : new Folded(FoldedLines.appearsAtHz(frequencyHz, sampleRateHz));
    }

    /** How the blocks of a dwell were brought together. */
    enum Estimator implements Worded {
        /** One fit over the whole dwell; the line keeps step with the track. */
        COHERENT,
        /** Root mean square over blocks, noise taken out; the line doesn't keep step. */
        BLOCK_RMS;
    }
}
