package evenblade.face.app;

import evenblade.base.units.FullScale;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.recording.TableReading;
import evenblade.machine.installation.Installation;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One recording to analyse and what is said about it.
 *
 * @param file the recording
 * @param installation what was running
 * @param engineRpm engine speed as read in the cockpit, where entered; never beside {@code propellerRpm}
 * @param propellerRpm the same for the propeller
 * @param tolerancePercent how wrong the entered speed may be, above 0
 * @param channels names or numbers of the channels to analyse; empty for all that can be
 * @param markChannel name or number of the channel with the once-per-revolution mark
 * @param fullScale what the largest sample of sound stands for
 * @param table how a table is to be read, as far as it is said
 * @param arrivals file that tells when each of its lines came in, where it lies elsewhere than beside it
 * @param felt which way the channels of the file feel, in their order, as far as it was noted
 */
public record AnalysisRequest(
        Path file,
        Installation installation,
        OptionalDouble engineRpm,
        OptionalDouble propellerRpm,
        double tolerancePercent,
        List<String> channels,
        Optional<String> markChannel,
        Optional<FullScale> fullScale,
        TableReading table,
        Optional<Path> arrivals,
        List<String> felt) {
    /** Taken where no tolerance is stated. */
    public static final double DEFAULT_TOLERANCE_PERCENT = 5;

    public AnalysisRequest {
        channels = List.copyOf(channels);
        felt = List.copyOf(felt);
        if (engineRpm.isPresent() && propellerRpm.isPresent()) {
            throw new IllegalArgumentException("either an engine speed or a propeller speed, not both");
        }
        if (!(tolerancePercent > 0)) {
            throw new IllegalArgumentException("a tolerance of " + tolerancePercent + " %");
        }
    }

    /** How its file is to be read. */
    IntakeOptions reading() {
        return new IntakeOptions(fullScale, table, arrivals);
    }

    /** A recording about which nothing is said. */
    public static AnalysisRequest of(Path file, Installation installation) {
        return new AnalysisRequest(
                file,
                installation,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                DEFAULT_TOLERANCE_PERCENT,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                TableReading.UNSAID,
                Optional.empty(),
                List.of());
    }
}
