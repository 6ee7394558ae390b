package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.input.recording.Recording;
import evenblade.tell.document.Face;
import evenblade.tell.document.Phrases;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableFaultsTest {
    private static final double RATE = 416;

    @TempDir
    Path folder;

    private Path file(String text) {
        try {
            return Files.writeString(folder.resolve("run.csv"), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Recording read(String text) {
        return ((Intake.Whole) RecordingReader.open(file(text), IntakeOptions.NONE)).recording();
    }

    private static String table(int rows, IntToDoubleFunction timeS, String timeFormat) {
        return "time (s),x (g)\n"
                + lines(
                        rows,
                        i -> String.format(
                                Locale.ROOT,
                                timeFormat + ",%.5f",
                                timeS.applyAsDouble(i),
                                Math.sin(2 * Math.PI * 33 * timeS.applyAsDouble(i))));
    }

    private static String lines(int rows, IntFunction<String> line) {
        return IntStream.range(0, rows).mapToObj(line).collect(Collectors.joining("\n", "", "\n"));
    }

    private static List<String> codes(Recording recording) {
        return recording.warnings().stream()
                .map(warning -> warning.code().word())
                .toList();
    }

    private void refused(String text, String... parts) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(BadInput.class)
                .hasMessageStartingWith(folder.resolve("run.csv").toString())
                .hasMessageContainingAll(parts);
    }

    private static String steady(int rows) {
        return table(rows, i -> i / RATE, "%.6f");
    }

    @Test
    void jitterIsMeasuredAndTheTrueRateFound() {
        Random random = new Random(3);
        double[] stamps = IntStream.range(0, 4000)
                .mapToDouble(i -> i / RATE + 3e-4 * random.nextGaussian())
                .toArray();
        Recording recording = read(table(stamps.length, i -> stamps[i] + 1, "%.7f"));
        // Independent errors of both ends: sqrt(2) times 0.3 ms over 2.404 ms.
        assertThat(recording.stamps().orElseThrow().jitterShare()).isCloseTo(Math.sqrt(2) * 3e-4 * RATE, within(0.01));
        // Standard error of the slope: sigma sqrt(12 / n^3), five of them allowed.
        double error = 5 * 3e-4 * Math.sqrt(12 / Math.pow(stamps.length, 3)) * RATE * RATE;
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(error));
        assertThat(recording.time().at(1000) + stamps[0]).isCloseTo(stamps[1000], within(2e-7));
        assertThat(codes(recording)).containsExactly("jitter");
    }

    /** Jitter as a share of a step: 4 %, 12 %, 17 %. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 3e-4, 4e-4})
    void singleMissingSamplesDontBendTheRate(double jitterS) {
        Random random = new Random(4);
        double[] stamps = IntStream.range(0, 6000)
                .filter(i -> i % 137 != 5)
                .mapToDouble(i -> i / RATE + jitterS * random.nextGaussian())
                .toArray();
        java.util.Arrays.sort(stamps);
        Recording recording = read(table(stamps.length, i -> stamps[i] + 1, "%.7f"));
        double error = 6 * jitterS * Math.sqrt(12 / Math.pow(stamps.length, 3)) * RATE * RATE;
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(error));
        assertThat(recording.stamps().orElseThrow().gaps()).isZero();
    }

    @Test
    void stampsCutToMillisecondsGiveWayToTheEvenClockTheyFollow() {
        Recording recording = read(table(4000, i -> Math.floor(1000 * (7.0003 + i / RATE)) / 1000, "%.3f"));
        assertThat(codes(recording)).containsExactly("coarse-stamps");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(recording.warnings().get(0)))
                .contains("1 ms", "even clock of 416.0");
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(2e-3));
        for (int i = 0; i < 4000; i++) {
            assertThat(recording.time().at(i)).isCloseTo(i / RATE, within(5e-5));
        }
    }

    @Test
    void millisecondStampsThatFollowNoClockAreKeptAndTheCostIsTold() {
        Random random = new Random(8);
        double[] stamps = new double[4000];
        for (int i = 1; i < stamps.length; i++) {
            stamps[i] = stamps[i - 1] + (1 + 0.3 * random.nextGaussian()) / RATE;
        }
        java.util.Arrays.sort(stamps);
        Recording recording = read(table(4000, i -> Math.rint(1000 * stamps[i]) / 1000, "%.3f"));
        assertThat(codes(recording)).contains("coarse-stamps");
        assertThat(Phrases.of(Face.COMMAND_LINE).texts(recording.warnings()).toString())
                .contains("follow no even clock");
    }

    @Test
    void severalSamplesWithinOneTickAreSpreadAndNotTakenForRepeats() {
        double fast = 2000;
        Recording recording = read("time (ms),x (g)\n"
                + lines(
                        8000,
                        i -> (long) Math.floor(1000 * i / fast) + ","
                                + String.format(Locale.ROOT, "%.5f", Math.sin(2 * Math.PI * 33 * i / fast))));
        assertThat(recording.time().size()).isEqualTo(8000);
        assertThat(recording.time().rateHz()).isCloseTo(fast, within(0.05));
        assertThat(recording.time().at(4001)).isCloseTo(4001 / fast, within(6e-4));
        assertThat(codes(recording)).containsExactly("coarse-stamps");
    }

    @Test
    void valuesThatStandStillOrSitAtTheEndOfTheScaleAreTold() {
        Recording stuck = read("time (s),x (g)\n"
                + lines(
                        2000,
                        i -> String.format(
                                Locale.ROOT,
                                "%.6f,%.5f",
                                i / RATE,
                                i > 500 && i < 700 ? 0.25 : Math.sin(2 * Math.PI * 33 * i / RATE))));
        assertThat(stuck.quality().get(0).longestStuckRun()).isEqualTo(199);
        assertThat(codes(stuck)).containsExactly("stuck-values");
        Recording clipped = read("time (s),x (g)\n"
                + lines(
                        2000,
                        i -> String.format(
                                Locale.ROOT,
                                "%.6f,%.5f",
                                i / RATE,
                                Math.max(-2, Math.min(2, 2.4 * Math.sin(2 * Math.PI * 21.3 * i / RATE))))));
        assertThat(clipped.quality().get(0).clippedShare()).isCloseTo(2 * Math.acos(2.0 / 2.4) / Math.PI, within(0.05));
        assertThat(codes(clipped)).containsExactly("clipping");
    }

    @ParameterizedTest
    @ValueSource(strings = {"NaN", "inf", "-Infinity", "", "?"})
    void aFewRowsWithoutANumberAreLeftOutAndTheFirstIsNamed(String cell) {
        String text = steady(1000).replaceFirst("(?m)^(0\\.012019),.*$", "$1," + cell);
        Recording recording = read(text);
        assertThat(recording.time().size()).isEqualTo(999);
        assertThat(codes(recording)).containsExactly("rows-skipped");
        assertThat(Phrases.of(Face.COMMAND_LINE).text(recording.warnings().get(0)))
                .contains("1 of 1000 rows", "line 7");
    }

    @Test
    void manyRowsWithoutANumberAreRefusedWithTheFirstLine() {
        String text = "time (s),x (g)\n"
                + lines(
                        1000,
                        i -> String.format(Locale.ROOT, "%.6f,", i / RATE) + (i % 20 == 7 ? "NaN" : "0." + i % 7));
        refused(
                text,
                ":9: \"NaN\" in column 'x (g)' (50 of 1000 rows are like that)",
                "expected a number in every cell");
    }

    @Test
    void aLastLineCutOffIsLeftOut() {
        Recording recording = read(steady(1000) + "2.4038");
        assertThat(recording.time().size()).isEqualTo(1000);
        assertThat(codes(recording)).containsExactly("rows-skipped");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "hello there | no number in it",
                "# nothing but a remark | no number in it",
                "time,x | no number in it",
            })
    void textWithoutANumberIsRefused(String text, String found) {
        refused(text, found, "expected rows of a time stamp and at least one value");
    }

    @Test
    void oneColumnIsRefused() {
        refused("x\n" + lines(1000, i -> "0." + i), "one column, expected a column of time stamps");
    }

    @Test
    void countsOfRowsAreNoTime() {
        refused("sample,x\n" + lines(1000, i -> i + ",0." + i % 13), "no column of time stamps");
        refused(lines(1000, i -> i + ",0." + i % 13), "no column of time stamps");
    }

    @Test
    void halfASecondAndConstantSignalsAreRefused() {
        refused(steady(208), "0.5 s of signal, expected at least 1 s");
        refused(
                "time (s),x\n" + lines(1000, i -> i / RATE + ",1.5"),
                "a constant signal, expected a signal that changes");
    }

    @Test
    void aHugeTableIsRefusedBeforeItIsRead() throws IOException {
        Path file = file(steady(4000));
        try (RandomAccessFile sparse = new RandomAccessFile(file.toFile(), "rw")) {
            sparse.setLength(300_000_000_000L);
        }
        // What follows the table are zero bytes: who read on would complain of those, not of the size.
        assertThatThrownBy(() -> RecordingReader.open(file, IntakeOptions.NONE))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("a table of 300.0 GB")
                .hasMessageContaining("expected at most");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void damagedTablesAreReadOrRefusedButNeverFail(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 12; round++) {
            StringBuilder text = new StringBuilder(steady(450));
            for (int n = 1 + random.nextInt(30); n > 0; n--) {
                int at = random.nextInt(text.length());
                switch (random.nextInt(3)) {
                    case 0 -> text.setCharAt(at, (char) (32 + random.nextInt(95)));
                    case 1 -> text.delete(at, Math.min(text.length(), at + random.nextInt(40)));
                    default -> text.insert(at, "\",;\n\t x-.".charAt(random.nextInt(9)));
                }
            }
            try {
                assertThat(read(text.toString()).time().size()).isPositive();
            } catch (BadInput refused) {
                assertThat(refused).hasMessageContaining("expected");
            }
        }
    }
}
