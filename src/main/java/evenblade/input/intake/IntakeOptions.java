package evenblade.input.intake;

import evenblade.base.units.FullScale;
import evenblade.input.recording.TableReading;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * What the user says about a file that the file can't say itself, or says wrongly.
 *
 * @param fullScale what the largest storable sample of sound stands for; empty where the sound is not
 *     calibrated
 * @param table how a table is to be read, in place of what the reader would find out
 * @param arrivals file that tells when each line of a table came in; one beside the table, where empty
 */
public record IntakeOptions(Optional<FullScale> fullScale, TableReading table, Optional<Path> arrivals) {
    /** Behind the name of a table that was recorded here: when each of its lines came in. */
    public static final String ARRIVALS_ENDING = ".arrivals.csv";

    /** Without arrivals of its own. */
    public IntakeOptions(Optional<FullScale> fullScale, TableReading table) {
        this(fullScale, table, Optional.empty());
    }

    /** The arrivals that belong to a table, where there are any. */
    Optional<Path> arrivalsOf(Path table) {
        Path beside = table.resolveSibling(table.getFileName() + ARRIVALS_ENDING);
        return arrivals.or(() -> Optional.of(beside)).filter(Files::isRegularFile);
    }

    /** Nothing said. */
    public static final IntakeOptions NONE = new IntakeOptions(Optional.empty(), TableReading.UNSAID);
}
