package evenblade.face.app;

import evenblade.base.problem.BadInput;
import evenblade.input.intake.Intake;
import evenblade.input.intake.IntakeOptions;
import evenblade.input.intake.RecordingReader;
import evenblade.input.recording.StreamHeader;
import java.nio.file.Path;
import java.util.Optional;

/** How much of a recording that was broken off can be read. */
final class SavedLength {
    private SavedLength() {}

    /** In seconds; empty where nothing of it can be read. */
    static Optional<Double> of(Path file) {
        try {
            Intake intake = RecordingReader.open(file, IntakeOptions.NONE);
            if (intake instanceof Intake.Streamed streamed) {
                StreamHeader header = streamed.sound().header();
                return header.frames().isPresent()
                        ? Optional.of(header.frames().getAsLong() / header.sampleRateHz())
                        : Optional.empty();
            }
            return Optional.of(((Intake.Whole) intake).recording().time().durationS());
        } catch (BadInput e) {
            return Optional.empty();
        }
    }
}
