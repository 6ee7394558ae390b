package evenblade.input.intake;

import evenblade.base.units.FullScale;
import evenblade.input.recording.TableReading;
import java.util.Optional;

/**
 * What the user says about a file that the file can't say itself, or says wrongly.
 *
 * @param fullScale what the largest storable sample of sound stands for; empty where the sound is not
 *     calibrated
 * @param table how a table is to be read, in place of what the reader would find out
 */
public record IntakeOptions(Optional<FullScale> fullScale, TableReading table) {
    /** Nothing said. */
    public static final IntakeOptions NONE = new IntakeOptions(Optional.empty(), TableReading.UNSAID);
}
