package evenblade.input.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenblade.base.problem.BadInput;
import evenblade.base.units.SignalUnit;
import evenblade.base.units.ValueScale;
import evenblade.input.recording.Channel;
import evenblade.input.recording.Recording;
import evenblade.input.recording.TableReading;
import evenblade.input.recording.TableReading.ColumnReading;
import evenblade.input.recording.TableReading.DecimalSign;
import evenblade.input.recording.TableReading.Separator;
import evenblade.input.recording.TableReading.TimeUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayName("A table read as somebody says")
class SaidTableTest {
    private static final int ROWS = 800;

    @TempDir
    Path folder;

    private static String rows(String heading, IntFunction<String> row) {
        return heading + "\n" + IntStream.range(0, ROWS).mapToObj(row).collect(Collectors.joining("\n", "", "\n"));
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    private static double wave(int row) {
        return Math.sin(2 * Math.PI * 31.7 * row / 400);
    }

    private Intake.Whole read(String text, TableReading said) {
        try {
            Path file = Files.writeString(folder.resolve("run.csv"), text);
            return (Intake.Whole) RecordingReader.open(file, new IntakeOptions(Optional.empty(), said));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static List<String> codes(Recording recording) {
        return recording.warnings().stream()
                .map(warning -> warning.code().word())
                .toList();
    }

    private static TableReading timeUnit(TimeUnit unit) {
        return new TableReading(Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(unit), List.of());
    }

    private static TableReading timeColumn(String column) {
        return new TableReading(Optional.empty(), Optional.empty(), Optional.of(column), Optional.empty(), List.of());
    }

    private static TableReading columns(ColumnReading... columns) {
        return new TableReading(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(columns));
    }

    private static ColumnReading column(String column, String name, String scale) {
        return new ColumnReading(
                column,
                Optional.ofNullable(name),
                Optional.ofNullable(scale).map(text -> ValueScale.parse(text, BadInput.in("scale"))));
    }

    /** Stamps of 2.5 a row: 400 rows a second in ms, 0.4 a second in s. By itself the reader takes ms. */
    @Test
    @DisplayName("counts time in the unit that is said, and has nothing to assume any more")
    void theTimeUnitSaidHolds() {
        String text = rows("time,ax (g)", i -> number("%.1f", i * 2.5) + "," + number("%.4f", wave(i)));
        Recording assumed = read(text, TableReading.UNSAID).recording();
        assertThat(assumed.time().rateHz()).isCloseTo(400, within(1e-6));
        assertThat(codes(assumed)).contains("time-unit-assumed");

        Recording inSeconds = read(text, timeUnit(TimeUnit.SECONDS)).recording();
        assertThat(inSeconds.time().rateHz()).isCloseTo(0.4, within(1e-9));
        assertThat(codes(inSeconds)).doesNotContain("time-unit-assumed").contains("time-unit-doubtful");

        Recording confirmed = read(text, timeUnit(TimeUnit.MILLISECONDS)).recording();
        assertThat(confirmed.time().rateHz()).isCloseTo(400, within(1e-6));
        assertThat(codes(confirmed)).doesNotContain("time-unit-assumed", "time-unit-doubtful");
    }

    /** The sensor's clock ticks 400 times a second, the phone's runs 1 % slow: by itself the reader takes the first. */
    @ParameterizedTest
    @ValueSource(strings = {"2", "phone time (s)", "PHONE TIME (S)"})
    @DisplayName("takes the column that is said to tell time, by number or heading")
    void theTimeColumnSaidHolds(String column) {
        String text = rows(
                "sensor time (s),phone time (s),ax (g)",
                i -> number("%.5f", i / 400.0) + "," + number("%.5f", i / 404.0) + "," + number("%.4f", wave(i)));
        assertThat(read(text, TableReading.UNSAID).recording().time().rateHz()).isCloseTo(400, within(1e-3));
        Intake.Whole said = read(text, timeColumn(column));
        assertThat(said.recording().time().rateHz()).isCloseTo(404, within(1e-3));
        assertThat(said.recording().channels()).extracting(Channel::name).containsExactly("ax");
        assertThat(said.asRead().timeColumn()).contains("2");
    }

    @Test
    @DisplayName("takes the decimal sign and the separator that are said")
    void separatorAndDecimalSignSaidHold() {
        String text =
                rows("t (s);ax (g);note", i -> number("%.4f", i / 400.0).replace('.', ',') + ";" + i % 7 + ";" + i % 5);
        Intake.Whole by = read(text, TableReading.UNSAID);
        assertThat(by.asRead().separator()).contains(Separator.SEMICOLON);
        assertThat(by.asRead().decimalSign()).contains(DecimalSign.COMMA);

        TableReading points = new TableReading(
                Optional.of(Separator.SEMICOLON),
                Optional.of(DecimalSign.POINT),
                Optional.empty(),
                Optional.empty(),
                List.of());
        assertThatThrownBy(() -> read(text, points))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("no column of time stamps");

        TableReading tabs = new TableReading(
                Optional.of(Separator.TAB), Optional.empty(), Optional.empty(), Optional.empty(), List.of());
        assertThatThrownBy(() -> read(text, tabs))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("with tab between cells");
    }

    /** Raw counts of a sensor of 0.01 m/s² a count; exact: 250 counts are 2.5 m/s². */
    @Test
    @DisplayName("gives a column the name and the scale that are said")
    void nameAndScaleSaidHold() {
        String text = rows("t (s),raw1,raw2", i -> number("%.4f", i / 400.0) + "," + (i % 2 * 250) + "," + i % 3);
        Recording recording = read(text, columns(column("raw1", "across", "0.01 m/s2"), column("3", "along", null)))
                .recording();
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("across", "along");
        assertThat(recording.channels())
                .extracting(Channel::unit)
                .containsExactly(SignalUnit.METRE_PER_SECOND_SQUARED, SignalUnit.UNSTATED);
        assertThat(recording.channels().get(0).values().at(1)).isEqualTo(2.5);
        assertThat(recording.channels().get(1).values().at(2)).isEqualTo(2);
    }

    @Test
    @DisplayName("takes a column in that it would leave out, once its scale is said")
    void aColumnLeftOutIsTakenIn() {
        String text = rows(
                "t (s),ax (g),turn (deg/s)",
                i -> number("%.4f", i / 400.0) + "," + number("%.4f", wave(i)) + "," + number("%.4f", wave(i + 3)));
        assertThat(read(text, TableReading.UNSAID).recording().channels())
                .extracting(Channel::name)
                .containsExactly("ax");
        Recording recording = read(text, columns(column("3", null, "mV"))).recording();
        assertThat(recording.channels()).extracting(Channel::name).containsExactly("ax", "turn");
        assertThat(recording.channels().get(1).unit()).isEqualTo(SignalUnit.VOLT);
        assertThat(recording.channels().get(1).values().at(0))
                .isCloseTo(Math.round(1e4 * wave(3)) / 1e4 * 1e-3, within(1e-12));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time,ax (mg),total\n",
                "t [ms];x (m/s²);y (mm/s2)\n",
                "sample\tsec\tout (V)\n",
                "clock ax ay\n",
            })
    @DisplayName("is the same recording again when all that was found out is said")
    void sayingWhatWasFoundGivesTheSameAgain(String heading) {
        String separator = heading.replaceAll("(?s)^[a-z]+( \\[ms\\])?(.).*", "$2");
        boolean clock = heading.startsWith("clock");
        boolean index = heading.startsWith("sample");
        String text = rows(
                heading.strip(),
                i -> String.join(
                        separator,
                        clock
                                ? String.format(Locale.ROOT, "12:00:%06.3f", i / 400.0)
                                : index ? String.valueOf(i) : number("%.1f", i * 2.5),
                        index ? number("%.4f", i / 400.0) : number("%.4f", wave(i)),
                        number("%.4f", wave(i + 5))));
        Intake.Whole first = read(text, TableReading.UNSAID);
        Intake.Whole again = read(text, first.asRead());
        assertThat(again.recording().channels())
                .usingRecursiveFieldByFieldElementComparator()
                .isEqualTo(first.recording().channels());
        assertThat(again.recording().time())
                .usingRecursiveComparison()
                .isEqualTo(first.recording().time());
        assertThat(again.asRead()).isEqualTo(first.asRead());
        assertThat(again.headings()).isEqualTo(first.headings()).hasSize(3);
    }

    @Test
    @DisplayName("refuses what can't be, with the columns there are")
    void whatCannotBeIsRefused() {
        String text = rows("t (s),ax (g),words", i -> number("%.4f", i / 400.0) + "," + number("%.4f", wave(i)) + ",x");
        assertThatThrownBy(() -> read(text, timeColumn("phone")))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("time column")
                .hasMessageContaining("'t (s)', 'ax (g)', 'words'");
        assertThatThrownBy(() -> read(text, timeColumn("3"))).hasMessageContaining("no numbers or times in 'words'");
        assertThatThrownBy(() -> read(text, columns(column("words", "across", null))))
                .hasMessageContaining("no numbers in 'words'");
        TableReading both = new TableReading(
                Optional.empty(),
                Optional.empty(),
                Optional.of("1"),
                Optional.empty(),
                List.of(column("1", "across", null)));
        assertThatThrownBy(() -> read(text, both)).hasMessageContaining("column 1 named twice");

        Path sound = new WaveBytes()
                .format(WaveBytes.PCM, 1, 8000, 16)
                .chunk("data", WaveBytes.samples(WaveBytes.PCM, 16, 1, 16000, 8000))
                .writeTo(folder.resolve("a.wav"));
        assertThatThrownBy(() -> RecordingReader.open(sound, new IntakeOptions(Optional.empty(), timeColumn("1"))))
                .isInstanceOf(BadInput.class)
                .hasMessageContaining("sound, expected a table");
    }
}
