package evenblade.intake;

import evenblade.units.FullScale;
import java.util.Optional;

/**
 * What the user says about a file that the file can't say itself.
 *
 * @param fullScale what the largest storable sample of sound stands for; empty where the sound is not
 *     calibrated
 */
public record IntakeOptions(Optional<FullScale> fullScale) {
    /** Nothing said. */
    public static final IntakeOptions NONE = new IntakeOptions(Optional.empty());
}
