package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenblade.base.problem.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One test for each thing that the fuzzer found, as small as it could be made. */
class FoundByFuzzingTest {
    @TempDir
    Path folder;

    /** A float holds nothing above 3.4e38, so its quality was no number, and no JSON could be written. */
    @Test
    void aValueThatNoFloatHoldsIsNoNumberOfATable() throws IOException {
        StringBuilder table = new StringBuilder("time (s),y (m/s2)\n");
        for (int i = 0; i < 200; i++) {
            table.append(i / 100.0)
                    .append(',')
                    .append(i == 50 ? "1e300" : String.valueOf(Math.sin(i)))
                    .append('\n');
        }
        Path file = Files.writeString(folder.resolve("large.csv"), table);
        try {
            var recording = ((Intake.Whole) RecordingReader.open(file, IntakeOptions.NONE)).recording();
            assertThat(recording.quality()).allMatch(q -> Double.isFinite(q.mean()) && Double.isFinite(q.peak()));
            assertThat(recording.warnings()).isNotEmpty();
        } catch (BadInput e) {
            assertThat(e).hasMessageContaining(":52");
        }
    }

    @Test
    void aTableOfSpeedsWithoutTimesIsRefusedInWords() throws IOException {
        Path file = Files.writeString(folder.resolve("speeds.csv"), "rpm, EGT\n4800, 600\n4801, 601\n4802, 602\n");
        assertThatThrownBy(() -> RecordingReader.open(file, IntakeOptions.NONE)).isInstanceOf(BadInput.class);
    }
}
