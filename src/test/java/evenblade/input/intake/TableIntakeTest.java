package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableIntakeTest {
    private static final double RATE = 400;
    private static final int ROWS = 1000;

    @TempDir
    Path folder;

    static double value(int row, int axis) {
        return 9.81 * (axis == 2 ? 1 : 0) + 3 * Math.sin(2 * Math.PI * (31.7 + axis) * row / RATE);
    }

    private static String rows(IntFunction<String> row) {
        return IntStream.range(0, ROWS).mapToObj(row).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String plainRows(String separator) {
        return rows(i -> number("%.4f", i / RATE)
                + separator
                + number("%.5f", value(i, 0))
                + separator
                + number("%.5f", value(i, 1))
                + separator
                + number("%.5f", value(i, 2)));
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    private Recording read(String text) {
        return read(text, StandardCharsets.UTF_8);
    }

    private Recording read(String text, Charset charset) {
        return ((Intake.Whole) RecordingReader.open(file(text, charset), IntakeOptions.NONE)).recording();
    }

    private Path file(String text, Charset charset) {
        try {
            return Files.writeString(folder.resolve("run.csv"), text, charset);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<String> codes(Recording recording) {
        return recording.warnings().stream()
                .map(warning -> warning.code().word())
                .toList();
    }

    private static void holdsTheThreeAxes(Recording recording) {
        assertThat(recording.channels()).hasSize(3);
        assertThat(recording.time().size()).isEqualTo(ROWS);
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-3));
        for (int axis = 0; axis < 3; axis++) {
            double worst = 0;
            for (int i = 0; i < ROWS; i++) {
                worst = Math.max(
                        worst, Math.abs(recording.channels().get(axis).values().at(i) - value(i, axis)));
            }
            assertThat(worst).isLessThan(1e-5);
        }
        assertThat(recording.time().at(ROWS - 1)).isCloseTo((ROWS - 1) / RATE, within(1e-4));
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t", " ", "  ", ", ", "|", " ; "})
    void anyUsualSeparatorIsFound(String separator) {
        String heading = String.join(separator, "time(s)", "ax(m/s²)", "ay(m/s²)", "az(m/s²)") + "\n";
        Recording recording = read(heading + plainRows(separator));
        holdsTheThreeAxes(recording);
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("ax", "ay", "az");
        assertThat(recording.channels()).extracting(Channel::unit).containsOnly(SignalUnit.METRE_PER_SECOND_SQUARED);
        assertThat(codes(recording)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {";", "\t", " "})
    void decimalCommasAreRead(String separator) {
        String heading = String.join(separator, "time_s", "x_g", "y_g", "z_g") + "\n";
        Recording recording = read(heading + plainRows(separator).replace('.', ','));
        holdsTheThreeAxes(recording);
        assertThat(recording.channels()).extracting(Channel::unit).containsOnly(SignalUnit.STANDARD_GRAVITY);
    }

    @Test
    void decimalCommasInQuotesMayStandBetweenCommas() {
        String text = "\"t [s]\",\"x\",\"y\",\"z\"\n"
                + rows(i -> ("\"" + number("%.4f", i / RATE) + "\"|\"" + number("%.5f", value(i, 0)) + "\"|\""
                                + number("%.5f", value(i, 1)) + "\"|\"" + number("%.5f", value(i, 2)) + "\"")
                        .replace('.', ',')
                        .replace('|', ','));
        holdsTheThreeAxes(read(text));
    }

    @Test
    void unquotedDecimalCommasBetweenCommasAreRefusedWithTheReason() {
        String text = "time,x\n"
                + rows(i -> number("%.4f", i / RATE).replace('.', ',') + ","
                        + number("%.5f", 2 + Math.abs(value(i, 0))).replace('.', ','));
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("run.csv:1: 2 headings over rows of 4 cells");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16", "UTF-16LE", "UTF-16BE", "ISO-8859-1"})
    void anyUsualEncodingIsRead(String charset) {
        String text =
                "time (s),ax (m/s²),ay (m/s²),az (m/s²)\r\n" + plainRows(",").replace("\n", "\r\n");
        Recording recording = read(text, Charset.forName(charset));
        holdsTheThreeAxes(recording);
        assertThat(recording.channels()).extracting(Channel::unit).containsOnly(SignalUnit.METRE_PER_SECOND_SQUARED);
    }

    @Test
    void aByteOrderMarkIsNoPartOfTheFirstHeading() {
        Recording recording = read("\ufefftime (s),x,y,z\n" + plainRows(","));
        holdsTheThreeAxes(recording);
        assertThat(codes(recording)).containsExactly("unit-unstated");
    }

    @Test
    void remarksMetadataAndBlankLinesAreSteppedOver() {
        String text = "# invented logger\n// second remark\nSensor;invented\nRate;400 Hz\n\n" + "time;x;y;z\ns;g;g;g\n"
                + plainRows(";").replaceFirst("\n", "\n% remark in between\n\n") + "\n\n";
        Recording recording = read(text);
        holdsTheThreeAxes(recording);
        assertThat(recording.channels()).extracting(Channel::unit).containsOnly(SignalUnit.STANDARD_GRAVITY);
        assertThat(codes(recording)).isEmpty();
    }

    @Test
    void aHeadingMayStandInARemark() {
        Recording recording = read("# made up\n# time_ms, ax_g, ay_g, az_g\n"
                + rows(i -> number("%.1f", 1000 * i / RATE) + "," + number("%.5f", value(i, 0)) + ","
                        + number("%.5f", value(i, 1)) + "," + number("%.5f", value(i, 2))));
        holdsTheThreeAxes(recording);
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("ax_g", "ay_g", "az_g");
    }

    @Test
    void withoutAHeadingTheRisingColumnIsTheTime() {
        Recording recording = read(rows(i -> number("%.5f", value(i, 0)) + "," + number("%.5f", value(i, 1)) + ","
                + number("%.4f", i / RATE) + "," + number("%.5f", value(i, 2))));
        holdsTheThreeAxes(recording);
        assertThat(codes(recording)).contains("time-column-assumed", "time-unit-assumed", "unit-unstated");
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("column 1", "column 2", "column 4");
    }

    @ParameterizedTest
    @CsvSource({
        "time (s), 1, %.6f",
        "time [ms], 1e3, %.4f",
        "time_us, 1e6, %.1f",
        "timestamp (µs), 1e6, %.1f",
        "t (ns), 1e9, %.0f",
        "time, 1, %.6f",
        "time, 1e3, %.4f",
        "time, 1e6, %.1f",
        "time, 1e9, %.0f",
        "seconds_elapsed, 1, %.6f",
        "millis, 1e3, %.4f"
    })
    void theUnitOfTimeComesFromTheHeadingOrFromThePlausibleRate(String heading, double perSecond, String format) {
        Recording recording = read(heading + ",ax (g)\n"
                + rows(i -> number(format, perSecond * i / RATE) + "," + number("%.5f", value(i, 0))));
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-3));
        assertThat(recording.time().at(0)).isZero();
        assertThat(codes(recording)).isEqualTo(heading.equals("time") ? List.of("time-unit-assumed") : List.of());
    }

    @ParameterizedTest
    @CsvSource({"1, %.4f", "1e3, %.2f", "1e6, %.1f", "1e9, %.0f"})
    void timesSince1970AreSeenAsSuch(double perSecond, String format) {
        Recording recording = read("timestamp,ax (g)\n"
                + rows(i -> number(format, perSecond * (1.7e9 + i / RATE)) + "," + number("%.5f", value(i, 0))));
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-2));
    }

    @Test
    void datesWithTimeAreRead() {
        Recording recording = read("when,ax (g)\n"
                + rows(i -> "2031-03-0" + (i < 400 ? 1 : 2) + "T"
                        + (i < 400 ? "23:59:59" : i < 800 ? "00:00:00" : "00:00:01")
                        + number("%.4f", i % 400 / RATE).substring(1) + "Z," + number("%.5f", value(i, 0))));
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-3));
        assertThat(codes(recording)).isEmpty();
    }

    @Test
    void aClockGoesOnPastMidnight() {
        Recording recording = read("clock;ax (g)\n"
                + rows(i -> (i < 400 ? "23:59:59" : i < 800 ? "00:00:00" : "00:00:01")
                        + number("%.4f", i % 400 / RATE).substring(1).replace('.', ',') + ";"
                        + number("%.5f", value(i, 0)).replace('.', ',')));
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-3));
        assertThat(recording.time().durationS()).isCloseTo(2.5, within(1e-3));
    }

    @Test
    void indexColumnsSecondTimesAndForeignQuantitiesAreNoChannels() {
        Recording recording = read("index,time (ms),date,seconds_elapsed,ax (m/s^2),temp (°C),note\n"
                + rows(i -> i + "," + number("%.1f", 1000 * i / RATE) + ",2031-03-01," + number("%.4f", i / RATE) + ","
                        + number("%.5f", value(i, 0)) + ",21.5,ok"));
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("ax");
        assertThat(codes(recording)).containsExactlyInAnyOrder("other-time-column", "column-left-out");
    }

    @Test
    void aTotalIsKeptButIsNoAxis() {
        Recording recording = read("Time (s),gFx,gFy,gFz,TgF\n"
                + rows(i -> number("%.4f", i / RATE) + "," + number("%.5f", value(i, 0)) + ","
                        + number("%.5f", value(i, 1)) + "," + number("%.5f", value(i, 2)) + ","
                        + number("%.5f", Math.hypot(Math.hypot(value(i, 0), value(i, 1)), value(i, 2)))));
        assertThat(recording.channels()).extracting(Channel::axis).containsExactly(true, true, true, false);
        assertThat(recording.channels()).extracting(Channel::unit).containsOnly(SignalUnit.STANDARD_GRAVITY);
        assertThat(codes(recording)).containsExactly("not-an-axis");
    }

    @ParameterizedTest
    @CsvSource({
        "ax (m/s^2), METRE_PER_SECOND_SQUARED",
        "'a [m/s2]', METRE_PER_SECOND_SQUARED",
        "Acceleration x [g], STANDARD_GRAVITY",
        "acc_x_mps2, METRE_PER_SECOND_SQUARED",
        "'x (m·s⁻²)', METRE_PER_SECOND_SQUARED",
        "x_g, STANDARD_GRAVITY",
        "v (mm/s), MILLIMETRE_PER_SECOND",
        "'v, ips', INCH_PER_SECOND",
        "v [in/s], INCH_PER_SECOND",
        "out (V), VOLT",
        "vel (m/s), METRE_PER_SECOND",
        "gFz, STANDARD_GRAVITY",
        "counts, UNSTATED",
        "a/g, STANDARD_GRAVITY"
    })
    void unitsAreReadFromHeadingsInManyWritings(String heading, SignalUnit unit) {
        Recording recording = read(
                "time (s);" + heading + "\n" + rows(i -> number("%.4f", i / RATE) + ";" + number("%.5f", value(i, 0))));
        assertThat(recording.channels().get(0).unit()).isEqualTo(unit);
    }

    @Test
    void shuffledAndRepeatedRowsAreSortedAndCounted() {
        List<String> lines = new java.util.ArrayList<>(plainRows(",").lines().toList());
        java.util.Collections.swap(lines, 100, 110);
        lines.add(500, lines.get(499));
        lines.add(700, lines.get(699));
        Recording recording = read("time (s),x (g),y (g),z (g)\n" + String.join("\n", lines));
        holdsTheThreeAxes(recording);
        assertThat(recording.stamps().orElseThrow().unsorted()).isEqualTo(10);
        assertThat(recording.stamps().orElseThrow().doubled()).isEqualTo(2);
        assertThat(codes(recording)).containsExactlyInAnyOrder("stamps-unsorted", "stamps-doubled");
    }

    @Test
    void gapsAreCountedAndDontBendTheRate() {
        String text = "time (s),x (g)\n"
                + rows(i -> number("%.4f", (i < 300 ? i : i < 600 ? i + 40 : i + 100) / RATE) + ","
                        + number("%.5f", value(i, 0)));
        Recording recording = read(text);
        assertThat(recording.stamps().orElseThrow().gaps()).isEqualTo(2);
        assertThat(recording.stamps().orElseThrow().lostS()).isCloseTo(100 / RATE, within(1e-6));
        assertThat(recording.time().rateHz()).isCloseTo(RATE, within(1e-6));
        assertThat(codes(recording)).containsExactly("gaps");
    }
}
