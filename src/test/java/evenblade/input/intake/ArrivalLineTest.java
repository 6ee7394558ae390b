package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.fact.Warning;
import evenblade.base.fact.WarningCode;
import evenblade.base.problem.BadInput;
import evenblade.input.recording.Recording;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@DisplayName("Lines recorded here, whose arrivals were written down")
class ArrivalLineTest {
    private static final double RATE_HZ = 500;
    private static final int ROWS = 10_000;

    @TempDir
    Path folder;

    /** A 20 Hz sine at 500 Hz, stamped as said; lines come in sixteens, late by some milliseconds (seeded). */
    private Path take(IntToDoubleFunction stampS, IntToDoubleFunction sampledS, boolean arrivals) throws IOException {
        Random random = new Random(8);
        StringBuilder table = new StringBuilder("time (s),x (m/s2)\n");
        StringBuilder arrived = new StringBuilder("line,arrived (s)\n1,0.000000\n");
        double late = 0;
        for (int i = 0; i < ROWS; i++) {
            double at = sampledS.applyAsDouble(i);
            table.append(String.format(
                    Locale.ROOT, "%.4f,%.5f%n", stampS.applyAsDouble(i), Math.sin(2 * Math.PI * 20 * at)));
            if (i % 16 == 0) {
                late = 0.005 - 0.004 * Math.log(1 - random.nextDouble());
            }
            double burst = sampledS.applyAsDouble(Math.min(ROWS - 1, i - i % 16 + 15));
            arrived.append(String.format(Locale.ROOT, "%d,%.6f%n", i + 2, burst + late));
        }
        Path file = folder.resolve("take.csv");
        Files.writeString(file, table);
        if (arrivals) {
            Files.writeString(folder.resolve("take.csv" + IntakeOptions.ARRIVALS_ENDING), arrived);
        }
        return file;
    }

    private static Recording read(Path file) {
        return ((Intake.Whole) RecordingReader.open(file, IntakeOptions.NONE)).recording();
    }

    private static double even(int row) {
        return row / RATE_HZ;
    }

    private static double standing(int row) {
        return Math.min(row, 1500) / RATE_HZ;
    }

    @Test
    void aClockThatStandsIsReplacedByTheLineThroughTheArrivals() throws IOException {
        Recording read = read(take(ArrivalLineTest::standing, ArrivalLineTest::even, true));

        assertThat(read.warnings()).extracting(Warning::code).contains(WarningCode.TIMES_FROM_ARRIVALS);
        assertThat(read.time().size()).isEqualTo(ROWS);
        // The earliest of each few bursts is good to 3 ms or so; over 20 s that is 0.02 %.
        assertThat(read.time().rateHz()).isCloseTo(RATE_HZ, within(RATE_HZ * 2e-4));
        double off = read.time().at(ROWS - 1) - even(ROWS - 1);
        assertThat(off).isCloseTo(0, within(0.01));
    }

    @Test
    void aSensorThatStartsAgainIsOneRecordingByItsArrivals() throws IOException {
        IntToDoubleFunction reset = row -> even(row < 6000 ? row : row - 6000);

        assertThat(read(take(reset, ArrivalLineTest::even, true)).stretches()).hasSizeLessThan(2);
    }

    @Test
    void withoutArrivalsTheSameTableIsRefused() throws IOException {
        Path file = take(ArrivalLineTest::standing, ArrivalLineTest::even, false);

        assertThatThrownBy(() -> read(file)).isInstanceOf(BadInput.class);
    }

    @Test
    void arrivalsThatLieOnNoLineRebuildNothing() throws IOException {
        IntToDoubleFunction paused = row -> even(row) + (row > 5000 ? 2 : 0);
        Path file = take(ArrivalLineTest::standing, paused, true);

        assertThatThrownBy(() -> read(file)).isInstanceOf(BadInput.class);
    }

    @Test
    void arrivalsWithLinesThatNobodyWroteHereRebuildNothing() throws IOException {
        Path file = take(ArrivalLineTest::standing, ArrivalLineTest::even, true);
        Path arrivals = folder.resolve("take.csv" + IntakeOptions.ARRIVALS_ENDING);
        Files.writeString(arrivals, Files.readString(arrivals) + "x".repeat(100 * (ROWS + 2)));

        assertThatThrownBy(() -> read(file)).isInstanceOf(BadInput.class);
    }

    @Test
    void goodStampsAreTakenWhateverTheArrivalsSay() throws IOException {
        Recording read = read(take(ArrivalLineTest::even, row -> 1.01 * even(row), true));

        assertThat(read.time().rateHz()).isCloseTo(RATE_HZ, within(0.01));
    }
}
